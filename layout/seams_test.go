package layout

import (
	"encoding/json"
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// wildCosts are seam costs of a kind: noise, all the same, a slope, a few valleys, zero but for spikes.
func wildCosts(random *rand.Rand, kind int, lengthMM, stepMM float64) []float64 {
	costs := make([]float64, int(math.Ceil(lengthMM/stepMM))+1)
	phase, wave := 10*random.Float64(), 0.01+0.2*random.Float64()
	for i := range costs {
		switch kind {
		case 0:
			costs[i] = random.Float64()
		case 1:
			costs[i] = 3
		case 2:
			costs[i] = float64(i)
		case 3:
			costs[i] = 1 + math.Sin(phase+wave*float64(i)*stepMM)
		case 4:
			if random.Intn(9) == 0 {
				costs[i] = 1e6 * random.Float64()
			}
		}
	}
	return costs
}

const costKinds = 5

// bruteForce tries every layout of one direction, with limits written out for A4-like figures: paper less two
// margins of 5 mm is live; a sheet cut on one side shows live - 6 - lap, on both live - 12. It knows nothing
// of the code but the lattice of half a millimetre beside the even edges, and returns the least total of
// costs.
func bruteForce(lengthMM, liveMM, lapMM float64, n int, lampFirst bool, even []float64,
	cost func(atMM float64) float64) float64 {
	least := 40.0
	for i := range n {
		least = min(least, even[i+1]-even[i])
	}
	fits := func(cell int, mm float64) bool {
		most := liveMM - 6 - lapMM
		if lampFirst && cell == n-1 || !lampFirst && cell == 0 {
			most = liveMM - 12
		}
		return mm >= least-1e-9 && mm <= most+1e-9
	}
	best := math.Inf(1)
	var try func(cell int, fromMM, total float64)
	try = func(cell int, fromMM, total float64) {
		if cell == n-1 {
			if fits(cell, lengthMM-fromMM) {
				best = min(best, total)
			}
			return
		}
		if fits(cell, even[cell+1]-fromMM) {
			try(cell+1, even[cell+1], total+cost(even[cell+1]))
		}
		for k := 1; float64(k)*0.5 < lengthMM; k++ {
			if at := float64(k) * 0.5; fits(cell, at-fromMM) {
				try(cell+1, at, total+cost(at))
			}
		}
	}
	try(0, 0, 0)
	return best
}

// The optimum against brute force on small boards: sizes are whole half millimetres, so that all
// limits lie on the lattice.
func TestPlaceAgainstBruteForce(t *testing.T) {
	const seed = 31
	random := rand.New(rand.NewSource(seed))
	for i := range 300 {
		liveMM, lapMM := 62+0.5*float64(random.Intn(16)), 3+0.5*float64(random.Intn(8))
		r := run{liveMM, lapMM}
		n := 2 + random.Intn(3)
		// Anything from what needs n sheets to what they can just hold.
		shortest, longest := r.holdsMM(n-1), r.holdsMM(n)
		lengthMM := longest - 0.5*float64(random.Intn(1+int(min(longest-shortest, 12)/0.5)))
		lampFirst := random.Intn(2) == 0
		name := fmt.Sprintf("seed %d, case %d: %gmm, live %g, lap %g, %d cells", seed, i, lengthMM, liveMM, lapMM, n)
		costs := SeamCosts{StepMM: 0.5 + 2*random.Float64()}
		costs.Down = wildCosts(random, i%costKinds, lengthMM, costs.StepMM)
		cost := func(atMM float64) float64 { return costs.at(costs.Down, atMM) }

		l, err := newLine(r, lengthMM, n, lampFirst)
		require.NoError(t, err, name)
		unit := SeamCosts{Down: costs.Down}.unit()
		got, burden, ok := l.place(func(atMM float64) burden { return burden{cost: int64(math.Round(cost(atMM) / unit))} })
		require.True(t, ok, name)
		total := 0.0
		for _, atMM := range got[1:n] {
			total += cost(atMM)
		}
		want := bruteForce(lengthMM, liveMM, lapMM, n, lampFirst, l.even, cost)
		require.InDelta(t, want, total, float64(2*n)*unit, name)
		require.InDelta(t, total, float64(burden.cost)*unit, float64(n)*unit, name)
	}
}

// Avoided places outweigh any cost, and of what costs the same the more even wins.
func TestPlaceRanks(t *testing.T) {
	r := run{200, 10} // cells up to 184, the last up to 188
	l, err := newLine(r, 330, 2, true)
	require.NoError(t, err)
	for _, c := range []struct {
		name  string
		weigh func(atMM float64) burden
		want  float64
	}{
		{"nothing to choose: even", func(float64) burden { return burden{} }, 165},
		// the last sheet reaches 188
		{"the cheapest within reach", func(x float64) burden { return burden{cost: int64(10 * x)} }, 142},
		{"the cheapest at the other end", func(x float64) burden { return burden{cost: -int64(10 * x)} }, 184},
		{"a valley", func(x float64) burden { return burden{cost: int64(math.Abs(x-171.5) * 10)} }, 171.5},
		{"two valleys alike: the one nearer to even",
			func(x float64) burden { return burden{cost: int64(min(math.Abs(x-150), math.Abs(x-179)) * 10)} }, 179},
		{"a place to avoid, cheap as it is", func(x float64) burden {
			if x < 180 {
				return burden{crossing: 1}
			}
			return burden{cost: 1e12}
		}, 180},
		{"all to be avoided: the least crossing", func(x float64) burden { return burden{crossing: 1000 - int64(x)} }, 184},
	} {
		t.Run(c.name, func(t *testing.T) {
			edges, _, ok := l.place(c.weigh)
			require.True(t, ok)
			require.Equal(t, []float64{0, c.want, 330}, edges)
		})
	}
}

// What every placement must hold, on wild setups: the plan reads back, cells keep to the paper and are no
// slivers, nothing but the cells changes, it never costs more than even cells, and sliding one seam alone
// never makes it cheaper.
func TestWithSeamsProperties(t *testing.T) {
	const seed = 32
	random := rand.New(rand.NewSource(seed))
	papers := []string{"A4", "A3", "A5", "letter", "13x19in", "300x420mm", "90x130mm"}
	corners := []Corner{TopLeft, TopRight, BottomLeft, BottomRight}
	moved := 0
	for i := range 400 {
		s := plain()
		s.Paper, _ = ParsePaper(papers[random.Intn(len(papers))])
		s.Orientation = []Orientation{Auto, Portrait, Landscape}[random.Intn(3)]
		s.LightFrom = corners[random.Intn(4)]
		s.MarginMM, s.LapMM = 12*random.Float64(), minLapMM+15*random.Float64()
		s.DistanceMM, s.Fill = 50+600*random.Float64(), 0.3+0.6*random.Float64()
		s.Proportions = 0.3 + 3*random.Float64()
		even, err := s.Plan()
		if err != nil {
			continue // too many sheets
		}
		b := even.Backdrop
		costs := SeamCosts{StepMM: 0.5 + 5*random.Float64()}
		costs.Down = wildCosts(random, i%costKinds, b.WidthMM, costs.StepMM)
		costs.Across = wildCosts(random, (i/costKinds)%costKinds, b.HeightMM, costs.StepMM)
		var avoid []Circle
		for range random.Intn(3) {
			avoid = append(avoid, even.CircleOnBoard(random.Float64(), random.Float64(), 0.01+0.1*random.Float64()))
		}
		name := fmt.Sprintf("seed %d, case %d", seed, i)
		placed, err := even.WithSeams(costs, avoid)
		require.NoError(t, err, name)
		p := placed.Plan
		require.NoError(t, p.Check(), name)
		again, err := even.WithSeams(costs, avoid)
		require.NoError(t, err)
		require.Equal(t, placed, again, name)
		same := p
		same.Sheets, same.Seams = even.Sheets, even.Seams
		same.Backdrop.XEdgesMM, same.Backdrop.YEdgesMM = even.Backdrop.XEdgesMM, even.Backdrop.YEdgesMM
		require.Equal(t, even, same, "%s: only cells may change", name)

		crossing := func(p Plan) (mm float64) {
			for _, c := range avoid {
				mm += p.CrossingMM(c)
			}
			return mm
		}
		rounding := 0.01 * float64(len(p.Seams))
		require.LessOrEqual(t, crossing(p), crossing(even)+rounding, name)
		if len(avoid) == 0 {
			require.LessOrEqual(t, placed.Cost, placed.EvenCost*(1+1e-6)+1e-9, name)
		}
		narrowest := sliverMM
		for _, sheet := range even.Sheets {
			narrowest = min(narrowest, sheet.Cell.WidthMM, sheet.Cell.HeightMM)
		}
		page := b.Page()
		for k, sheet := range p.Sheets {
			require.Equal(t, [2]int{even.Sheets[k].Row, even.Sheets[k].Column}, [2]int{sheet.Row, sheet.Column})
			require.GreaterOrEqual(t, min(sheet.Cell.WidthMM, sheet.Cell.HeightMM), narrowest-1e-6, name)
			used := b.OnPage(sheet).Used
			require.GreaterOrEqual(t, min(used.XMM, used.YMM), s.MarginMM-1e-6, name)
			require.LessOrEqual(t, used.RightMM(), page.WidthMM-s.MarginMM+1e-6, name)
			require.LessOrEqual(t, used.BottomMM(), page.HeightMM-s.MarginMM+1e-6, name)
		}
		if placed.MovedMM > 1 {
			moved++
		}
	}
	require.Greater(t, moved, 150, "most boards leave room to slide seams")
}

// A seam slid by half a millimetre, alone, either leaves the paper's reach or costs no less.
func TestNoSeamWantsToMove(t *testing.T) {
	const seed = 33
	random := rand.New(rand.NewSource(seed))
	for i := range 60 {
		s := plain()
		s.DistanceMM = 200 + 300*random.Float64()
		even := mustPlan(t, s)
		b := even.Backdrop
		costs := SeamCosts{StepMM: 1, Down: wildCosts(random, 3, b.WidthMM, 1), Across: wildCosts(random, 3, b.HeightMM, 1)}
		placed, err := even.WithSeams(costs, nil)
		require.NoError(t, err)
		for _, seam := range placed.Plan.Seams {
			samples, cells := costs.Down, make([]float64, b.Columns+1)
			r, n := b.lie().across, b.Columns
			if seam.Axis == "y" {
				samples, cells, r, n = costs.Across, make([]float64, b.Rows+1), b.lie().down, b.Rows
			}
			at := 0
			for _, sheet := range placed.Plan.Sheets {
				if seam.Axis == "x" {
					cells[sheet.Column] = sheet.Cell.RightMM()
				} else {
					cells[sheet.Row] = sheet.Cell.BottomMM()
				}
			}
			for k := 1; k < n; k++ {
				if cells[k] == seam.AtMM {
					at = k
				}
			}
			require.NotZero(t, at)
			for _, by := range []float64{-0.5, 0.5} {
				left, right := cells[at]+by-cells[at-1], cells[at+1]-cells[at]-by
				mostRight := r.innerMM()
				if at == n-1 {
					mostRight = r.lastMM()
				}
				if left <= r.innerMM() && right <= mostRight && min(left, right) >= sliverMM {
					require.GreaterOrEqual(t, costs.at(samples, cells[at]+by), costs.at(samples, cells[at])-1e-6, "seed %d, case %d",
						seed, i)
				}
			}
		}
	}
}

func TestAvoid(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	even := mustPlan(t, s)
	b := even.Backdrop
	flat := SeamCosts{StepMM: 10, Down: make([]float64, 200), Across: make([]float64, 200)}
	seam := even.Seams[0]
	require.Equal(t, "x", seam.Axis)
	// The drop turns the picture by half a turn, so board x shows at picture 1 - x.
	u := 1 - seam.AtMM/b.WidthMM
	t.Run("a small place on an even seam is left clear", func(t *testing.T) {
		c := even.CircleOnBoard(u, 0.5, 0.01)
		require.InDelta(t, seam.AtMM, c.Centre.XMM, 1e-9)
		require.InDelta(t, 2*c.RadiusMM, even.CrossingMM(c), 1e-6)
		placed, err := even.WithSeams(flat, []Circle{c})
		require.NoError(t, err)
		require.Zero(t, placed.Plan.CrossingMM(c))
		require.InDelta(t, c.RadiusMM, placed.MovedMM, 0.51, "no further than it must")
	})
	t.Run("a place wider than a sheet is crossed as little as can be", func(t *testing.T) {
		c := even.CircleOnBoard(0.5, 0.5, 0.2)
		placed, err := even.WithSeams(flat, []Circle{c})
		require.NoError(t, err)
		got := placed.Plan.CrossingMM(c)
		require.Positive(t, got)
		require.Less(t, got, even.CrossingMM(c))
	})
	t.Run("what is no circle is refused", func(t *testing.T) {
		for _, c := range []Circle{{}, {Point{math.NaN(), 1}, 1}, {Point{1, 1}, math.Inf(1)}, {Point{1, 1}, -3}} {
			_, err := even.WithSeams(flat, []Circle{c})
			require.ErrorContains(t, err, "circle")
		}
	})
}

func TestWithSeamsRefuses(t *testing.T) {
	even := mustPlan(t, plain())
	w, h := int(even.Backdrop.WidthMM)+2, int(even.Backdrop.HeightMM)+2
	for _, c := range []struct {
		name  string
		costs SeamCosts
		says  string
	}{
		{"nothing", SeamCosts{}, "step above 0mm"},
		{"a step that is NaN", SeamCosts{math.NaN(), make([]float64, w), make([]float64, h)}, "step above 0mm"},
		{"too few", SeamCosts{1, make([]float64, w/2), make([]float64, h)}, "do not cover"},
		{"none across", SeamCosts{1, make([]float64, w), nil}, "do not cover"},
		{"negative", SeamCosts{1, make([]float64, w), append(make([]float64, h), -1)}, "0 or more"},
		{"NaN", SeamCosts{1, append(make([]float64, w), math.NaN()), make([]float64, h)}, "finite"},
		{"without end", SeamCosts{1, append(make([]float64, w), math.Inf(1)), make([]float64, h)}, "finite"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := even.WithSeams(c.costs, nil)
			require.ErrorContains(t, err, c.says)
		})
	}
	t.Run("a board that its sheets can't hold", func(t *testing.T) {
		p := even
		p.Backdrop.WidthMM *= 3
		_, err := p.WithSeams(SeamCosts{1, make([]float64, 3*w), make([]float64, h)}, nil)
		require.ErrorContains(t, err, "show at most")
	})
	t.Run("costs near the ends of what numbers hold", func(t *testing.T) {
		for _, v := range []float64{math.SmallestNonzeroFloat64, math.MaxFloat64} {
			costs := SeamCosts{1, make([]float64, w), make([]float64, h)}
			costs.Down[w/3], costs.Across[h/2] = v, v
			placed, err := even.WithSeams(costs, nil)
			require.NoError(t, err)
			require.NoError(t, placed.Plan.Check())
		}
	})
}

