package seamcost_test

import (
	"math"
	"math/rand"
	"os"
	"regexp"
	"strconv"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/seamsight/seamcost"

	"github.com/stretchr/testify/require"
)

// seamMM is the width of seam that make reckons with.
const seamMM = 0.3

func setup() layout.Setup {
	a4, _ := layout.ParsePaper("A4")
	return layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest},
	}
}

// Sums against integrals by hand, on boards that no step divides.
func TestSumAgainstIntegrals(t *testing.T) {
	for _, board := range []layout.Rect{
		{WidthMM: 1111.1, HeightMM: 740.7}, {WidthMM: 100, HeightMM: 100}, {WidthMM: 0.7, HeightMM: 3000},
		{WidthMM: 41, HeightMM: 0.3},
	} {
		w, h := board.WidthMM, board.HeightMM
		for _, c := range []struct {
			name         string
			element      seamcost.Element
			down, across func(atMM float64) float64
		}{
			{"the same everywhere", func(_, _ float64, _ string) float64 { return 2 },
				func(float64) float64 { return 2 * h }, func(float64) float64 { return 2 * w }},
			{"dearer to the right", func(x, _ float64, _ string) float64 { return x },
				func(x float64) float64 { return x * h }, func(float64) float64 { return w * w / 2 }},
			{"dearer below", func(_, y float64, _ string) float64 { return y },
				func(float64) float64 { return h * h / 2 }, func(y float64) float64 { return y * w }},
			{"only seams that run down", func(_, _ float64, axis string) float64 { return map[string]float64{"x": 1}[axis] },
				func(float64) float64 { return h }, func(float64) float64 { return 0 }},
		} {
			t.Run(c.name, func(t *testing.T) {
				got := seamcost.Sum(board, c.element)
				for _, d := range []struct {
					sums     []float64
					lengthMM float64
					want     func(float64) float64
				}{{got.Down, w, c.down}, {got.Across, h, c.across}} {
					require.GreaterOrEqual(t, float64(len(d.sums)-1)*got.StepMM, d.lengthMM)
					require.Less(t, float64(len(d.sums)-2)*got.StepMM, d.lengthMM, "none is beyond the board")
					for i, sum := range d.sums {
						want := d.want(min(float64(i)*got.StepMM, d.lengthMM))
						require.InDelta(t, want, sum, 1e-9*(1+want))
					}
				}
			})
		}
	}
}

// A step, and a gap no wider than a mast, are found to half a millimetre wherever they lie: each seam is the
// mean of the 21 lines from 5 mm before it to 5 mm behind it.
func TestSumFindsWhatIsSharp(t *testing.T) {
	const longMM = 200
	board := layout.Rect{WidthMM: 301.3, HeightMM: longMM}
	for start := 100.0; start < 108; start += 0.3 {
		sharp := func(x float64) float64 {
			switch {
			case x >= start && x < start+2.5:
				return 0.1
			case x > 200+start/100:
				return 5
			}
			return 1
		}
		got := seamcost.Sum(board, func(x, _ float64, _ string) float64 { return sharp(x) })
		require.Equal(t, 0.5, got.StepMM)
		for i := 10; i < 590; i++ {
			want := 0.0
			for k := i - 10; k <= i+10; k++ {
				want += longMM * sharp(float64(k)*0.5) / 21
			}
			require.InDelta(t, want, got.Down[i], 1e-9, "%g mm, gap from %g", float64(i)*0.5, start)
		}
	}
}

// A seam where the picture is as light as the paper's bare edge shows nothing: on a dark picture with stripes
// that light, seams run in the stripes.
func TestSeamsRunWhereTheyMatchThePaper(t *testing.T) {
	wide := setup()
	// the whole board is seen beside the drop, where a stripe is wider than its blur
	wide.Camera.LensMM, wide.Camera.FrameWidthMM = 0, 400
	plans, err := wide.Plans()
	require.NoError(t, err)
	w := plans[0].Backdrop.WidthMM
	const halfMM = 9.0
	stripes := []float64{168, 350, 530, 712} // board mm, all within the sheets' reach together
	paper := encoded(board.PaperWhite)
	m := seamsight.New(plans[0], paint(t, func(u, _ float64) float64 {
		for _, at := range stripes {
			if math.Abs((1-u)*w-at) < halfMM { // half a turn
				return paper
			}
		}
		return 0.2
	}), seamMM)
	best, err := layout.LeastSeen(plans[:1], seamcost.Sum(plans[0].Backdrop.Board(), m.CostAt), nil)
	require.NoError(t, err)
	for _, s := range best.Plan.Seams {
		if s.Axis == "x" {
			nearest := math.Inf(1)
			for _, at := range stripes {
				nearest = min(nearest, math.Abs(s.AtMM-at))
			}
			require.Less(t, nearest, halfMM, "a seam at %g mm", s.AtMM)
		}
	}
}

// encoded is the sRGB level, 0 to 1, for linear light above 0.0031308 (IEC 61966-2-1:1999, 5.2).
func encoded(light float64) float64 { return 1.055*math.Pow(light, 1/2.4) - 0.055 }

