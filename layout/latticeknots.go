package layout

import "math"

// knots are a lattice's points at the corners of its cells, and in more rows and columns past each side,
// which the outermost cells lean on. Not a number where there is nothing.
type knots [(knotsPast + knotsOut) * (knotsPast + knotsOut)]Point

const (
	knotsPast = 2                            // columns past the outermost corners, rows too
	knotsOut  = latticeCells + 1 + knotsPast // columns from the axis on
)

// at is the knot in a column and a row counted from the axis, from -knotsPast up.
func (k *knots) at(i, j int) *Point { return &k[(j+knotsPast)*(knotsPast+knotsOut)+i+knotsPast] }

// anyAbout tells whether there is something at any corner of the cell right of column i and below row j.
func (k *knots) anyAbout(i, j int) bool {
	for _, at := range [4]*Point{k.at(i, j), k.at(i+1, j), k.at(i, j+1), k.at(i+1, j+1)} {
		if !math.IsNaN(at.XMM) {
			return true
		}
	}
	return false
}

// mirror sets the knots past the axes; those above by the quarter there, which is mirrored down.
func (k *knots) mirror(above *knots) {
	for past := 1; past <= knotsPast; past++ {
		for i := range knotsOut {
			at := *above.at(i, past)
			*k.at(i, -past) = Point{at.XMM, -at.YMM}
		}
	}
	for past := 1; past <= knotsPast; past++ {
		for j := -knotsPast; j < knotsOut; j++ {
			at := *k.at(past, j)
			*k.at(-past, j) = Point{-at.XMM, at.YMM}
		}
	}
}

// goOn carries the knots on to where there is nothing, as far as cells lean on them that have a corner with
// something: each by the cubics through the four before it in its row and in its column, the mean of the two
// where it has both.
func (k *knots) goOn() {
	for range 2 * (knotsPast + 1) { // so many across, and then down
		before := *k
		for j := range knotsOut {
			for i := range knotsOut {
				if at := k.at(i, j); math.IsNaN(at.XMM) {
					*at = before.next(i, j)
				}
			}
		}
	}
}

// next is what goOn takes for a knot.
func (k *knots) next(i, j int) Point {
	var sum Point
	ways := 0.0
	for _, way := range [2]struct{ i, j int }{{1, 0}, {0, 1}} {
		if i < 4*way.i || j < 4*way.j {
			continue
		}
		var next Point
		for back, weight := range [4]float64{4, -6, 4, -1} { // the fourth differences of a cubic are 0
			at := k.at(i-(back+1)*way.i, j-(back+1)*way.j)
			next.XMM, next.YMM = next.XMM+weight*at.XMM, next.YMM+weight*at.YMM
		}
		if !math.IsNaN(next.XMM) {
			sum, ways = Point{sum.XMM + next.XMM, sum.YMM + next.YMM}, ways+1
		}
	}
	return Point{sum.XMM / ways, sum.YMM / ways} // not a number where there is no way
}

// pieces makes of six knots p₋₂ to p₃ the cubic from p₀ to p₁, each row the factor of a power, times
// pieceParts: the one through both with the slopes (p₋₂ - 8p₋₁ + 8p₁ - p₂)/12 at p₀, of the
// quartic through the five about it, and likewise at p₁,
// so that cubics side by side meet without a kink. With h from knot to
// knot both rules' errors, h⁴/384 of the fourth derivatives and h⁴/30 of the fifth in a slope, follow from
// Taylor's series. Of 4-point rules on the same knots Lagrange's misses the picture by 8 times as much, and
// Catmull and Rom's by 30 to 200 times (measured).
var pieces = [4][6]float64{
	{0, 0, 12, 0, 0, 0},
	{1, -8, 0, 8, -1, 0},
	{-2, 15, -28, 20, -6, 1},
	{1, -7, 16, -16, 7, -1},
}

const pieceParts = 12

// cell is the piece of the map right of column i and below row j.
func (k *knots) cell(i, j int) (c cell) {
	var rows [6][4]Point
	for n := range rows {
		for power, weights := range pieces {
			for m, weight := range weights {
				at := k.at(i+m-2, j+n-2)
				rows[n][power].XMM += weight * at.XMM / pieceParts
				rows[n][power].YMM += weight * at.YMM / pieceParts
			}
		}
	}
	for down, weights := range pieces {
		for n, weight := range weights {
			for across, at := range rows[n] {
				c.x[down][across] += weight * at.XMM / pieceParts
				c.y[down][across] += weight * at.YMM / pieceParts
			}
		}
	}
	return c
}