// Where the paper lies either way with as few sheets, the cheaper of the two is taken.
func TestPlansThatTie(t *testing.T) {
	s := plain()
	s.Proportions, s.DistanceMM = 1, 0 // a square print takes as many sheets either way round
	s.Print = Size{520, 520}
	plans, err := s.Plans()
	require.NoError(t, err)
	require.Len(t, plans, 2)
	require.Equal(t, Portrait, plans[0].Backdrop.Orientation)
	require.Equal(t, Landscape, plans[1].Backdrop.Orientation)
	require.Equal(t, len(plans[0].Sheets), len(plans[1].Sheets))
	require.Equal(t, plans[0].Picture, plans[1].Picture)
	require.Equal(t, [2]int{3, 2}, [2]int{plans[0].Backdrop.Columns, plans[0].Backdrop.Rows})

	// Two seams run down when the paper stands and one when it lies, so seams that run down tip it over.
	dear, cheap := make([]float64, 600), make([]float64, 600)
	for i := range dear {
		dear[i], cheap[i] = 5, 1
	}
	for _, c := range []struct {
		name         string
		down, across []float64
		want         Orientation
		cost         float64
	}{
		{"dear down", dear, cheap, Landscape, 5 + 2*1},
		{"dear across", cheap, dear, Portrait, 5 + 2*1},
		{"no matter: the first", cheap, cheap, Portrait, 3},
	} {
		t.Run(c.name, func(t *testing.T) {
			best, err := LeastSeen(plans, SeamCosts{1, c.down, c.across}, nil)
			require.NoError(t, err)
			require.Equal(t, c.want, best.Plan.Backdrop.Orientation)
			require.InDelta(t, c.cost, best.Cost, 1e-9)
			require.InDelta(t, 2*c.down[0]+c.across[0], best.EvenCost, 1e-9, "told of the first plan")
		})
	}

	s.Orientation = Landscape
	plans, err = s.Plans()
	require.NoError(t, err)
	require.Len(t, plans, 1, "an orientation that was asked for stays")
}

