package seamsight

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// through is the path through the drop.
type through struct {
	frame
	table    table
	spheroid *spheroidTable // of a drop out of round, instead of the table
}

// newThrough prepares the path.
func newThrough(p layout.Plan, f frame) through {
	t := through{frame: f, table: newTable(p)}
	if sight := p.Sight(); sight.Drop.Oblate() && sight.Reverses() != flip.ReversesNone {
		t.spheroid = newSpheroidTable(p)
	}
	return t
}

// blurred is the path for a pupil of that diameter.
func (t through) blurred(pupilMM float64) through {
	t.table = t.table.blurred(pupilMM)
	if t.spheroid != nil {
		t.spheroid = t.spheroid.blurredTo(pupilMM)
	}
	return t
}

// look is how the drop shows a place, optical mm from the axis, of a seam that runs down ("x") or across ("y").
//
// With e the direction away from the axis, the drop scales the board by t along e and by s at right angles to
// it. A line whose direction has the parts (c, d) in that frame becomes one of direction (tc, sd) and length
// hypot(tc, sd); across it, areas having grown by ts, a millimetre becomes ts / hypot(tc, sd). A blur disc
// that the drop makes an ellipse is as wide across the line as the ellipse's shadow.
func (t through) look(xMM, yMM float64, axis string) (l look, ok bool) {
	if t.spheroid != nil {
		s, ok := t.spheroid.read(xMM, yMM)
		if !ok {
			return look{}, false
		}
		return t.ofSpot(s, axis)
	}
	awayMM, ex, ey := 0.0, 1.0, 0.0
	switch t.body {
	case flip.UprightRod:
		awayMM = math.Abs(xMM)
	case flip.LevelRod:
		awayMM, ex, ey = math.Abs(yMM), 0, 1
	default:
		if awayMM = math.Sqrt(xMM*xMM + yMM*yMM); awayMM > 0 {
			ex, ey = xMM/awayMM, yMM/awayMM
		}
	}
	r, ok := t.table.read(awayMM)
	if !ok {
		return look{}, false
	}
	c, d := ey, ex
	if axis == "y" {
		c, d = ex, -ey
	}
	tc, sd := r.tangential*c, r.sagittal*d
	along := math.Sqrt(tc*tc + sd*sd)
	if !(along > 0) {
		return look{}, false
	}
	wide, high := r.tangentialBlur*sd/along, r.sagittalBlur*tc/along
	l = look{
		across: r.tangential * r.sagittal / along, along: along,
		blur: math.Sqrt(wide*wide + high*high),
		// A square of the frame shows a box of the board that is turned with e; these are the sides of an
		// upright one that is as large each way.
		boxX:  math.Sqrt(ex*ex/(r.tangential*r.tangential) + ey*ey/(r.sagittal*r.sagittal)),
		boxY:  math.Sqrt(ey*ey/(r.tangential*r.tangential) + ex*ex/(r.sagittal*r.sagittal)),
		light: r.light,
	}
	switch t.body {
	case flip.UprightRod:
		l.at = layout.Point{XMM: math.Copysign(r.at, -xMM), YMM: yMM * r.sagittal}
	case flip.LevelRod:
		l.at = layout.Point{XMM: xMM * r.sagittal, YMM: math.Copysign(r.at, -yMM)}
	default:
		l.at = layout.Point{XMM: -r.at * ex, YMM: -r.at * ey}
	}
	l.asides = t.outside(l.at)
	return l, true
}

// ofSpot is the look of a spot of a drop out of round.
func (t through) ofSpot(s spot, axis string) (l look, ok bool) {
	l, ok = s.look(axis)
	l.asides = t.outside(l.at)
	return l, ok
}

// refined mends what the tables know in steps only: of a drop out of round everything, by tracing the place
// itself, and the place that a rod shows.
func (t through) refined(l look, xMM, yMM float64, axis string) look {
	if t.spheroid != nil {
		if s, ok := t.spheroid.spot(xMM, yMM, t.spheroid.pupilMM); ok {
			if exact, ok := t.ofSpot(s, axis); ok {
				return exact
			}
		}
		return l
	}
	if !t.body.Rod() {
		return l
	}
	return t.refinedRod(l, xMM, yMM)
}

// refinedRod mends the place that a rod shows, which the table knows only for the plane that holds the axis:
// Newton's steps with the table's scales.
func (t through) refinedRod(l look, xMM, yMM float64) look {
	r, _ := t.table.read(math.Abs(xMM))
	if t.body == flip.LevelRod {
		r, _ = t.table.read(math.Abs(yMM))
	}
	scaleX, scaleY := -r.tangential, r.sagittal
	if t.body == flip.LevelRod {
		scaleX, scaleY = r.sagittal, -r.tangential
	}
	const steps = 4
	at := l.at
	for range steps {
		land, ok := t.table.sight.Trace(t.table.sight.PinholeRay(at.XMM, at.YMM))
		if !ok || !land.Through {
			return l // at the very rim a step may leave the rod
		}
		at.XMM += (xMM - land.XMM) * scaleX
		at.YMM += (yMM - land.YMM) * scaleY
	}
	l.at, l.asides = at, t.outside(at)
	return l
}
