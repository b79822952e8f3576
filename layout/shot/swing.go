package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/flip/motion"
)

// Swing is what the picture does as the drop swings between flat and long, its volume kept: the second mode
// of oscillation, which a drop falls into as it comes off its tip.
type Swing struct {
	Flat SwungPicture `json:"flat"`
	Long SwungPicture `json:"long"`
	// PerSecond is how often the drop swings so, twice round in each; 0 where its liquid is not known, or too viscous to
	// swing. The next are 0 then too.
	PerSecond float64 `json:"per_second,omitempty"`
	RingsS    float64 `json:"rings_s,omitempty"` // until the swings are down to 1/e
	// FramesPerSwing is 0 when the frame rate is not known, FallsMM when the drop's speed is not.
	FramesPerSwing float64 `json:"frames_per_swing,omitempty"`
	FallsMM        float64 `json:"falls_mm_per_swing,omitempty"` // or rises, about the frame's middle
}

// SwungPicture is the picture in a drop out of round, beside that in the drop as planned. The middle, where a
// face sits, is seen through the drop's blunt or sharp end and changes nearly twice as much as the picture's
// edge.
type SwungPicture struct {
	HeightOverWidth float64 `json:"height_over_width"`
	WidthShare      float64 `json:"picture_width_share"` // of the picture's width in the drop as planned
	HeightShare     float64 `json:"picture_height_share"`
	// The same of what lies in the print's middle quarter.
	MiddleWidthShare  float64 `json:"middle_width_share"`
	MiddleHeightShare float64 `json:"middle_height_share"`
	// Width over height, of that as planned: above 1 it looks pressed.
	ProportionsShare       float64 `json:"picture_proportions_share"`
	MiddleProportionsShare float64 `json:"middle_proportions_share"`
}

// usualSwing is how far a drop is taken to swing where nothing is known: a tenth of its height over width
// (common practice, no source).
const usualSwing = 0.1

// Swing works it out: from the drop as far out of round as planned to as far the other way, or a tenth either
// way of a round one. ok is false for a rod.
func (s Shot) Swing() (swing Swing, ok bool) {
	if s.Drop.Body != flip.Ball {
		return Swing{}, false
	}
	flat := s.flattest()
	swing = Swing{Flat: s.swung(flat), Long: s.swung(1 / flat)}
	falling := s.falling()
	if hz, ok := falling.SwingHz(); ok {
		swing.PerSecond = hz
		swing.RingsS, _ = falling.RingS()
		swing.FramesPerSwing = s.Camera.FrameRate / hz
		if speed, ok := s.Shooting.DropSpeedMMPerS(); ok {
			swing.FallsMM = motion.CoversMM(speed, 1/hz)
		}
	}
	return swing, true
}

// flattest is the least height over width of a ball that swings.
func (s Shot) flattest() float64 {
	if k := s.Drop.HeightOverWidth; k != 0 && k != 1 {
		return min(k, 1/k)
	}
	return 1 - usualSwing
}

// middleShare is how much of the way from the print's middle to its edge counts as the middle: a face there
// ends about so far out (common practice, no source).
const middleShare = 0.25

// swung is the picture at a height over width. Its width is told by the places at the fill to either side, its height
// by those above and below.
func (s Shot) swung(heightOverWidth float64) SwungPicture {
	planned := s.Sight()
	swung := planned
	swung.Drop.HeightOverWidth = heightOverWidth
	seen := func(sight flip.Sight, xMM, yMM float64) float64 {
		if x, y, ok := sight.SeenThrough(xMM, yMM); ok {
			return math.Hypot(x, y)
		}
		halfWidthMM, halfHeightMM := sight.OutlineMM() // the picture outgrows the drop
		if xMM != 0 {
			return halfWidthMM
		}
		return halfHeightMM
	}
	acrossMM, _ := planned.ReachMM(s.Picture.Fill)
	downMM, _ := planned.ReachDownMM(s.Picture.Fill)
	shares := func(part float64) (width, height float64) {
		return seen(swung, part*acrossMM, 0) / seen(planned, part*acrossMM, 0),
			seen(swung, 0, part*downMM) / seen(planned, 0, part*downMM)
	}
	out := SwungPicture{HeightOverWidth: heightOverWidth}
	out.WidthShare, out.HeightShare = shares(1)
	out.MiddleWidthShare, out.MiddleHeightShare = shares(middleShare)
	out.ProportionsShare = out.WidthShare / out.HeightShare
	out.MiddleProportionsShare = out.MiddleWidthShare / out.MiddleHeightShare
	return out
}
