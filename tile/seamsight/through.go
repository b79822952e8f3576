package seamsight

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// through is the path through the drop, worked out beforehand by how far from the axis a place of the board is; for a rod, how far across it.
// Between rows the table goes straight; its rows lie evenly in the angle at which the drop sees the board.
//
// Tangential is toward the axis (for a rod across it), sagittal at right angles to that.
type through struct {
	frame
	sight      flip.Sight
	rowsPerRad float64
	rows       []row // none: the drop shows nothing the right way round
}

// row is what the drop does to a place, in mm of its plane.
type row struct {
	at                           float64 // from the axis
	tangential, sagittal         float64 // for a millimetre of board
	tangentialBlur, sagittalBlur float64 // for a millimetre of the pupil's diameter
	light                        float64
}

// tableRows makes the straight steps between rows smaller than a thousandth of a pixel.
const tableRows = 512

// rim is as far out as rays are traced: at the outline itself they graze.
const rim = 1 - 1e-7

// newThrough works the table out as far as the board goes, or to the drop's rim.
func newThrough(p layout.Plan, f frame) through {
	t := through{frame: f, sight: p.Sight()}
	furthestMM := math.Hypot(p.Backdrop.WidthMM, p.Backdrop.HeightMM) / 2
	if t.sight.Reverses() == flip.ReversesNone {
		return t
	}
	rimMM, ok := t.sight.HeightMM(rim)
	if ok && -rimMM < furthestMM {
		furthestMM = -rimMM
	}
	step := math.Atan(furthestMM/t.sight.DistanceMM) / (tableRows - 1)
	if !(step > 0) {
		return t
	}
	t.rowsPerRad = 1 / step
	for i := range tableRows {
		fill, ok := t.sight.FillAt(math.Tan(float64(i)*step) * t.sight.DistanceMM)
		if !ok {
			break
		}
		t.rows = append(t.rows, t.row(min(fill, rim)*f.radiusMM, p.Camera.FocusMM))
	}
	return t
}

// row traces round the ray that crosses the drop's plane atMM from the axis. The drop is round or straight, so the row holds for every
// direction; it is taken along x or, for a level rod, along y.
func (t through) row(atMM, focusMM float64) row {
	lay := func(tangential, sagittal, z float64) flip.Vec {
		if t.body == flip.LevelRod {
			return flip.Vec{X: sagittal, Y: tangential, Z: z}
		}
		return flip.Vec{X: tangential, Y: sagittal, Z: z}
	}
	k := focusMM / t.sight.CameraMM
	// trace looks from a place on the pupil at what the pixel at a place of the drop's plane sees in focus.
	trace := func(at, side, pupil, pupilSide float64) (tangential, sagittal float64, ok bool) {
		from := lay(pupil, pupilSide, -t.sight.CameraMM)
		to := lay(at*k, side*k, focusMM-t.sight.CameraMM)
		l, ok := t.sight.Trace(flip.Ray{From: from, Dir: to.Sub(from).Unit()})
		if t.body == flip.LevelRod {
			l.XMM, l.YMM = l.YMM, l.XMM
		}
		return l.XMM, l.YMM, ok && l.Through
	}
	r := row{at: atMM}
	chief := lay(atMM, 0, 0)
	l, ok := t.sight.Trace(t.sight.PinholeRay(chief.X, chief.Y))
	if !ok {
		return r
	}
	r.light = l.Transmittance
	// Derivatives from steps to either side, small against the drop and against what is left to its rim; sagittally both sides are alike.
	small := min(1e-4*t.radiusMM, (t.radiusMM-atMM)/2)
	slope := func(atStep, sideStep, pupilStep, pupilSideStep float64) (tangential, sagittal float64) {
		t1, s1, ok1 := trace(atMM+atStep, sideStep, pupilStep, pupilSideStep)
		t0, s0, ok0 := trace(atMM-atStep, -sideStep, -pupilStep, -pupilSideStep)
		if !ok0 || !ok1 {
			return math.Inf(1), math.Inf(1)
		}
		return math.Abs(t1-t0) / (2 * small), math.Abs(s1-s0) / (2 * small)
	}
	perTangential, _ := slope(small, 0, 0, 0)
	_, perSagittal := slope(0, small, 0, 0)
	r.tangential, r.sagittal = 1/perTangential, 1/perSagittal
	blurTangential, _ := slope(0, 0, small, 0)
	_, blurSagittal := slope(0, 0, 0, small)
	if r.tangential > 0 && !math.IsInf(blurTangential, 1) {
		r.tangentialBlur = blurTangential * r.tangential
	}
	if r.sagittal > 0 && !math.IsInf(blurSagittal, 1) {
		r.sagittalBlur = blurSagittal * r.sagittal
	}
	return r
}

// read is the table at a distance from the axis. ok is false where the drop does not look.
func (t through) read(awayMM float64) (r row, ok bool) {
	place := math.Atan(awayMM/t.sight.DistanceMM) * t.rowsPerRad
	i := int(place)
	if i+1 >= len(t.rows) {
		return row{}, false
	}
	a, b, part := &t.rows[i], &t.rows[i+1], place-float64(i)
	mix := func(a, b float64) float64 { return a + (b-a)*part }
	return row{
		mix(a.at, b.at), mix(a.tangential, b.tangential), mix(a.sagittal, b.sagittal),
		mix(a.tangentialBlur, b.tangentialBlur), mix(a.sagittalBlur, b.sagittalBlur), mix(a.light, b.light),
	}, true
}

// look is how the drop shows a place, optical mm from the axis, of a seam that runs down ("x") or across ("y").
//
// With e the direction away from the axis, the drop scales the board by t along e and by s at right angles to it. A line whose direction has the
// parts (c, d) in that frame becomes one of direction (tc, sd) and length hypot(tc, sd); across it, areas having grown by ts, a
// millimetre becomes ts / hypot(tc, sd). A blur disc that the drop makes an ellipse is as wide across the line as the ellipse's shadow.
func (t through) look(xMM, yMM float64, axis string) (l look, ok bool) {
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
	r, ok := t.read(awayMM)
	if !ok || r.light == 0 {
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
		blur:  math.Sqrt(wide*wide + high*high),
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

// refined mends the place that a rod shows, which the table knows only for the plane that holds the axis: Newton's steps with the table's scales.
func (t through) refined(l look, xMM, yMM float64) look {
	if t.body == flip.Ball {
		return l
	}
	r, _ := t.read(math.Abs(xMM))
	if t.body == flip.LevelRod {
		r, _ = t.read(math.Abs(yMM))
	}
	scaleX, scaleY := -r.tangential, r.sagittal
	if t.body == flip.LevelRod {
		scaleX, scaleY = r.sagittal, -r.tangential
	}
	const steps = 4
	at := l.at
	for range steps {
		land, ok := t.sight.Trace(t.sight.PinholeRay(at.XMM, at.YMM))
		if !ok || !land.Through {
			return l // at the very rim a step may leave the rod
		}
		at.XMM += (xMM - land.XMM) * scaleX
		at.YMM += (yMM - land.YMM) * scaleY
	}
	l.at, l.asides = at, t.outside(at)
	return l
}
