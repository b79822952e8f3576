package shot

import "dropsheet/layout"

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
func (s Shot) facing() Facing {
	light := s.Light()
	turned := func(c layout.Corner) (mm float64) {
		for _, seam := range s.Seams {
			if s.edgeShadows(light, seam, c) {
				mm += seam.ToMM - seam.FromMM
			}
		}
		return mm
	}
	f := Facing{TurnedMM: turned(s.Backdrop.LightFrom)}
	for _, seam := range s.Seams {
		f.AllMM += seam.ToMM - seam.FromMM
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
func (s Shot) edgeShadows(light layout.Light, seam layout.Seam, from layout.Corner) bool {
	at := layout.Point{XMM: seam.AtMM, YMM: (seam.FromMM + seam.ToMM) / 2}
	if seam.Axis == "y" {
		at = layout.Point{XMM: (seam.FromMM + seam.ToMM) / 2, YMM: seam.AtMM}
	}
	which := 0
	for i := range s.Lamps {
		if light.Of(i, at.XMM, at.YMM) > light.Of(which, at.XMM, at.YMM) {
			which = i
		}
	}
	strongest := s.Lamps[which]
	x, y := at.XMM-s.Backdrop.WidthMM/2, at.YMM-s.Backdrop.HeightMM/2
	lean := (strongest.XMM - x) / strongest.ZMM // above zero: light from the right, or from below
	fromLow := from.Left()
	if seam.Axis == "y" {
		lean = (strongest.YMM - y) / strongest.ZMM
		fromLow = from.Top()
	}
	if fromLow {
		return lean > slantShare
	}
	return lean < -slantShare
}
