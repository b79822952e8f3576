package seamsight

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// table is what the drop does to places of the board, worked out beforehand by how far from the axis they
// are; for a rod, how far across it. Between rows it goes straight; its rows lie evenly in the angle at which
// the drop sees the board.
//
// Tangential is toward the axis (for a rod across it), sagittal at right angles to that.
type table struct {
	rays
	rowsPerRad float64
	rows       []row // none: the drop shows nothing the right way round
}

// row is what the drop does to a place, in mm of its plane.
type row struct {
	at                           float64 // from the axis
	tangential, sagittal         float64 // for a millimetre of board
	tangentialBlur, sagittalBlur float64 // as the diameters of discs
	light                        float64 // share that gets through; 0 where no ray does
}

// tableRows makes what the straight steps between rows leave out less than a thousandth of a pixel.
const tableRows = 512

// rim is as far out as rays are traced: at the outline itself they graze.
const rim = 1 - 1e-7

// newTable works the table out as far as the board goes, or to the drop's rim. A drop out of round has none:
// see spheroidTable.
func newTable(p layout.Plan) table {
	t := table{rays: rays{p.Sight(), p.Camera.FocusMM}}
	if t.sight.Reverses() == flip.ReversesNone || t.sight.Drop.Oblate() {
		return t
	}
	furthestMM := math.Hypot(p.Backdrop.WidthMM, p.Backdrop.HeightMM) / 2
	if rimMM, ok := t.sight.HeightMM(rim); ok {
		furthestMM = min(furthestMM, -rimMM)
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
		t.rows = append(t.rows, t.row(min(fill, rim)*t.sight.ApparentRadiusMM()))
	}
	return t.blurred(p.Camera.PupilMM())
}

// row traces round the ray from the pupil's centre that crosses the drop's plane atMM from the axis, in steps
// small against the drop and against what is left to its rim. The drop is round or straight, so the row holds
// for every direction.
func (t table) row(atMM float64) row {
	smallMM := min(1e-4*t.sight.Drop.RadiusMM(), (t.sight.ApparentRadiusMM()-atMM)/2)
	l, ok := t.trace(atMM, 0, 0, 0)
	r := row{at: atMM}
	outer, ok1 := t.trace(atMM+smallMM, 0, 0, 0)
	inner, ok2 := t.trace(atMM-smallMM, 0, 0, 0)
	beside, ok3 := t.trace(atMM, smallMM, 0, 0)
	if !ok || !ok1 || !ok2 || !ok3 {
		return r
	}
	r.light = l.Transmittance
	r.tangential = 2 * smallMM / math.Abs(outer.XMM-inner.XMM)
	r.sagittal = smallMM / math.Abs(beside.YMM-l.YMM)
	return r
}

// narrowestPupil is the narrowest pupil that is looked through, as a share of the whole one.
const narrowestPupil = 1e-4

// blurred is the table for a pupil of that diameter. The landings of rays from places in the pupil, root of a
// half of its radius from the middle, stand for the whole: half of the pupil lies inside of them. Where these
// rays pass beside the drop, a narrower pupil is looked through and its blur scaled up. How the drop's
// aberrations change the blur over the field is in this; how they shape it within one pupil is not.
func (t table) blurred(pupilMM float64) table {
	rows := make([]row, len(t.rows))
	for i, r := range t.rows {
		for offMM := pupilMM / 2 * math.Sqrt2 / 2; offMM > narrowestPupil*pupilMM && r.light > 0; offMM /= 2 {
			t1, ok1 := t.trace(r.at, 0, offMM, 0)
			t2, ok2 := t.trace(r.at, 0, -offMM, 0)
			s1, ok3 := t.trace(r.at, 0, 0, offMM)
			s2, ok4 := t.trace(r.at, 0, 0, -offMM)
			if ok1 && ok2 && ok3 && ok4 {
				scale := pupilMM / (2 * offMM)
				r.tangentialBlur = math.Abs(t1.XMM-t2.XMM) * scale * r.tangential
				r.sagittalBlur = math.Abs(s1.YMM-s2.YMM) * scale * r.sagittal
				break
			}
		}
		rows[i] = r
	}
	t.rows = rows
	return t
}

// trace is rays.trace by places that go tangentially and then sagittally, and so do the landing's X and Y.
func (t table) trace(at, side, pupil, pupilSide float64) (flip.Landing, bool) {
	if t.sight.Drop.Body != flip.LevelRod {
		return t.rays.trace(layout.Point{XMM: at, YMM: side}, layout.Point{XMM: pupil, YMM: pupilSide})
	}
	l, ok := t.rays.trace(layout.Point{XMM: side, YMM: at}, layout.Point{XMM: pupilSide, YMM: pupil})
	l.XMM, l.YMM = l.YMM, l.XMM
	return l, ok
}

// read is the table at a distance from the axis. ok is false where the drop does not look.
func (t table) read(awayMM float64) (r row, ok bool) {
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
	}, a.light > 0 && b.light > 0
}
