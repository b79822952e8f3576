package guide

import (
	"math"

	"dropsheet/layout"
)

// lattice is a quantity over a rectangle, read at the corners of even squares.
type lattice struct {
	in            layout.Rect
	columns, rows int       // squares
	values        []float64 // (columns + 1) by (rows + 1)
}

// newLattice reads of at every corner; side is the number of squares along the rectangle's longer side.
func newLattice(of func(xMM, yMM float64) float64, in layout.Rect, side int) lattice {
	longer := math.Max(in.WidthMM, in.HeightMM)
	l := lattice{in: in, columns: max(1, int(float64(side)*in.WidthMM/longer)),
		rows: max(1, int(float64(side)*in.HeightMM/longer))}
	for j := range l.rows + 1 {
		for i := range l.columns + 1 {
			p := l.at(float64(i), float64(j))
			l.values = append(l.values, of(p.XMM, p.YMM))
		}
	}
	return l
}

// at is the place of a lattice coordinate.
func (l lattice) at(i, j float64) layout.Point {
	return layout.Point{XMM: l.in.XMM + l.in.WidthMM*i/float64(l.columns), YMM: l.in.YMM + l.in.HeightMM*j/float64(l.rows)}
}

// contour returns the line on which the quantity has that value, as short pieces: in every square, straight
// between the places on its sides where the value is passed (marching squares). Where all four sides are
// passed, the square's mean says which places belong together.
func (l lattice) contour(level float64) [][2]layout.Point {
	var pieces [][2]layout.Point
	for j := range l.rows {
		for i := range l.columns {
			corner := func(di, dj int) float64 { return l.values[(j+dj)*(l.columns+1)+i+di] }
			// The corners in turn round the square, and the places passed on the sides between them.
			turn := [4][2]int{{0, 0}, {1, 0}, {1, 1}, {0, 1}}
			var passed []layout.Point
			mean := 0.0
			for n, c := range turn {
				d := turn[(n+1)%4]
				v, w := corner(c[0], c[1]), corner(d[0], d[1])
				mean += v / 4
				if (v < level) != (w < level) {
					t := (level - v) / (w - v)
					passed = append(passed, l.at(float64(i+c[0])+t*float64(d[0]-c[0]), float64(j+c[1])+t*float64(d[1]-c[1])))
				}
			}
			switch {
			case len(passed) == 2:
				pieces = append(pieces, [2]layout.Point{passed[0], passed[1]})
			case len(passed) == 4 && (corner(0, 0) < level) == (mean < level):
				pieces = append(pieces, [2]layout.Point{passed[0], passed[1]}, [2]layout.Point{passed[2], passed[3]})
			case len(passed) == 4:
				pieces = append(pieces, [2]layout.Point{passed[3], passed[0]}, [2]layout.Point{passed[1], passed[2]})
			}
		}
	}
	return pieces
}
