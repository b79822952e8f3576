package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// The ways on which a shiny print would mirror a lamp into the picture.
const (
	Direct      = "direct"       // lamp, board, camera
	ThroughDrop = "through drop" // lamp, board, drop, camera
)

// Glare is where a lamp would be mirrored. A mirror shows the lamp as far behind the board as it stands
// before it, so the ray is the one that the camera would see the lamp by if the board were a window and the
// lamp stood behind it. So far behind the drop the lens blurs it widely, and what blur brings into the frame
// counts. Board and Frame are those of a ray that the frame records, from the pupil's middle where that is
// one.
type Glare struct {
	Lamp  int          `json:"lamp"` // counted from 1
	Path  string       `json:"path"`
	Board layout.Point `json:"board_mm"`
	// where the camera would see it; where only blur comes in, a place that it reaches
	Frame layout.FramePoint `json:"frame_px"`
	// by any part of the pupil: on the board and in the frame, and for the direct path past the drop
	Seen bool `json:"seen"`
	// BeyondMM is how far from the axis the lamp would have to stand, moved straight out, for the glare to be
	// gone; 0 where it is not seen.
	BeyondMM float64 `json:"beyond_mm"`
}

// glares lists every way on which the board could mirror a lamp to the camera, whether it then does or not.
func (s Shot) glares() []Glare {
	all := []Glare{}
	for i, lamp := range s.Lamps {
		for _, path := range []string{Direct, ThroughDrop} {
			if g, ok := s.glare(lamp, path); ok {
				g.Lamp = i + 1
				if g.Seen {
					g.BeyondMM = s.beyondMM(lamp, path)
				}
				all = append(all, g)
			}
		}
	}
	return all
}

// glare follows one way. ok is false when no ray takes it: the lamp stands so far aside that the drop can't
// see its mirror image.
func (s Shot) glare(lamp layout.Lamp, path string) (g Glare, ok bool) {
	d := s.Drop
	behindMM := d.DistanceMM + lamp.ZMM // the mirror image, from the drop's centre
	var through, onBoard layout.Point   // where the ray arrives in the drop's plane and crosses the board, optical mm
	var seen bool
	if path == Direct {
		image := blurred{s.Plan, flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: behindMM}, true}
		var pupil layout.Point
		pupil, seen = image.seen()
		through, onBoard = image.shows(pupil), image.crosses(pupil, image.boardMM())
	} else {
		if through, ok = s.seenThrough(behindMM, layout.Point{XMM: lamp.XMM, YMM: lamp.YMM}); !ok {
			return Glare{}, false
		}
		landing, lands := s.Sight().Trace(s.Sight().PinholeRay(through.XMM, through.YMM))
		if !lands {
			return Glare{}, false
		}
		onBoard = layout.Point{XMM: landing.XMM, YMM: landing.YMM}
		var nearest layout.Point
		if nearest, seen = catches(s.Camera, through, s.throughBlur(behindMM, through)); seen {
			through = nearest
		}
		seen = seen && math.Abs(onBoard.XMM) <= s.Backdrop.WidthMM/2 && math.Abs(onBoard.YMM) <= s.Backdrop.HeightMM/2
	}
	b := s.Backdrop
	g = Glare{Path: path, Board: layout.Point{XMM: onBoard.XMM + b.WidthMM/2, YMM: onBoard.YMM + b.HeightMM/2},
		Frame: s.Camera.Pixel(through), Seen: seen}
	return g, true
}

// beyondMM moves a lamp straight out from the axis, at its own depth, until that glare is gone, to a millimetre.
func (s Shot) beyondMM(lamp layout.Lamp, path string) float64 {
	ux, uy := lamp.XMM, lamp.YMM
	out := math.Hypot(ux, uy)
	if out == 0 { // from the axis every way out is as good: take the way to the side that the cut edges face
		ux, out = 1, 1
		if s.Backdrop.LightFrom.Left() {
			ux = -1
		}
	}
	ux, uy = ux/out, uy/out
	gone := func(mm float64) bool {
		g, ok := s.glare(layout.Lamp{XMM: ux * mm, YMM: uy * mm, ZMM: lamp.ZMM}, path)
		return !ok || !g.Seen
	}
	near, far := math.Hypot(lamp.XMM, lamp.YMM), 1+2*math.Hypot(lamp.XMM, lamp.YMM)
	for !gone(far) && far < layout.MaxLengthMM {
		near, far = far, 2*far
	}
	for far-near > 0.5 {
		if middle := (near + far) / 2; gone(middle) {
			far = middle
		} else {
			near = middle
		}
	}
	return far
}