// A largest print for so many sheets keeps its size when the paper lies the other way.
func TestPlansKeepTheBoard(t *testing.T) {
	for n := 1; n <= 24; n++ {
		s := plain()
		s.MaxSheets = n
		plans, err := s.Plans()
		require.NoError(t, err)
		want := plans[0]
		require.Equal(t, mustPlan(t, s), want)
		for _, p := range plans {
			require.InDelta(t, want.Backdrop.WidthMM, p.Backdrop.WidthMM, 1e-9)
			require.InDelta(t, want.Drop.DistanceMM, p.Drop.DistanceMM, 1e-9)
			require.InDelta(t, want.Picture.Fill, p.Picture.Fill, 1e-9)
			require.NoError(t, p.Check())
		}
	}
}

func TestPlacedPlanReadsBack(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	even := mustPlan(t, s)
	random := rand.New(rand.NewSource(34))
	b := even.Backdrop
	placed, err := even.WithSeams(SeamCosts{2, wildCosts(random, 0, b.WidthMM, 2), wildCosts(random, 0, b.HeightMM, 2)},
		nil)
	require.NoError(t, err)
	require.NotEqual(t, even.Sheets, placed.Plan.Sheets)
	text, err := json.Marshal(placed.Plan)
	require.NoError(t, err)
	var got Plan
	require.NoError(t, json.Unmarshal(text, &got))
	require.Equal(t, placed.Plan, got)
	require.NoError(t, got.Check())
}

// BenchmarkPlace slides the seams of a board of 3 x 2 m, its costs given.
func BenchmarkPlace(b *testing.B) {
	s := plain()
	s.Print = Size{3000, 2000}
	even, err := s.Plan()
	require.NoError(b, err)
	random := rand.New(rand.NewSource(35))
	costs := SeamCosts{2, wildCosts(random, 0, 3000, 2), wildCosts(random, 0, 2000, 2)}
	for b.Loop() {
		if _, err := even.WithSeams(costs, nil); err != nil {
			b.Fatal(err)
		}
	}
}
