package layout

import "math"

// insideMM is how far inside the printed picture's outline a place lies, to first order, by what it is seen
// through and how that changes with a millimetre across and down. All are optical mm from the axis.
func (b *bentOnBoard) insideMM(on, through, dx, dy Point) float64 {
	// The fill's outline: the share grows along slope in the drop's plane.
	sx, sy := through.XMM/b.halfWidthMM, through.YMM/b.halfHeightMM
	inside := math.Inf(1)
	if share := length(sx, sy); share > 0 {
		slope := Point{sx / share / b.halfWidthMM, sy / share / b.halfHeightMM}
		inside = (b.fill - share) / length(slope.XMM*dx.XMM+slope.YMM*dx.YMM, slope.XMM*dy.XMM+slope.YMM*dy.YMM)
	}
	// The picture's sides and the circle, by its change with x and y of the board.
	at, ax, ay := b.flatAt(on, through), b.flatAt(Point{1, 0}, dx), b.flatAt(Point{0, 1}, dy)
	for i, n := range b.frame.normals {
		away := b.frame.away[i]*b.flat - (n.XMM*at.XMM + n.YMM*at.YMM)
		inside = min(inside, away/length(n.XMM*ax.XMM+n.YMM*ax.YMM, n.XMM*ay.XMM+n.YMM*ay.YMM))
	}
	if b.round > 0 {
		if away := length(at.XMM, at.YMM); away > 0 {
			x, y := at.XMM/away, at.YMM/away
			inside = min(inside, (b.round-away)/length(x*ax.XMM+y*ax.YMM, x*ay.XMM+y*ay.YMM))
		}
	}
	return inside
}

// depths are, for each of a lattice's cells in all quarters, what insideMM is more than anywhere in the cell;
// minus infinity where that is not known.
type depths []float64

// depths works them out. From corner to corner of a cell insideMM is all but even, as distances are, and
// where two sides meet it bulges up: it is least at a corner. What it changes by from corner to corner is
// taken off once more, and a hundredth, against what bends down: with f″ about f/L² over a quarter of a
// length L, that is f/48²/8 in a cell.
func (b *bentOnBoard) depths() depths {
	const side = latticeCells + 1
	l := b.through
	d := make(depths, 4*quarterCells)
	inRows(4, func(quarter int) {
		signX, signY := 1-2*float64(quarter&1), 1-2*float64(quarter>>1)
		var inside [side * side]float64
		for k := range inside {
			at := Point{signX * l.placeMM(float64(k%side)/l.perX), signY * l.placeMM(float64(k/side)/l.perY)}
			inside[k] = math.Inf(-1)
			if through, dx, dy, _, ok := l.at(at.XMM, at.YMM); ok { // beyond the outermost cells it is not
				inside[k] = b.insideMM(at, through, dx, dy)
			}
		}
		for j := range latticeCells {
			for i := range latticeCells {
				k := j*side + i
				nearest := min(inside[k], inside[k+1], inside[k+side], inside[k+side+1])
				furthest := max(inside[k], inside[k+1], inside[k+side], inside[k+side+1])
				d[quarter*quarterCells+j*latticeCells+i] = nearest - (furthest - nearest) - nearest/100
			}
		}
	})
	return d
}
