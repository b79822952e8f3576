package board

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

func TestCovered(t *testing.T) {
	for _, c := range []struct{ insideMM, spanMM, want float64 }{
		{0, 4, 0.5}, {1, 4, 0.75}, {-1, 4, 0.25}, {2, 4, 1}, {-2, 4, 0}, {1.9, 4, 0.975}, {-1.9, 4, 0.025}, {9, 4, 1},
		{-9, 4, 0},
		{0, 0, 1}, {1e-9, 0, 1}, {-1e-9, 0, 0},
		{math.Inf(1), 0, 1}, {math.Inf(1), 5, 1}, {math.Inf(-1), 5, 0},
	} {
		require.InDelta(t, c.want, Covered(c.insideMM, c.spanMM), 1e-12, "%+v", c)
	}
}

// What a box consists of, against points of it: of every kind of edge, which all are upright here.
func TestSharesAgainstPoints(t *testing.T) {
	const seed, side = 17, 200
	random := rand.New(rand.NewSource(seed))
	// in three by two cells, two of them bare, and with seams between the others
	cells := func(p layout.Plan) layout.Plan {
		p.Backdrop.Columns, p.Backdrop.Rows = 3, 2
		p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM = []float64{0, 70, 130, 200}, []float64{0, 45, 100}
		for _, at := range [][2]int{{1, 2}, {1, 3}, {2, 1}, {2, 2}} {
			p.Sheets = append(p.Sheets, layout.Sheet{Row: at[0], Column: at[1]})
		}
		p.Seams = []layout.Seam{
			{Axis: "x", AtMM: 130, FromMM: 0, ToMM: 45}, {Axis: "x", AtMM: 70, FromMM: 45, ToMM: 100},
			{Axis: "y", AtMM: 45, FromMM: 70, ToMM: 130},
		}
		return p
	}
	for _, c := range []struct {
		name    string
		plan    layout.Plan
		seamMM  float64
		drawing bool
	}{
		{"goes on", flatPlan(layout.Stretch, flip.ReversesBoth), 0, false},
		{"surrounded", flatPlan("#102030", flip.ReversesBoth), 0, false},
		{"bare cells", cells(flatPlan(layout.Stretch, flip.ReversesBoth)), 0, false},
		{"bare cells, drawn past the board", cells(flatPlan(layout.Stretch, flip.ReversesBoth)), 0, true},
		{"seams", cells(flatPlan(layout.Stretch, flip.ReversesBoth)), 3, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := New(c.plan, quarters())
			if c.drawing {
				s = NewDrawing(c.plan, quarters())
			}
			s = s.WithSeams(c.seamMM)
			mixed := 0
			for range 60 {
				x, y := 240*random.Float64()-20, 140*random.Float64()-20
				wideMM, highMM := 0.5+20*random.Float64(), 0.5+20*random.Float64()
				var want Seen
				for j := range side {
					for i := range side {
						at := s.At(x+(float64(i)+0.5-side/2)/side*wideMM, y+(float64(j)+0.5-side/2)/side*highMM, Patch{})
						want.Picture += at.Picture / side / side
						want.Surround += at.Surround / side / side
						want.Paper += at.Paper / side / side
						want.None += at.None / side / side
					}
				}
				got := s.At(x, y, Box(wideMM, highMM))
				require.InDelta(t, 1, got.Picture+got.Surround+got.Paper+got.None, 1e-9)
				// A point more or less in each row and column. Where the board ends, a seam counts as evenly spread over it.
				within := 0.02
				if c.seamMM > 0 && want.None > 0 {
					within = 0.1
				}
				for _, pair := range [][2]float64{{want.Picture, got.Picture}, {want.Surround, got.Surround},
					{want.Paper, got.Paper}, {want.None, got.None}} {
					require.InDelta(t, pair[0], pair[1], within, "%g x %g about %g, %g: %+v, want %+v, seed %d", wideMM, highMM, x, y,
						got, want, seed)
				}
				if max(got.Picture, got.Surround, got.None) < 1 {
					mixed++
				}
			}
			require.Greater(t, mixed, 2)
		})
	}
}
