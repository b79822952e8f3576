package layout

import (
	"math"
	"sync"
)

// lattice is a map of places about the axis that mirrors left and right, and up and down unless the drop hangs, worked
// out at knots of one quarter, or two, with smooth pieces between them.
//
// Cells are even in the tangent of half the angle at which the drop's centre sees a place: along an axis
// mm/(f + r) on a board f from it, with r = √(mm² + f²) the way there, as the sine over 1 + the cosine. In
// that angle the map is smooth, out to the drop's rim and on beyond, where it folds back; its half's tangent
// takes no arc tangent and is 1 where the board ends, at a right angle.
type lattice struct {
	farMM      float64 // f
	perX, perY float64 // cells to 1 of the half angle's tangent
	turns      float64 // the sign of the map's determinant at the axis; beyond the rim it is the other
	cells      []cell  // latticeCells to the row, of the lower right quarter
	upper      []cell  // of the upper right one, mirrored down; the same where the map mirrors
}

// cell is a piece of the map, all 0 where there is nothing.
type cell struct{ x, y bicubic }

// bicubic is a polynomial of a place in its cell: at [j][i] is what goes with the j-th power of t, how far
// down the place is, and the i-th of s, how far across, both as shares.
type bicubic [4][4]float64

const (
	// latticeCells is how many cells a quarter has each way. Measured (TestLatticeMisses), the picture is
	// missed by 0.009 millionths of its height at a fill of 0.85 and by 0.3 at 0.999, and slopes by 1.2 and 20
	// millionths; with half as many cells it would be by 16 to 21 times as much.
	latticeCells = 48
	quarterCells = latticeCells * latticeCells
	// latticeMarginMM is how far beyond the printed picture the lattice goes, so that its outline lies within.
	latticeMarginMM = 2.0
)

// newLattice works the map out as far as these halves, on a board that far from the drop. to gives the point
// for a place, and false where there is none; whether it mirrors up and down is told.
func newLattice(halfWidthMM, halfHeightMM, farMM float64, mirrors bool,
	to func(xMM, yMM float64) (x, y float64, ok bool)) *lattice {
	per := func(halfMM float64) float64 { return latticeCells * (farMM + math.Hypot(halfMM, farMM)) / halfMM }
	l := &lattice{farMM: farMM, perX: per(halfWidthMM), perY: per(halfHeightMM)}
	lower := l.knots(to)
	if mirrors {
		l.cells = lower.cells(lower)
		l.upper = l.cells
	} else {
		upper := l.knots(func(xMM, yMM float64) (x, y float64, ok bool) {
			x, y, ok = to(xMM, -yMM)
			return x, -y, ok
		})
		l.cells, l.upper = lower.cells(upper), upper.cells(lower)
	}
	middle := l.cells[0]
	l.turns = math.Copysign(1, middle.x[0][1]*middle.y[1][0]-middle.y[0][1]*middle.x[1][0])
	return l
}

// knots are a quarter's, as far as there is something.
func (l *lattice) knots(to func(xMM, yMM float64) (x, y float64, ok bool)) *knots {
	k := &knots{}
	inRows(knotsOut, func(j int) {
		for i := range knotsOut {
			at := k.at(i, j)
			*at = Point{math.NaN(), math.NaN()}
			placeX, placeY := l.placeMM(float64(i)/l.perX), l.placeMM(float64(j)/l.perY)
			if placeX < 0 || placeY < 0 {
				continue
			}
			if x, y, ok := to(placeX, placeY); ok {
				*at = Point{x, y}
			}
		}
	})
	return k
}

// cells are the smooth pieces between the knots of a quarter, beside that on the other side of the axis, which is
// mirrored as this one lies.
func (k *knots) cells(other *knots) []cell {
	full := *k
	full.goOn()
	beyond := &full
	if other != k {
		above := *other
		above.goOn()
		beyond = &above
	}
	full.mirror(beyond)
	cells := make([]cell, quarterCells)
	inRows(latticeCells, func(j int) {
		for i := range latticeCells {
			if k.anyAbout(i, j) {
				cells[j*latticeCells+i] = full.cell(i, j)
			}
		}
	})
	return cells
}

// placeMM is how far from the axis a half angle's tangent lies, below 0 past a right angle: what the tangent
// of twice an angle is.
func (l *lattice) placeMM(half float64) float64 { return l.farMM * 2 * half / (1 - half*half) }

// inRows does that many rows at once.
func inRows(rows int, do func(j int)) {
	var group sync.WaitGroup
	for j := range rows {
		group.Go(func() { do(j) })
	}
	group.Wait()
}

// at is the point for a place and its change with a millimetre across and down, and the number of the cell
// that the place lies in, of those of all quarters. ok is false beyond the knots and where there is nothing.
func (l *lattice) at(xMM, yMM float64) (to, dx, dy Point, number int, ok bool) {
	x, y := math.Abs(xMM), math.Abs(yMM)
	rx, ry := length(x, l.farMM), length(y, l.farMM)
	perX, perY := l.perX/(rx*(l.farMM+rx)), l.perY/(ry*(l.farMM+ry))
	s, t := x*rx*perX, y*ry*perY
	if !(s < latticeCells && t < latticeCells) {
		return Point{}, Point{}, Point{}, 0, false
	}
	i, j := int(s), int(t)
	s, t = s-float64(i), t-float64(j)
	number = j*latticeCells + i
	c := &l.cells[number]
	if yMM < 0 {
		c = &l.upper[number]
	}
	to.XMM, dx.XMM, dy.XMM = c.x.at(s, t)
	to.YMM, dx.YMM, dy.YMM = c.y.at(s, t)
	// The half angle's tangent grows by f/(r(f + r)) with a millimetre.
	perX, perY = perX*l.farMM, perY*l.farMM
	dx, dy = Point{dx.XMM * perX, dx.YMM * perX}, Point{dy.XMM * perY, dy.YMM * perY}
	ok = (dx.XMM*dy.YMM-dx.YMM*dy.XMM)*l.turns > 0
	// To the left of the axis x changes sign, and with it what mixes both axes.
	if xMM < 0 {
		to.XMM, dx.YMM, dy.XMM = -to.XMM, -dx.YMM, -dy.XMM
		number += quarterCells
	}
	if yMM < 0 {
		to.YMM, dx.YMM, dy.XMM = -to.YMM, -dx.YMM, -dy.XMM
		number += 2 * quarterCells
	}
	return to, dx, dy, number, ok
}

// at is the value and its changes with s and with t.
func (b *bicubic) at(s, t float64) (v, ds, dt float64) {
	v0, s0 := cubic(b[0][0], b[0][1], b[0][2], b[0][3], s)
	v1, s1 := cubic(b[1][0], b[1][1], b[1][2], b[1][3], s)
	v2, s2 := cubic(b[2][0], b[2][1], b[2][2], b[2][3], s)
	v3, s3 := cubic(b[3][0], b[3][1], b[3][2], b[3][3], s)
	v, dt = cubic(v0, v1, v2, v3, t)
	ds, _ = cubic(s0, s1, s2, s3, t)
	return v, ds, dt
}

// cubic is a + bx + cx² + dx³ and its slope, by Horner's rule.
func cubic(a, b, c, d, x float64) (value, slope float64) {
	value = d*x + c
	slope = d*x + value
	value = value*x + b
	return value*x + a, slope*x + value
}
