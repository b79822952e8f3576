package layout

import (
	"math"
	"sync"
)

// lattice is a map of places about the axis that mirrors in both axes, worked out at knots of one quarter and taken on a slope between them.
type lattice struct {
	stepX, stepY float64 // mm from knot to knot
	knots        []Point // latticeCells + 1 to the row; not a number where there is nothing
}

const (
	// latticeCells is how many cells a quarter has each way. Between knots h apart a slope misses a map by at most h²/8 of its second
	// derivatives; what a drop sees bends over a length of about its distance, so with h a 128th of the half-width that is some 8 millionths of the half-width.
	latticeCells = 128
	// latticeMarginMM is how far beyond the printed picture the lattice goes, so that its outline lies within.
	latticeMarginMM = 2.0
)

// newLattice works the knots out as far as these halves. to gives the point for a place, and false where there is none.
func newLattice(halfWidthMM, halfHeightMM float64, to func(xMM, yMM float64) (x, y float64, ok bool)) lattice {
	l := lattice{halfWidthMM / latticeCells, halfHeightMM / latticeCells, make([]Point, (latticeCells+1)*(latticeCells+1))}
	var group sync.WaitGroup
	for j := range latticeCells + 1 {
		group.Go(func() {
			for i := range latticeCells + 1 {
				x, y, ok := to(float64(i)*l.stepX, float64(j)*l.stepY)
				if !ok {
					x, y = math.NaN(), math.NaN()
				}
				l.knots[j*(latticeCells+1)+i] = Point{x, y}
			}
		})
	}
	group.Wait()
	return l
}

// at is the point for a place and its change with a millimetre across and down. ok is false beyond the knots and where there is nothing.
func (l lattice) at(xMM, yMM float64) (to, dx, dy Point, ok bool) {
	x, y := math.Abs(xMM)/l.stepX, math.Abs(yMM)/l.stepY
	if !(x < latticeCells && y < latticeCells) {
		return Point{}, Point{}, Point{}, false
	}
	i, j := int(x), int(y)
	fx, fy := x-float64(i), y-float64(j)
	row, next := l.knots[j*(latticeCells+1)+i:][:2], l.knots[(j+1)*(latticeCells+1)+i:][:2]
	along := func(a, b Point, part float64) Point {
		return Point{a.XMM + (b.XMM-a.XMM)*part, a.YMM + (b.YMM-a.YMM)*part}
	}
	upper, lower := along(row[0], row[1], fx), along(next[0], next[1], fx)
	left, right := along(row[0], next[0], fy), along(row[1], next[1], fy)
	to = along(upper, lower, fy)
	dx = Point{(right.XMM - left.XMM) / l.stepX, (right.YMM - left.YMM) / l.stepX}
	dy = Point{(lower.XMM - upper.XMM) / l.stepY, (lower.YMM - upper.YMM) / l.stepY}
	// To the left of the axis x changes sign, and with it what mixes both axes.
	if xMM < 0 {
		to.XMM, dx.YMM, dy.XMM = -to.XMM, -dx.YMM, -dy.XMM
	}
	if yMM < 0 {
		to.YMM, dx.YMM, dy.XMM = -to.YMM, -dx.YMM, -dy.XMM
	}
	return to, dx, dy, !math.IsNaN(to.XMM)
}
