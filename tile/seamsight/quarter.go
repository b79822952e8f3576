package seamsight

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// quarter is what a drop out of round does to places of the board, worked out beforehand at knots over a
// quarter of it, since it mirrors in both axes. Between knots it goes straight; they lie evenly in the angles
// at which the drop sees the board, each way.
type quarter struct {
	rays
	pupilMM                    float64
	knotsPerRadX, knotsPerRadY float64
	furthestXMM, furthestYMM   float64 // of the board
	spots                      []spot  // quarterKnots to the row
}

// quarterKnots makes what the straight steps leave out a few hundredths of a pixel: a fifth as many as a
// table's rows, and so some 25 times as much.
const quarterKnots = 97

// newQuarter works it out as far as the board goes.
func newQuarter(p layout.Plan) *quarter {
	const hair = 1 + 1e-9 // so that the board's edge lies before the last knots
	q := &quarter{
		rays: rays{p.Sight(), p.Camera.FocusMM}, pupilMM: p.Camera.PupilMM(),
		furthestXMM: p.Backdrop.WidthMM / 2 * hair, furthestYMM: p.Backdrop.HeightMM / 2 * hair,
		spots: make([]spot, quarterKnots*quarterKnots),
	}
	stepX := math.Atan(q.furthestXMM/q.sight.DistanceMM) / (quarterKnots - 1)
	stepY := math.Atan(q.furthestYMM/q.sight.DistanceMM) / (quarterKnots - 1)
	q.knotsPerRadX, q.knotsPerRadY = 1/stepX, 1/stepY
	texture.Rows(quarterKnots, func(j int) {
		for i := range quarterKnots {
			xMM, yMM := math.Tan(float64(i)*stepX)*q.sight.DistanceMM, math.Tan(float64(j)*stepY)*q.sight.DistanceMM
			q.spots[j*quarterKnots+i], _ = q.spot(xMM, yMM, q.pupilMM)
		}
	})
	return q
}

// blurredTo is the quarter for a pupil of that diameter.
func (q *quarter) blurredTo(pupilMM float64) *quarter {
	out := *q
	out.pupilMM = pupilMM
	out.spots = make([]spot, len(q.spots))
	texture.Rows(quarterKnots, func(j int) {
		for i := j * quarterKnots; i < (j+1)*quarterKnots; i++ {
			out.spots[i] = q.blurred(q.spots[i], pupilMM)
		}
	})
	return &out
}

// read is what the drop does to a place, optical mm from the axis. ok is false beyond the board and where the
// drop does not look.
func (q *quarter) read(xMM, yMM float64) (s spot, ok bool) {
	x := math.Atan(math.Abs(xMM)/q.sight.DistanceMM) * q.knotsPerRadX
	y := math.Atan(math.Abs(yMM)/q.sight.DistanceMM) * q.knotsPerRadY
	i, j := int(x), int(y)
	if i+1 >= quarterKnots || j+1 >= quarterKnots {
		return spot{}, false
	}
	fx, fy := x-float64(i), y-float64(j)
	upper, lower := q.spots[j*quarterKnots+i:][:2], q.spots[(j+1)*quarterKnots+i:][:2]
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
