package shot

import (
	"dropsheet/flip"
	"dropsheet/layout"
)

// Sighting is a lamp that the camera sees, on its way directly or through the drop.
type Sighting struct {
	Lamp  int               `json:"lamp"` // counted from 1
	Path  string            `json:"path"`
	Frame layout.FramePoint `json:"frame_px"` // where only its blur comes in, a place that it reaches
}

// sliverShare is the share of the drop's radius from which on it shows a lamp as a sliver, at a third of its
// light or less (Fresnel, index 1.333).
const sliverShare = 0.99

// lampsInView lists the lamps that stand in the camera's view: before the board, in the frame, or between
// drop and board where the drop shows them. A lamp whose blur comes in, by any part of the pupil, is in the
// frame.
func (p Shot) lampsInView() []Sighting {
	all := []Sighting{}
	d := p.Drop
	for i, lamp := range p.Lamps {
		behindMM := d.DistanceMM - lamp.ZMM // of the drop's centre; below zero before it
		if d.CameraMM+behindMM > 0 {
			direct := blurred{p.Plan, flip.Vec{X: lamp.XMM, Y: lamp.YMM, Z: behindMM}, false}
			if pupil, ok := direct.seen(); ok {
				all = append(all, Sighting{i + 1, Direct, p.Camera.Pixel(direct.shows(pupil))})
			}
		}
		if behindMM < d.DiameterMM/2 {
			continue
		}
		if through, ok := p.seenThrough(behindMM, layout.Point{XMM: lamp.XMM, YMM: lamp.YMM}); ok &&
			p.shareOfRadius(through) < sliverShare {
			if nearest, ok := catches(p.Camera, through, p.throughBlur(behindMM, through)); ok {
				all = append(all, Sighting{i + 1, ThroughDrop, p.Camera.Pixel(nearest)})
			}
		}
	}
	return all
}

// Facing is whether the sheets' cut edges face the light, so that none throws a shadow.
type Facing struct {
	// length of seams whose cut edge faces away from the lamp that is strongest there
	TurnedMM float64 `json:"turned_mm"`
	AllMM    float64 `json:"all_mm"` // length of all seams
	// the corner to cut for that leaves the least; none when no other leaves less
	Better         layout.Corner `json:"better_light_from,omitempty"`
	BetterTurnedMM float64       `json:"better_turned_mm"`
}

// slantShare is how far the light must lean along the board, for each part that it falls straight, before an
// edge's shadow counts: paper is a tenth of a millimetre thick, and a tenth of that is never seen.
const slantShare = 0.1

// facing compares the corner that the sheets are cut for with where the light comes from at each seam.
func (p Shot) facing() Facing {
	turned := func(c layout.Corner) (mm float64) {
		for _, s := range p.Seams {
			if p.edgeShadows(s, c) {
				mm += s.ToMM - s.FromMM
			}
		}
		return mm
	}
	f := Facing{TurnedMM: turned(p.Backdrop.LightFrom)}
	for _, s := range p.Seams {
		f.AllMM += s.ToMM - s.FromMM
	}
	f.BetterTurnedMM = f.TurnedMM
	for _, c := range []layout.Corner{layout.TopLeft, layout.TopRight, layout.BottomLeft, layout.BottomRight} {
		if mm := turned(c); mm < f.BetterTurnedMM-tolerance {
			f.Better, f.BetterTurnedMM = c, mm
		}
	}
	return f
}

// edgeShadows tells whether a seam whose sheets are cut for light from a corner has its edge in the lee of
// the lamp that is strongest at its middle.
func (p Shot) edgeShadows(s layout.Seam, from layout.Corner) bool {
	x, y := s.AtMM-p.Backdrop.WidthMM/2, (s.FromMM+s.ToMM)/2-p.Backdrop.HeightMM/2
	if s.Axis == "y" {
		x, y = (s.FromMM+s.ToMM)/2-p.Backdrop.WidthMM/2, s.AtMM-p.Backdrop.HeightMM/2
	}
	strongest := p.Lamps[0]
	for _, lamp := range p.Lamps[1:] {
		if lamp.On(x, y) > strongest.On(x, y) {
			strongest = lamp
		}
	}
	lean := (strongest.XMM - x) / strongest.ZMM // above zero: light from the right, or from below
	fromLow := from.Left()
	if s.Axis == "y" {
		lean = (strongest.YMM - y) / strongest.ZMM
		fromLow = from.Top()
	}
	if fromLow {
		return lean > slantShare
	}
	return lean < -slantShare
}