// finely is what a plan's seams cost on average when each lies up to 5 mm to either side, added up along each
// every millimetre, by no sum that placement uses.
func finely(m *seamsight.Model, p layout.Plan) (cost float64) {
	const stepMM, aside = 1, 10 // aside in half millimetres
	for _, s := range p.Seams {
		pieces := math.Ceil((s.ToMM - s.FromMM) / stepMM)
		pieceMM := (s.ToMM - s.FromMM) / pieces
		for k := range int(pieces) {
			along := s.FromMM + (float64(k)+0.5)*pieceMM
			for by := -aside; by <= aside; by++ {
				x, y := s.AtMM+float64(by)/2, along
				if s.Axis == "y" {
					x, y = along, s.AtMM+float64(by)/2
				}
				cost += m.CostAt(x, y, s.Axis) * pieceMM / (2*aside + 1)
			}
		}
	}
	return cost
}

// documented are the shares that DEVELOPERS.md tells, by picture.
func documented(t *testing.T) map[string]float64 {
	t.Helper()
	text, err := os.ReadFile("../../../DEVELOPERS.md")
	require.NoError(t, err)
	shares := map[string]float64{}
	for _, row := range regexp.MustCompile(`(?m)^\| (\w+): [^|]+ \| (\d\.\d+) \|`).FindAllStringSubmatch(string(text),
		-1) {
		shares[row[1]], err = strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
	}
	return shares
}

// On every picture seams that were slid show less, and by as much as placement says: added up finely the gain
// is the same. What the page for developers tells is true.
func TestPlacementPays(t *testing.T) {
	told := documented(t)
	require.Len(t, told, len(pictures))
	for _, c := range pictures {
		t.Run(c.name, func(t *testing.T) {
			plans, err := setup().Plans()
			require.NoError(t, err)
			m := seamsight.New(plans[0], paint(t, c.draw), seamMM)
			best, err := layout.LeastSeen(plans, seamcost.Sum(plans[0].Backdrop.Board(), m.CostAt), nil)
			require.NoError(t, err)
			require.NoError(t, best.Plan.Check())
			require.Len(t, best.Plan.Sheets, len(plans[0].Sheets))
			share, fine := best.Cost/best.EvenCost, finely(m, best.Plan)/finely(m, plans[0])
			t.Logf("moved up to %.1f mm, %.3f of even cells (%.3f finely)", best.MovedMM, share, fine)
			require.Less(t, fine, 1.0)
			require.InDelta(t, fine, share, 0.01)
			require.InDelta(t, told[c.name], share, 0.05, "measure again and mend DEVELOPERS.md")
		})
	}
}

// Whatever the setup, costs are finite and seams find a place.
func TestWildSetups(t *testing.T) {
	const seed = 36
	random := rand.New(rand.NewSource(seed))
	picture := paint(t, windows)
	placed := 0
	for i := range 30 {
		s := setup()
		s.Drop.Body = []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod}[i%3]
		s.Drop.DiameterMM, s.Drop.Index = 1+40*random.Float64(), 1.2+0.8*random.Float64()
		s.CameraMM = 150 + 600*random.Float64()
		s.DistanceMM = 60 + 300*random.Float64()
		s.Camera.LensMM, s.Camera.FNumber = 20+100*random.Float64(), 2+60*random.Float64()
		s.Camera.WidthPx, s.Camera.HeightPx = 1+random.Intn(6000), 1+random.Intn(4000)
		if i%2 == 0 {
			s.Lamps = []layout.Lamp{{XMM: 900 * (random.Float64() - 0.5), YMM: 900 * (random.Float64() - 0.5),
				ZMM: 20 + 900*random.Float64()}}
		}
		plans, err := s.Plans()
		if err != nil {
			continue // too close, or too many sheets
		}
		board := plans[0].Backdrop.Board()
		best, err := layout.LeastSeen(plans, seamcost.Sum(board, seamsight.New(plans[0], picture, seamMM).CostAt), nil)
		require.NoError(t, err, "seed %d, case %d: %+v", seed, i, s)
		require.NoError(t, best.Plan.Check(), "seed %d, case %d: %+v", seed, i, s)
		placed++
	}
	require.Greater(t, placed, 15)
}

// BenchmarkPictures tells the cost against even cells on the harbour and on five more pictures.
func BenchmarkPictures(b *testing.B) {
	for _, c := range pictures {
		b.Run(c.name, func(b *testing.B) {
			plans, err := setup().Plans()
			require.NoError(b, err)
			picture := paint(b, c.draw)
			var best layout.Placement
			for b.Loop() {
				m := seamsight.New(plans[0], picture, seamMM)
				best, err = layout.LeastSeen(plans, seamcost.Sum(plans[0].Backdrop.Board(), m.CostAt), nil)
				require.NoError(b, err)
			}
			b.ReportMetric(best.Cost/best.EvenCost, "of-even")
			b.ReportMetric(best.MovedMM, "mm-moved")
		})
	}
}

// BenchmarkBoard places the seams of a board of 3 x 2 m, from the decoded picture on.
func BenchmarkBoard(b *testing.B) {
	s := setup()
	s.DistanceMM, s.Print = 0, layout.Size{WidthMM: 3000, HeightMM: 2000}
	plans, err := s.Plans()
	require.NoError(b, err)
	picture := paint(b, meadow)
	for b.Loop() {
		m := seamsight.New(plans[0], picture, seamMM)
		_, err := layout.LeastSeen(plans, seamcost.Sum(plans[0].Backdrop.Board(), m.CostAt), nil)
		require.NoError(b, err)
	}
}
