package layout

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// Bounds of where a seam may be put, in mm.
const (
	// sliverMM is the least that a cell may measure when seams slide: narrower strips of paper curl and pull
	// askew (common practice, no source). Where even cells are narrower, their size is the bound.
	sliverMM = 40.0
	// SeamLatticeMM is how finely seams are placed: no one cuts paper truer than half a millimetre by hand
	// (common practice, no source), and the guide's figures stay short. The seams of even cells and the
	// furthest that sheets reach are tried besides.
	SeamLatticeMM = 0.5
)

// crossingSteps is how finely lengths in places to be avoided are told apart, steps to the millimetre.
const crossingSteps = 1000

// burden is what a seam, or a whole layout, counts. What comes first outweighs anything that follows; all add
// up exactly but the last.
type burden struct {
	crossing int64 // length in places to be avoided, in crossingSteps
	cost     int64 // in SeamCosts' units
	// squared distances from the seams of even cells, mm²: of layouts as good as each other the more even wins
	uneven float64
}

func (b burden) add(c burden) burden {
	return burden{b.crossing + c.crossing, b.cost + c.cost, b.uneven + c.uneven}
}

func (b burden) compare(c burden) int {
	return cmp.Or(cmp.Compare(b.crossing, c.crossing), cmp.Compare(b.cost, c.cost), cmp.Compare(b.uneven, c.uneven))
}

// line is one direction of the board that is to be cut.
type line struct {
	even    []float64 // edges of even cells from 0 to the board's end, in rising order
	mostMM  []float64 // the most that each cell may measure; even cells keep to it
	leastMM float64   // the least
	// fixed are the places of seams that must lie there, by how many cells are before them
	fixed map[int]float64
}

// newLine is the line for n cells of a run, which must be able to hold it.
func newLine(r run, lengthMM float64, n int, lampFirst bool) (line, error) {
	if !(lengthMM > 0 && lengthMM <= r.holdsMM(n)+tolerance) {
		return line{}, fmt.Errorf("%d sheets of this paper show at most %.1fmm, and the board measures %.1fmm\nhint: lay "+
			"it out anew", n, r.holdsMM(n), lengthMM)
	}
	l := line{even: edges(r.cells(lengthMM, n), lengthMM, lampFirst), mostMM: make([]float64, n), leastMM: sliverMM}
	for i := range l.mostMM {
		l.mostMM[i] = r.innerMM()
		l.leastMM = min(l.leastMM, l.even[i+1]-l.even[i])
	}
	last := n - 1 // from the lamp's side
	if !lampFirst {
		last = 0
	}
	l.mostMM[last] = r.lastMM()
	return l, nil
}

// spot is a place for a seam.
type spot struct {
	atMM float64
	best burden // the least that this seam and those before it can weigh together
	from int    // the spot of the seam before in that layout
}

// place returns the edges of the cells with the least burden, of all layouts whose seams lie on the lattice,
// and that burden. weigh tells what a seam counts but for its unevenness.
//
// Dynamic programming: for the i-th seam and each spot that it can take, the best layout of the seams before
// it is known from the best of the seam before, which must lie at least the narrowest and at most the widest
// cell back. That window only ever moves on, so its best is kept in a queue and each spot is looked at a
// constant number of times. Of layouts that weigh the same the first is taken. ok is false where fixed seams leave
// none.
func (l line) place(weigh func(atMM float64) burden) (edgesMM []float64, least burden, ok bool) {
	n := len(l.mostMM)
	layers := make([][]spot, n) // layers[i] are the spots of the seam after i cells
	layers[0] = []spot{{}}
	candidates := l.candidates()
	for i := 1; i < n; i++ {
		before := layers[i-1]
		// spots of the seam before that the window holds, but for those that a later one betters; the best is first
		var queue []int
		next := 0
		for _, atMM := range candidates[i] {
			for ; next < len(before) && before[next].atMM <= atMM-l.leastMM+slack; next++ {
				for len(queue) > 0 && before[next].best.compare(before[queue[len(queue)-1]].best) < 0 {
					queue = queue[:len(queue)-1]
				}
				queue = append(queue, next)
			}
			for len(queue) > 0 && before[queue[0]].atMM < atMM-l.mostMM[i-1]-slack {
				queue = queue[1:]
			}
			if len(queue) == 0 {
				continue
			}
			b := weigh(atMM)
			b.uneven = (atMM - l.even[i]) * (atMM - l.even[i])
			layers[i] = append(layers[i], spot{atMM, before[queue[0]].best.add(b), queue[0]})
		}
	}

	placed := slices.Clone(l.even)
	if len(layers[n-1]) == 0 {
		return nil, burden{}, false
	}
	at := 0
	for k, s := range layers[n-1] {
		if s.best.compare(layers[n-1][at].best) < 0 {
			at = k
		}
	}
	least = layers[n-1][at].best
	for i := n - 1; i > 0; i-- {
		placed[i], at = layers[i][at].atMM, layers[i][at].from
	}
	return placed, least, true
}

// candidates are, for each seam after i cells, the places that leave the cells on both its sides room to keep
// their limits, in rising order.
func (l line) candidates() [][]float64 {
	n, lengthMM := len(l.mostMM), l.even[len(l.even)-1]
	wholeMM := 0.0
	for _, most := range l.mostMM {
		wholeMM += most
	}
	all := make([][]float64, n)
	beforeMM := 0.0 // the most that the cells before the seam can measure
	for i := 1; i < n; i++ {
		beforeMM += l.mostMM[i-1]
		low := max(float64(i)*l.leastMM, lengthMM-(wholeMM-beforeMM))
		high := min(beforeMM, lengthMM-float64(n-i)*l.leastMM)
		if atMM, ok := l.fixed[i]; ok {
			if atMM >= low-slack && atMM <= high+slack {
				all[i] = []float64{atMM}
			}
			continue
		}
		places := []float64{l.even[i]}
		add := func(atMM float64) {
			if math.Abs(atMM-l.even[i]) > slack {
				places = append(places, atMM)
			}
		}
		add(low)
		add(high)
		for k := math.Ceil(low / SeamLatticeMM); k*SeamLatticeMM <= high; k++ {
			add(k * SeamLatticeMM)
		}
		slices.Sort(places)
		all[i] = slices.CompactFunc(places, func(a, b float64) bool { return math.Abs(a-b) <= slack })
	}
	return all
}
