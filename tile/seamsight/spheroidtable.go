package seamsight

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// spheroidTable is what a drop out of round, a spheroid, does to places of the board, worked out beforehand
// at knots over a quarter of it, since it mirrors in both axes; of a drop that hangs over two, since that does so left
// and right alone. Between knots it interpolates; they lie evenly in the angles at which the drop sees the board, each
// way.
type spheroidTable struct {
	rays
	pupilMM                    float64
	knotsPerRadX, knotsPerRadY float64
	furthestXMM, furthestYMM   float64 // of the board
	spots                      []spot  // spheroidKnots to the row, of the lower right quarter
	upper                      []spot  // of the upper right one, mirrored down; nil where that is the same
}

// spheroidKnots makes what the straight steps leave out a few hundredths of a pixel: a fifth as many as a
// table's rows, and so some 25 times as much.
const spheroidKnots = 97

// newSpheroidTable works it out as far as the board goes.
func newSpheroidTable(p layout.Plan) *spheroidTable {
	const hair = 1 + 1e-9 // so that the board's edge lies before the last knots
	t := &spheroidTable{
		rays: rays{p.Sight(), p.Camera.FocusMM}, pupilMM: p.Camera.PupilMM(),
		furthestXMM: p.Backdrop.WidthMM / 2 * hair, furthestYMM: p.Backdrop.HeightMM / 2 * hair,
		spots: make([]spot, spheroidKnots*spheroidKnots),
	}
	stepX := math.Atan(t.furthestXMM/t.sight.DistanceMM) / (spheroidKnots - 1)
	stepY := math.Atan(t.furthestYMM/t.sight.DistanceMM) / (spheroidKnots - 1)
	t.knotsPerRadX, t.knotsPerRadY = 1/stepX, 1/stepY
	if p.Drop.Body == flip.Hanging {
		t.upper = make([]spot, spheroidKnots*spheroidKnots)
	}
	texture.Rows(spheroidKnots, func(j int) {
		for i := range spheroidKnots {
			xMM, yMM := math.Tan(float64(i)*stepX)*t.sight.DistanceMM, math.Tan(float64(j)*stepY)*t.sight.DistanceMM
			t.spots[j*spheroidKnots+i], _ = t.spot(xMM, yMM, t.pupilMM)
			if t.upper != nil {
				s, _ := t.spot(xMM, -yMM, t.pupilMM)
				t.upper[j*spheroidKnots+i] = s.mirroredDown()
			}
		}
	})
	return t
}

// blurredTo is the table for a pupil of that diameter.
func (t *spheroidTable) blurredTo(pupilMM float64) *spheroidTable {
	out := *t
	out.pupilMM = pupilMM
	out.spots, out.upper = make([]spot, len(t.spots)), make([]spot, len(t.upper))
	texture.Rows(spheroidKnots, func(j int) {
		for i := j * spheroidKnots; i < (j+1)*spheroidKnots; i++ {
			out.spots[i] = t.blurred(t.spots[i], pupilMM)
			if len(t.upper) > 0 {
				out.upper[i] = t.blurred(t.upper[i].mirroredDown(), pupilMM).mirroredDown()
			}
		}
	})
	return &out
}

// mirroredDown is the spot as it would be on the other side of the level axis.
func (s spot) mirroredDown() spot {
	s.at.YMM = -s.at.YMM
	s.scale.xy, s.scale.yx, s.blur.xy, s.blur.yx = -s.scale.xy, -s.scale.yx, -s.blur.xy, -s.blur.yx
	return s
}

// read is what the drop does to a place, optical mm from the axis. ok is false beyond the board and where the
// drop does not look.
func (t *spheroidTable) read(xMM, yMM float64) (s spot, ok bool) {
	x := math.Atan(math.Abs(xMM)/t.sight.DistanceMM) * t.knotsPerRadX
	y := math.Atan(math.Abs(yMM)/t.sight.DistanceMM) * t.knotsPerRadY
	i, j := int(x), int(y)
	if i+1 >= spheroidKnots || j+1 >= spheroidKnots {
		return spot{}, false
	}
	fx, fy := x-float64(i), y-float64(j)
	spots := t.spots
	if yMM < 0 && len(t.upper) > 0 {
		spots = t.upper
	}
	upper, lower := spots[j*spheroidKnots+i:][:2], spots[(j+1)*spheroidKnots+i:][:2]
	if !(upper[0].light > 0 && upper[1].light > 0 && lower[0].light > 0 && lower[1].light > 0) {
		return spot{}, false
	}
	s.add(&upper[0], (1-fx)*(1-fy))
	s.add(&upper[1], fx*(1-fy))
	s.add(&lower[0], (1-fx)*fy)
	s.add(&lower[1], fx*fy)
	// To the left of the axis x changes sign, and with it what mixes both axes.
	if (xMM < 0) != (yMM < 0) {
		s.scale.xy, s.scale.yx, s.blur.xy, s.blur.yx = -s.scale.xy, -s.scale.yx, -s.blur.xy, -s.blur.yx
	}
	if xMM < 0 {
		s.at.XMM = -s.at.XMM
	}
	if yMM < 0 {
		s.at.YMM = -s.at.YMM
	}
	return s, true
}

// add adds a share of another spot.
func (s *spot) add(o *spot, share float64) {
	s.at.XMM, s.at.YMM = s.at.XMM+o.at.XMM*share, s.at.YMM+o.at.YMM*share
	s.scale.add(&o.scale, share)
	s.blur.add(&o.blur, share)
	s.light += o.light * share
}

func (m *matrix) add(o *matrix, share float64) {
	m.xx, m.xy = m.xx+o.xx*share, m.xy+o.xy*share
	m.yx, m.yy = m.yx+o.yx*share, m.yy+o.yy*share
}
