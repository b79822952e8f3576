package layout

import (
	"math"

	"dropsheet/flip"
)

// pixel is the frame pixel, as a Px of Camera.At, that looks through a point of the drop's plane: At undone.
func (c Camera) pixel(through Point) (px FramePoint) {
	return FramePoint{(through.XMM/c.FrameWidthMM + 0.5) * float64(c.WidthPx), (through.YMM/c.FrameHeightMM + 0.5) * float64(c.HeightPx)}
}

// FramePoint is a place in the frame, in pixels as Camera.At counts them.
type FramePoint struct {
	XPx float64 `json:"x"`
	YPx float64 `json:"y"`
}

// shareOfRadius is how far out a point of the drop's plane lies in the drop, as a share of its visible radius; for a rod across its axis.
func (p Plan) shareOfRadius(through Point) float64 {
	across := math.Hypot(through.XMM, through.YMM)
	switch p.Drop.Body {
	case flip.UprightRod:
		across = math.Abs(through.XMM)
	case flip.LevelRod:
		across = math.Abs(through.YMM)
	}
	return across / p.Sight().ApparentRadiusMM()
}

// seenThrough is the point of the drop's plane that the camera sees a place through: the place lies behindMM behind the drop's centre, at (x, y) of
// the optical frame. ok is false when the drop can't show it.
func (p Plan) seenThrough(behindMM float64, place Point) (through Point, ok bool) {
	s := p.Sight()
	s.DistanceMM = behindMM
	switch s.Drop.Body {
	case flip.UprightRod:
		return seenThroughRod(s, place.XMM, place.YMM, func(across, along float64) (x, y float64) { return across, along })
	case flip.LevelRod:
		return seenThroughRod(s, place.YMM, place.XMM, func(across, along float64) (x, y float64) { return along, across })
	}
	out := math.Hypot(place.XMM, place.YMM)
	if out == 0 {
		return Point{}, true
	}
	fill, ok := s.FillAt(out)
	if !ok || fill >= 1 {
		return Point{}, false
	}
	k := -fill * s.ApparentRadiusMM() / out // the ball turns the place to the other side of the axis
	return Point{place.XMM * k, place.YMM * k}, true
}

// seenThroughRod does the same for a rod, by the place across and along it; lay turns across and along into x and y, and back.
// A rod bends across its axis only. Along it the ray runs nearly straight: guess where it crosses, solve across by halving, mend the guess.
func seenThroughRod(s flip.Sight, across, along float64, lay func(across, along float64) (x, y float64)) (through Point, ok bool) {
	side := 1.0 // where the ray crosses the drop's plane: on the other side than the place
	if across > 0 {
		side = -1
	}
	v := along * s.CameraMM / (s.CameraMM + s.DistanceMM)
	lands := func(u float64) (acrossMM, alongMM float64, ok bool) {
		l, ok := s.Trace(s.PinholeRay(lay(side*u, v)))
		acrossMM, alongMM = lay(l.XMM, l.YMM)
		return -side * acrossMM, alongMM, ok
	}
	const rounds, halvings = 20, 50
	u := 0.0
	for range rounds {
		outer := s.ApparentRadiusMM() * (1 - 1e-9)
		if far, _, ok := lands(outer); ok && far < math.Abs(across) {
			return Point{}, false
		}
		u = 0
		for range halvings {
			middle := (u + outer) / 2
			if mm, _, ok := lands(middle); ok && mm < math.Abs(across) {
				u = middle
			} else {
				outer = middle
			}
		}
		_, landed, ok := lands(u)
		if !ok {
			return Point{}, false
		}
		if landed == 0 {
			break
		}
		v *= along / landed
	}
	x, y := lay(side*u, v)
	return Point{x, y}, true
}
