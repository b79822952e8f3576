package layout

import "math"

// Sheet anatomy, in mm.
const (
	// BleedMM is how far a sheet prints past a cut line, so that a cut a little off still shows picture.
	BleedMM = 2.0
	// StripMM is what a cut side keeps clear for cut marks, label and check rule, counted from the cut line;
	// the bleed lies in it.
	StripMM = 6.0
	// leastStripMM is the least that a strip comes to where a sheet is printed again on paper that lacks the room: beyond
	// the bleed it holds the label's letters, 2 mm high, and cut marks of 2 mm.
	leastStripMM = 4.5
	// minCellMM is the least a cell may measure: smaller pieces can't be cut and pasted by hand (common
	// practice, no source).
	minCellMM = 20.0
	// minLapMM is the least lap that holds the landing ticks and glue (common practice, no source).
	minLapMM = 3.0
)

// slack absorbs rounding where a length is compared with what sheets can hold, in mm.
const slack = 1e-9

// run is one direction of the board: how much of it a sheet can show.
// Sheets count from the lamp's side, where each is cut; all but the last carry a lap on the far side.
type run struct{ liveMM, lapMM float64 }

// innerMM is the most that a sheet which carries a lap can show; lastMM the most of the last one, cut on both sides.
func (r run) innerMM() float64 { return r.liveMM - StripMM - r.lapMM }
func (r run) lastMM() float64  { return r.liveMM - 2*StripMM }

// holdsMM is the longest run that n sheets can show.
func (r run) holdsMM(n int) float64 { return float64(n-1)*r.innerMM() + r.lastMM() }

// sheets is the fewest that show lengthMM.
func (r run) sheets(lengthMM float64) int {
	if lengthMM <= r.lastMM()+slack {
		return 1
	}
	return 1 + int(math.Ceil((lengthMM-r.lastMM())/r.innerMM()-slack))
}

// cells cuts lengthMM into n cells, as even as their limits allow, in order from the lamp's side.
func (r run) cells(lengthMM float64, n int) []float64 {
	inner, last := lengthMM/float64(n), lengthMM/float64(n)
	switch {
	case n == 1:
	case inner > r.innerMM():
		inner = r.innerMM()
		last = lengthMM - float64(n-1)*inner
	case last > r.lastMM():
		last = r.lastMM()
		inner = (lengthMM - last) / float64(n-1)
	}
	cells := make([]float64, n)
	for i := range cells {
		cells[i] = inner
	}
	cells[n-1] = last
	return cells
}

// edges turns cell lengths, counted from the lamp's side, into the n+1 board coordinates of their edges in
// rising order.
func edges(cells []float64, lengthMM float64, lampFirst bool) []float64 {
	e := make([]float64, len(cells)+1)
	for i := range cells {
		c := cells[i]
		if !lampFirst {
			c = cells[len(cells)-1-i]
		}
		e[i+1] = e[i] + c
	}
	e[len(cells)] = lengthMM
	return e
}
