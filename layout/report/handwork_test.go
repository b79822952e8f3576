package report

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// Ways to lay a sheet.
const (
	byLanding = "by its neighbour's marks alone"
	byGrid    = "by the pencil grid alone"
	checked   = "by the grid, the ticks checked and a difference split"
)

// readOffMM is how far a tick is misread, as a standard deviation: its hairline's width (common practice, no source).
const readOffMM = 0.2

// marksFromMM is how far past a seam the first ink is: tile/sheet has none nearer.
const marksFromMM = 1.5

// pasted is a board that was cut and pasted by hand: what became of its seams and edges, mm.
type pasted struct {
	gaps   []float64 // above 0 where the neighbour's lap shows, below where the sheet covers more than its cell
	slides []float64 // how far the picture steps along a seam
	last   []float64 // the slides at the far end of the rows
	rims   []float64 // how far the outer edge is off
	again  int       // sheets that were measured again
}

// paste is a board of so many sheets, cut and pasted. Light comes from the top left: sheets are cut at the left and
// above, and pasted over the laps of those to the left and above.
func (b *pasted) paste(r *rand.Rand, how string, columns, rows int) {
	type sheet struct{ x, y, cutX, cutY float64 } // how far it lies off, and how far its cuts do on it
	board := make([][]sheet, rows)
	// lay is how far a sheet comes to lie off, one way: its neighbour's lap, if it has one, lies off by that, and its
	// own cut by cut.
	lay := func(neighbour *float64, cut float64) (off float64) {
		off = pasteOffMM * r.NormFloat64()
		if neighbour == nil || how == byGrid {
			return off
		}
		if how == byLanding {
			return *neighbour - cut + off
		}
		misfit := func() float64 { return off + cut - *neighbour + readOffMM*r.NormFloat64() }
		seen := misfit()
		if math.Abs(seen) > splitMM { // measured again, once, and what is left is split all the same
			b.again++
			off = pasteOffMM * r.NormFloat64()
			seen = misfit()
		}
		return off - seen/2
	}
	for i := range board {
		board[i] = make([]sheet, columns)
		for j := range board[i] {
			s := &board[i][j]
			s.cutX, s.cutY = cutOffMM*r.NormFloat64(), cutOffMM*r.NormFloat64()
			var left, above *float64
			if j > 0 {
				left = &board[i][j-1].x
			}
			if i > 0 {
				above = &board[i-1][j].y
			}
			s.x, s.y = lay(left, s.cutX), lay(above, s.cutY)
			if j > 0 {
				b.gaps = append(b.gaps, s.x+s.cutX-*left)
				b.slides = append(b.slides, s.y-board[i][j-1].y)
			}
			if i > 0 {
				b.gaps = append(b.gaps, s.y+s.cutY-*above)
				b.slides = append(b.slides, s.x-board[i-1][j].x)
			}
			if i > 0 && j == columns-1 {
				b.last = append(b.last, s.x-board[i-1][j].x)
			}
		}
		b.rims = append(b.rims, board[i][columns-1].x+cutOffMM*r.NormFloat64())
	}
}

// spread is the standard deviation of figures whose mean is 0.
func spread(all []float64) float64 {
	sum := 0.0
	for _, v := range all {
		sum += v * v
	}
	return math.Sqrt(sum / float64(len(all)))
}

// nineteenInTwenty is what that share of figures does not exceed, either way.
func nineteenInTwenty(all []float64) float64 {
	sizes := make([]float64, len(all))
	for i, v := range all {
		sizes[i] = math.Abs(v)
	}
	slices.Sort(sizes)
	return sizes[len(sizes)*19/20]
}

// over is the share of figures above a bound.
func over(all []float64, bound float64) float64 {
	n := 0
	for _, v := range all {
		if v > bound {
			n++
		}
	}
	return float64(n) / float64(len(all))
}

// Thousands of boards, cut and pasted three ways. Beside the simulation stands what variances give: laid by marks,
// each sheet adds a cut and a paste to those before it, so that rows slide apart; laid by the grid none does, but a
// seam has two pastes and a cut; checked, errors die out by half from sheet to sheet.
func TestBoardsByHand(t *testing.T) {
	const boards = 3000
	for _, c := range []struct {
		columns, rows int
	}{{5, 3}, {16, 4}} {
		board := map[string]*pasted{}
		for _, how := range []string{byLanding, byGrid, checked} {
			board[how] = &pasted{}
			r := rand.New(rand.NewPCG(uint64(c.columns), uint64(len(how)))) // seeded: the same boards each time
			for range boards {
				board[how].paste(r, how, c.columns, c.rows)
			}
			t.Logf("%d x %d, %s: gaps sd %.2f, ink shows on %.2f %%, slides sd %.2f and %.2f at the rows' ends, edges sd %.2f, "+
				"measured again %d", c.columns, c.rows, how, spread(board[how].gaps), 100*over(board[how].gaps, marksFromMM),
				spread(board[how].slides), spread(board[how].last), spread(board[how].rims), board[how].again)
		}
		landing, grid, both := board[byLanding], board[byGrid], board[checked]

		// Landing runs away; neither of the others does.
		n := float64(c.columns - 1)
		step := cutOffMM*cutOffMM + pasteOffMM*pasteOffMM
		require.InEpsilon(t, math.Sqrt(2*(pasteOffMM*pasteOffMM+n*step)), spread(landing.last), 0.03)
		require.InEpsilon(t, math.Sqrt2*pasteOffMM, spread(grid.last), 0.03)
		require.Less(t, spread(both.last), spread(grid.last))
		require.InEpsilon(t, pasteOffMM, spread(landing.gaps), 0.03)
		require.InEpsilon(t, math.Sqrt(2*pasteOffMM*pasteOffMM+cutOffMM*cutOffMM), spread(grid.gaps), 0.03)

		// What shows: ink that began at the seam, on nearly half of all seams; ink from 1.5 mm on, on one in a hundred,
		// and on none to speak of where ticks are checked. Bare paper would take a gap of a lap's 10 mm, or of 2.5 mm on
		// the narrowest.
		require.Greater(t, over(grid.gaps, 0.1), 0.4)
		require.Less(t, over(grid.gaps, marksFromMM), 0.012)
		require.Less(t, over(both.gaps, marksFromMM), 0.0005)
		require.Zero(t, over(both.gaps, 2.5))

		// What the guide promises, to the tenth of a millimetre above.
		for _, told := range []struct {
			what string
			mm   float64
			got  []float64
		}{{"gap", gapMM, both.gaps}, {"slide", slideMM, both.slides}, {"outer edge", rimMM, both.rims}} {
			got := nineteenInTwenty(told.got)
			require.LessOrEqual(t, got, told.mm, "%s over %d columns", told.what, c.columns)
			require.Greater(t, got, told.mm-0.1, "%s over %d columns", told.what, c.columns)
		}
	}
}
