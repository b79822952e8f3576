package layout

import (
	"math"

	"dropsheet/flip"
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
	Lamp  int        `json:"lamp"` // counted from 1
	Path  string     `json:"path"`
	Board Point      `json:"board_mm"`
	Frame FramePoint `json:"frame_px"` // where the camera would see it; where only blur comes in, a place that it reaches
	// by any part of the pupil: on the board and in the frame, and for the direct path past the drop
	Seen bool `json:"seen"`
	// BeyondMM is how far from the axis the lamp would have to stand, moved straight out, for the glare to be
	// gone; 0 where it is not seen.
	BeyondMM float64 `json:"beyond_mm"`
}

// glares lists every way on which the board could mirror a lamp to the camera, whether it then does or not.
func (p Plan) glares() []Glare {
	all := []Glare{}
	for i, lamp := range p.Lamps {
		for _, path := range []string{Direct, ThroughDrop} {
			if g, ok := p.glare(lamp, path); ok {
				g.Lamp = i + 1
				if g.Seen {
					g.BeyondMM = p.beyondMM(lamp, path)
				}
				all = append(all, g)
			}
		}
	}
	return all
}

// glare follows one way. ok is false when no ray takes it: the lamp stands so far aside that the drop can't
// see its mirror image.
func (p Plan) glare(lamp Lamp, path string) (g Glare, ok bool) {
	d := p.Drop
	behindMM := d.DistanceMM + lamp.ZMM // the mirror image, from the drop's centre
	var through, onBoard Point          // where the ray arrives in the drop's plane and crosses the board, optical mm
	var seen bool
	if path == Direct {
		image := blurred{p, flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: behindMM}, true}
		var pupil Point
		pupil, seen = image.seen()
		through, onBoard = image.shows(pupil), image.crosses(pupil, image.boardMM())
	} else {
		if through, ok = p.seenThrough(behindMM, Point{lamp.XMM, lamp.YMM}); !ok {
			return Glare{}, false
		}
		landing, lands := p.Sight().Trace(p.Sight().PinholeRay(through.XMM, through.YMM))
		if !lands {
			return Glare{}, false
		}
		onBoard = Point{landing.XMM, landing.YMM}
		var nearest Point
		if nearest, seen = p.Camera.catches(through, p.throughBlur(behindMM, through)); seen {
			through = nearest
		}
		seen = seen && math.Abs(onBoard.XMM) <= p.Backdrop.WidthMM/2 && math.Abs(onBoard.YMM) <= p.Backdrop.HeightMM/2
	}
	b := p.Backdrop
	g = Glare{Path: path, Board: Point{onBoard.XMM + b.WidthMM/2, onBoard.YMM + b.HeightMM/2},
		Frame: p.Camera.pixel(through), Seen: seen}
	return g, true
}

// beyondMM moves a lamp straight out from the axis, at its own depth, until that glare is gone, to a millimetre.
func (p Plan) beyondMM(lamp Lamp, path string) float64 {
	ux, uy := lamp.XMM, lamp.YMM
	out := math.Hypot(ux, uy)
	if out == 0 { // from the axis every way out is as good: take the way to the side that the cut edges face
		ux, out = 1, 1
		if p.Backdrop.LightFrom.Left() {
			ux = -1
		}
	}
	ux, uy = ux/out, uy/out
	gone := func(mm float64) bool {
		g, ok := p.glare(Lamp{ux * mm, uy * mm, lamp.ZMM}, path)
		return !ok || !g.Seen
	}
	near, far := math.Hypot(lamp.XMM, lamp.YMM), 1+2*math.Hypot(lamp.XMM, lamp.YMM)
	for !gone(far) && far < maxLengthMM {
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
