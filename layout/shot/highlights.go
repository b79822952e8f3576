package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Ways on which a drop shows a lamp as a highlight.
const (
	Mirrored    = "mirrored"     // by the drop's front
	OnceThrown  = "once inside"  // thrown back inside once, as in the rainbow
	TwiceThrown = "twice inside" // thrown back inside twice
)

// Highlight is a lamp that a drop on the axis shows.
type Highlight struct {
	Lamp int    `json:"lamp"` // counted from 1
	Way  string `json:"way"`
	// where in the drop, as shares of its visible half-width and half-height, x right, y down; along a rod, where there is
	// no edge, of the other of the two
	XShare float64           `json:"x_share"`
	YShare float64           `json:"y_share"`
	Frame  layout.FramePoint `json:"frame_px"`
	// AreaPx is how much of the frame the lamp's face takes up there, in focus; 0 where its size is not known.
	AreaPx float64 `json:"area_px,omitempty"`
	// OverWhite is how bright it is recorded, in times of the print's white in its brightest place: spread over what the
	// lens blurs it to and over a pixel, where its image is smaller. 0 where the lamp's size is not known.
	OverWhite float64 `json:"over_white,omitempty"`
	// BlowsOut tells that it is recorded as white that has clipped: over what the camera holds, or where the exposure is
	// not known over the print's white.
	BlowsOut bool `json:"blows_out,omitempty"`
	// HeldFaceMM is how wide the lamp's face would have to be, giving as much light in all, for it not to blow out
	// however large that shows; 0 where it does not.
	HeldFaceMM float64 `json:"held_face_mm,omitempty"`

	light float64 // all of it: of white's, over mm² of the drop's plane
}

// Highlights are those of the plan's lamps that can be seen, lamp by lamp.
//
// A lamp's face of area A, as the drop sees it, covers the solid angle A cos/d² and has so many times white's
// luminance: E/A' with E the light that it gives the drop over that angle, white being E0 rho/pi (Lambert). A mirror
// image is as bright as the lamp, but for the share of the light that comes that way (radiance is kept; Born and
// Wolf, Principles of Optics, 4.8.1; from memory).
func (s Shot) Highlights() []Highlight {
	all := []Highlight{}
	light := s.Light()
	for i, lamp := range s.Lamps {
		gives, cosOff := light.Facing(i, flip.Vec{Z: s.Drop.DistanceMM})
		if gives == 0 || math.IsInf(gives, 0) {
			continue
		}
		at := flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: s.Drop.DistanceMM - lamp.ZMM}
		awayMM2 := at.Dot(at)
		steradians := math.Pi / 4 * lamp.SizeMM * lamp.SizeMM * cosOff / awayMM2
		for _, g := range s.Sight().Glints(at) {
			h := s.highlight(g, at, steradians)
			h.Lamp = i + 1
			h.light = gives * math.Pi / layout.WhiteReflects * g.Share * g.AreaMM2
			pixelMM2 := s.Camera.PixelMM() * s.Camera.PixelMM()
			over := h.light / max(g.AreaMM2*steradians, s.blurMM2(g, at), pixelMM2)
			if over < layout.HalfLevel {
				continue
			}
			if lamp.SizeMM > 0 {
				h.OverWhite, h.BlowsOut = over, over*s.whiteLevel() > 1
				if h.BlowsOut {
					h.HeldFaceMM = lamp.SizeMM * math.Sqrt(h.light/(g.AreaMM2*steradians)*s.whiteLevel())
				}
			}
			all = append(all, h)
		}
	}
	return all
}

// whiteLevel is the light of the print's white in the frame: as the camera records it, or 1 where that is not known.
func (s Shot) whiteLevel() float64 {
	if white, ok := s.RecordedWhite(); ok {
		return white
	}
	return 1
}

// highlight is where a glint of a lamp lies.
func (s Shot) highlight(g flip.Glint, at flip.Vec, steradians float64) Highlight {
	halfWidthMM, halfHeightMM := s.Sight().OutlineMM()
	if math.IsInf(halfWidthMM, 0) {
		halfWidthMM = halfHeightMM
	}
	if math.IsInf(halfHeightMM, 0) {
		halfHeightMM = halfWidthMM
	}
	pixelMM := s.Camera.PixelMM()
	return Highlight{
		Way:    [...]string{flip.ByFront: Mirrored, flip.OnceInside: OnceThrown, flip.TwiceInside: TwiceThrown}[g.Way],
		XShare: g.XMM / halfWidthMM, YShare: g.YMM / halfHeightMM,
		Frame:  s.Camera.Pixel(layout.Point{XMM: g.XMM, YMM: g.YMM}),
		AreaPx: g.AreaMM2 * steradians / pixelMM / pixelMM,
	}
}

// blurMM2 is the area of the drop's plane over which the lens spreads a point of light that shows as a glint: what
// its rays from half-way to the ends of the pupil, across and down, come to behind their pixels, as an ellipse; at
// least the disc that holds an Airy pattern's light at its brightest, 0.855 of the square of the first dark ring's
// radius (Born and Wolf, Principles of Optics, 8.5.2: light in the middle over all the light is pi a²/(lambda f)²,
// and the ring lies at 0.610 lambda f/a).
func (s Shot) blurMM2(g flip.Glint, at flip.Vec) float64 {
	c, t := s.Camera, s.Sight().Tracer()
	scale, pupilMM := c.FocusMM/s.Drop.CameraMM, c.PupilMM()/2
	behind := func(x, y float64) (layout.Point, bool) {
		moved, ok := t.GlintFrom(flip.Vec{X: x, Y: y, Z: -s.Drop.CameraMM}, at, g)
		return layout.Point{XMM: x/scale + (moved.XMM - x), YMM: y/scale + (moved.YMM - y)}, ok
	}
	const airyDisc = 0.855
	airyMM := c.AiryPx() / 2 * c.PixelMM()
	leastMM2 := airyDisc * airyMM * airyMM
	middle, ok := behind(0, 0)
	right, okRight := behind(pupilMM/2, 0)
	down, okDown := behind(0, pupilMM/2)
	if !ok || !okRight || !okDown {
		return leastMM2
	}
	ax, ay := 2*(right.XMM-middle.XMM), 2*(right.YMM-middle.YMM)
	bx, by := 2*(down.XMM-middle.XMM), 2*(down.YMM-middle.YMM)
	return max(leastMM2, math.Pi*math.Abs(ax*by-ay*bx))
}
