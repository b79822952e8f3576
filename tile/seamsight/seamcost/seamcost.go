// Package seamcost adds up how plainly a seam would show wherever it could run: the costs by which layout
// slides seams to where they show least.
//
// Frame: board millimetres, origin at the board's top-left corner, x right, y down.
package seamcost

import (
	"math"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// Element is how plainly a millimetre of seam shows at a place of the board, 0 and up. axis is the seam's
// own: "x" for one that runs down, "y" for one that runs across.
type Element func(xMM, yMM float64, axis string) float64

const (
	// pieceMM is how long the pieces of a seam are that are added up, at most. With pieces of one millimetre
	// what slid seams cost as a share of even ones changes by less than 0.01 (a test).
	pieceMM = 4.0
	// coarsest is how many steps of the result lie between the seams that are added up first: 4 mm. Where
	// costs do not run straight between those, as at the edge of what the frame sees or along a mast, seams
	// between them are added up too.
	coarsest = 8
	// straightWithin is how far costs halfway may lie from the straight line, as a share of the greater, to be
	// taken for straight.
	straightWithin = 0.02
	// aimMM is how far a board may hang, or a camera be aimed, beside its mark (common practice, no source). A
	// seam counts as what it costs on average when it lies up to that far to either side, or else it would be
	// put a hair beyond the edge of what the frame sees.
	aimMM = 5.0
)

// Sum adds element up along every seam that the board could have, as finely as seams can be placed, each
// averaged over the 5 mm to either side. The costs are in element's unit times millimetres.
func Sum(board layout.Rect, element Element) layout.SeamCosts {
	return layout.SeamCosts{
		StepMM: layout.SeamLatticeMM,
		Down: averaged(lines(board.WidthMM, board.HeightMM, func(x, y float64) float64 {
			return element(board.XMM+x, board.YMM+y, "x")
		})),
		Across: averaged(lines(board.HeightMM, board.WidthMM, func(y, x float64) float64 {
			return element(board.XMM+x, board.YMM+y, "y")
		})),
	}
}

// lines adds up along lines of that length, one every step until the board ends; the last lies on its edge.
func lines(wideMM, longMM float64, element func(atMM, alongMM float64) float64) []float64 {
	l := costLines{
		sums: make([]float64, int(math.Ceil(wideMM/layout.SeamLatticeMM))+1), wideMM: wideMM,
		pieces: int(math.Ceil(longMM / pieceMM)), longMM: longMM, element: element,
	}
	last := len(l.sums) - 1
	spans := (last + coarsest - 1) / coarsest
	texture.Rows(spans+1, func(k int) { l.add(min(k*coarsest, last)) })
	texture.Rows(spans, func(k int) { l.between(k*coarsest, min((k+1)*coarsest, last)) })
	return l.sums
}

// costLines are the sums along neighbouring lines.
type costLines struct {
	sums           []float64
	wideMM, longMM float64
	pieces         int // of equal length, each taken at its middle
	element        func(atMM, alongMM float64) float64
}

// atMM is where line i lies.
func (l costLines) atMM(i int) float64 { return min(float64(i)*layout.SeamLatticeMM, l.wideMM) }

// add adds up along line i.
func (l costLines) add(i int) {
	atMM := l.atMM(i)
	piece := l.longMM / float64(l.pieces)
	sum := 0.0
	for k := range l.pieces {
		sum += l.element(atMM, (float64(k)+0.5)*piece)
	}
	l.sums[i] = sum * piece
}

// between fills in the sums between two lines that are known.
func (l costLines) between(from, to int) {
	if to-from < 2 {
		return
	}
	middle := (from + to) / 2
	l.add(middle)
	if sum := l.sums[middle]; math.Abs(l.straight(from, to, middle)-sum) > straightWithin*max(l.sums[from], l.sums[to],
		sum) {
		l.between(from, middle)
		l.between(middle, to)
		return
	}
	for i := from + 1; i < middle; i++ {
		l.sums[i] = l.straight(from, middle, i)
	}
	for i := middle + 1; i < to; i++ {
		l.sums[i] = l.straight(middle, to, i)
	}
}

// straight is what line i would have if sums went straight from one line to another.
func (l costLines) straight(from, to, i int) float64 {
	part := (l.atMM(i) - l.atMM(from)) / (l.atMM(to) - l.atMM(from))
	return l.sums[from] + (l.sums[to]-l.sums[from])*part
}

// averaged takes the mean over aimMM to either side, or as much as there is on both. The last line, on the
// board's edge, is nearer to its neighbour than others are and counts only for itself.
func averaged(sums []float64) []float64 {
	const reach = int(aimMM / layout.SeamLatticeMM)
	last := len(sums) - 1
	means := slices.Clone(sums)
	for i := range last {
		reach := min(reach, i, last-1-i)
		total := 0.0
		for _, sum := range sums[i-reach : i+reach+1] {
			total += sum
		}
		means[i] = total / float64(2*reach+1)
	}
	return means
}
