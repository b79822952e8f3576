package seamsight

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// rays traces from the camera through the drop.
type rays struct {
	sight   flip.Sight
	focusMM float64
}

// trace looks from a place on the pupil, mm from its middle, at what the pixel that looks through a place of
// the drop's plane sees in focus.
func (r rays) trace(at, pupil layout.Point) (flip.Landing, bool) {
	k := r.focusMM / r.sight.CameraMM
	from := flip.Vec{X: pupil.XMM, Y: pupil.YMM, Z: -r.sight.CameraMM}
	to := flip.Vec{X: at.XMM * k, Y: at.YMM * k, Z: r.focusMM - r.sight.CameraMM}
	l, ok := r.sight.Trace(flip.Ray{From: from, Dir: to.Sub(from).Unit()})
	return l, ok && l.Through
}

// matrix takes (x, y) to (xx x + xy y, yx x + yy y).
type matrix struct{ xx, xy, yx, yy float64 }

func (m matrix) determinant() float64 { return m.xx*m.yy - m.xy*m.yx }

// times is m after n.
func (m matrix) times(n matrix) matrix {
	return matrix{m.xx*n.xx + m.xy*n.yx, m.xx*n.xy + m.xy*n.yy, m.yx*n.xx + m.yy*n.yx, m.yx*n.xy + m.yy*n.yy}
}

// inverse undoes m; its determinant must not be 0.
func (m matrix) inverse() matrix {
	d := m.determinant()
	return matrix{m.yy / d, -m.xy / d, -m.yx / d, m.xx / d}
}

// spot is what a drop out of round does to a place of the board, traced in 3-D.
type spot struct {
	at    layout.Point // where the place shows, mm of the drop's plane from the axis
	scale matrix       // from mm of board to mm of the drop's plane
	blur  matrix       // from the pupil's rim, taken as a disc of diameter 1, to mm of the drop's plane
	light float64      // share that gets through; 0 where no ray does
}

// spot traces what the drop does to a place, optical mm from the axis. The slopes of the landing come from
// neighbours in steps small against the drop and against what is left to its rim. ok is false where the drop
// does not look.
func (r rays) spot(xMM, yMM, pupilMM float64) (s spot, ok bool) {
	if s.at.XMM, s.at.YMM, ok = r.sight.SeenThrough(xMM, yMM); !ok {
		return spot{}, false
	}
	halfWidthMM, halfHeightMM := r.sight.OutlineMM()
	share := r.sight.ShareAt(s.at.XMM, s.at.YMM)
	if share > rim {
		return spot{}, false
	}
	smallMM := min(1e-4*r.sight.Drop.RadiusMM(), (1-share)*min(halfWidthMM, halfHeightMM)/2)
	landings, ok := r.apart(func(dx, dy float64) (flip.Landing, bool) {
		return r.trace(layout.Point{XMM: s.at.XMM + dx*smallMM, YMM: s.at.YMM + dy*smallMM}, layout.Point{})
	}, 1/(2*smallMM))
	l, okThere := r.trace(s.at, layout.Point{})
	if !ok || !okThere || landings.determinant() == 0 {
		return spot{}, false
	}
	s.light, s.scale = l.Transmittance, landings.inverse()
	return r.blurred(s, pupilMM), true
}

// apart is how far apart the landings of steps of 1 to either side lie, times k, across and down.
func (r rays) apart(trace func(dx, dy float64) (flip.Landing, bool), k float64) (m matrix, ok bool) {
	right, ok1 := trace(1, 0)
	left, ok2 := trace(-1, 0)
	below, ok3 := trace(0, 1)
	above, ok4 := trace(0, -1)
	return matrix{
		(right.XMM - left.XMM) * k, (below.XMM - above.XMM) * k,
		(right.YMM - left.YMM) * k, (below.YMM - above.YMM) * k,
	}, ok1 && ok2 && ok3 && ok4
}

// blurred is the spot for a pupil of that diameter, looked through as table.blurred has it.
func (r rays) blurred(s spot, pupilMM float64) spot {
	s.blur = matrix{}
	for offMM := pupilMM / 2 * math.Sqrt2 / 2; offMM > narrowestPupil*pupilMM && s.light > 0; offMM /= 2 {
		landings, ok := r.apart(func(dx, dy float64) (flip.Landing, bool) {
			return r.trace(s.at, layout.Point{XMM: dx * offMM, YMM: dy * offMM})
		}, pupilMM/(2*offMM))
		if ok {
			s.blur = s.scale.times(landings)
			break
		}
	}
	return s
}

// look is how the spot shows a seam that runs down ("x") or across ("y"), but for what the frame leaves out.
//
// A line of direction e on the board becomes one of direction Ae, and as long for a millimetre; across it,
// areas having grown by |det A|, a millimetre becomes |det A| / |Ae|. The pupil's disc becomes an ellipse
// B(disc), whose shadow on a direction n is as wide as |Bᵀn|.
func (s spot) look(axis string) (l look, ok bool) {
	x, y := s.scale.xy, s.scale.yy
	if axis == "y" {
		x, y = s.scale.xx, s.scale.yx
	}
	along := math.Hypot(x, y)
	if !(along > 0) {
		return look{}, false
	}
	nx, ny := -y/along, x/along
	board := s.scale.inverse()
	return look{
		at: s.at, across: math.Abs(s.scale.determinant()) / along, along: along,
		blur:  math.Hypot(s.blur.xx*nx+s.blur.yx*ny, s.blur.xy*nx+s.blur.yy*ny),
		boxX:  math.Hypot(board.xx, board.xy),
		boxY:  math.Hypot(board.yx, board.yy),
		light: s.light,
	}, true
}
