package layout

import (
	"fmt"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
)

// latticePlan is a straight print for a drop 5 mm across.
func latticePlan(tb testing.TB, body flip.Body, heightOverWidth, fill float64) Plan {
	s := plain()
	s.Look, s.DistanceMM, s.Fill, s.MaxSheets, s.Proportions = Straight, 200, fill, mostSheets, 1
	s.Drop.Body, s.Drop.HeightOverWidth = body, heightOverWidth
	switch body { // a picture that goes on along the rod
	case flip.UprightRod:
		s.Proportions = 0.1
	case flip.LevelRod:
		s.Proportions = 10
	}
	p, err := s.Plan()
	require.NoError(tb, err)
	return p
}

// The lattice against the map itself, for prints out to where nothing is seen any more: by how much a place's
// point is off, as a share of the picture's height, and its slopes, as a share of the steeper one there. The
// slopes' reference is the map's own five-point central difference, (f₋₂ - 8f₋₁ + 8f₁ - f₂)/12h (recalled
// from memory: Abramowitz and Stegun, table 25.2).
func TestLatticeMisses(t *testing.T) {
	fills := []struct{ fill, off, slopes float64 }{
		{0.5, 1e-9, 2e-7}, {0.85, 2e-8, 3e-6}, {0.95, 5e-8, 6e-6}, {0.99, 1.5e-7, 1.5e-5}, {0.999, 4e-7, 3e-5},
	}
	for _, c := range []struct {
		name            string
		body            flip.Body
		heightOverWidth float64 // 0 for one in round
		fills           int     // so many of them: a drop drawn long looks backwards before its rim
	}{
		{"ball", flip.Ball, 0, 5}, {"upright rod", flip.UprightRod, 0, 5}, {"level rod", flip.LevelRod, 0, 5},
		{"pressed flat", flip.Ball, 0.85, 5}, {"drawn long", flip.Ball, 1.15, 2},
	} {
		for _, f := range fills[:c.fills] {
			t.Run(fmt.Sprintf("%s, %g", c.name, f.fill), func(t *testing.T) {
				p := latticePlan(t, c.body, c.heightOverWidth, f.fill)
				h, sight := p.Hang(), p.Sight()
				random := rand.New(rand.NewSource(5))
				off, slopes := 0.0, 0.0
				for range 1200 {
					x, y := (p.Picture.WidthMM/2+latticeMarginMM)*(2*random.Float64()-1),
						(p.Picture.HeightMM/2+latticeMarginMM)*(2*random.Float64()-1)
					at := Point{p.Backdrop.WidthMM/2 + x, p.Backdrop.HeightMM/2 + y}
					u, v, ok := h.exactly(at)
					to, _, _, _, gotOK := h.bent.through.at(x, y)
					if !ok && gotOK { // past the rim by less than anyone could tell
						require.InDelta(t, 1, sight.ShareAt(to.XMM, to.YMM), 2e-5)
						continue
					}
					require.Equal(t, ok, gotOK, "at %g, %g", x, y)
					got := h.At(at.XMM, at.YMM)
					if got.InsideMM < -latticeMarginMM {
						continue
					}
					off = max(off, math.Hypot(got.U-u, got.V-v))
					const step = 0.1
					slope := func(xMM, yMM float64) (du, dv float64) {
						for _, k := range [4][2]float64{{-2, 1}, {-1, -8}, {1, 8}, {2, -1}} {
							u, v, seen := h.exactly(Point{at.XMM + k[0]*xMM, at.YMM + k[0]*yMM})
							du, dv, ok = du+k[1]*u/(12*step), dv+k[1]*v/(12*step), ok && seen
						}
						return du, dv
					}
					ux, vx := slope(step, 0)
					uy, vy := slope(0, step)
					if ok {
						steeper := max(math.Hypot(ux, vx), math.Hypot(uy, vy))
						slopes = max(slopes, math.Hypot(got.UX-ux, got.VX-vx)/steeper, math.Hypot(got.UY-uy, got.VY-vy)/steeper)
					}
				}
				t.Logf("off %.2g, slopes %.2g", off, slopes)
				require.Greater(t, slopes, 0.0)
				require.Less(t, off, f.off)
				require.Less(t, slopes, f.slopes)
			})
		}
	}
}

// Pieces give cubics back whole, out to a cell past the part of a map that is seen, and where only one axis
// is turned over, as a rod does.
func TestLatticeTakesCubicsWhole(t *testing.T) {
	const farMM, halfWidthMM, halfHeightMM = 100, 130, 90
	half := func(mm float64) float64 { return math.Tan(math.Atan(mm/farMM) / 2) }
	for _, c := range []struct {
		name   string
		signX  float64
		seenMM float64
		skew   float64 // by how much the map differs above the axis and below
	}{{"all seen", 1, 1e9, 0}, {"all seen, one side turned", -1, 1e9, 0}, {"part seen", 1, 80, 0}, {"none seen", 1, -1, 0},
		{"not the same above", 1, 1e9, 0.3}, {"likewise, part seen", -1, 80, 0.3}} {
		t.Run(c.name, func(t *testing.T) {
			cubic := func(xMM, yMM float64) Point {
				p, q := half(xMM), half(yMM)
				return Point{p * (2 + p*p/3 - q*q + c.skew*q), q * (1.5 - q*q/4 + p*p/2 + c.skew*q)}
			}
			l := newLattice(halfWidthMM, halfHeightMM, farMM, c.skew == 0, func(xMM, yMM float64) (x, y float64, ok bool) {
				to := cubic(xMM, yMM)
				return c.signX * to.XMM, to.YMM, math.Hypot(xMM, yMM) < c.seenMM
			})
			random := rand.New(rand.NewSource(8))
			for range 3000 {
				x, y := halfWidthMM*(2*random.Float64()-1), halfHeightMM*(2*random.Float64()-1)
				to, dx, dy, _, ok := l.at(x, y)
				away := math.Hypot(x, y)
				require.False(t, ok && away > c.seenMM+4, "a cell there is 3 by 2.5 mm")
				require.True(t, ok || away > c.seenMM-0.1, "a cell may bulge past its corners")
				if !ok {
					continue
				}
				want := cubic(x, y)
				require.InDelta(t, c.signX*want.XMM, to.XMM, 1e-11)
				require.InDelta(t, want.YMM, to.YMM, 1e-11)
				const step = 1e-3
				right, left, below, above := cubic(x+step, y), cubic(x-step, y), cubic(x, y+step), cubic(x, y-step)
				require.InDelta(t, c.signX*(right.XMM-left.XMM)/2/step, dx.XMM, 1e-10)
				require.InDelta(t, (right.YMM-left.YMM)/2/step, dx.YMM, 1e-10)
				require.InDelta(t, c.signX*(below.XMM-above.XMM)/2/step, dy.XMM, 1e-10)
				require.InDelta(t, (below.YMM-above.YMM)/2/step, dy.YMM, 1e-10)
			}
			for _, beyond := range []Point{{halfWidthMM + 1e-9, 0}, {0, -halfHeightMM - 1e-9}, {math.Inf(1), 0},
				{math.NaN(), 0}, {0, math.NaN()}} {
				_, _, _, _, ok := l.at(beyond.XMM, beyond.YMM)
				require.False(t, ok, "%v", beyond)
			}
		})
	}
}

// Points and slopes go on without a jump from cell to cell and over the axes, and mirror in them to the last bit.
func TestLatticeIsSmooth(t *testing.T) {
	for _, body := range []flip.Body{flip.Ball, flip.UprightRod} {
		p := latticePlan(t, body, 0, 0.95)
		l := p.Hang().bent.through
		random := rand.New(rand.NewSource(9))
		for range 2000 {
			edge := l.placeMM(float64(random.Intn(latticeCells-1)) / l.perX)
			y := p.Picture.HeightMM / 2 * (2*random.Float64() - 1)
			const hair = 1e-10
			a, ax, ay, _, okA := l.at(edge-hair, y)
			b, bx, by, _, okB := l.at(edge+hair, y)
			require.True(t, okA && okB)
			for _, pair := range [][2]Point{{a, b}, {ax, bx}, {ay, by}} {
				require.InDelta(t, pair[0].XMM, pair[1].XMM, 1e-11, "at %g, %g", edge, y)
				require.InDelta(t, pair[0].YMM, pair[1].YMM, 1e-11, "at %g, %g", edge, y)
			}
			x := p.Picture.WidthMM / 2 * (2*random.Float64() - 1)
			to, dx, dy, _, _ := l.at(x, y)
			mirrored, mx, my, _, ok := l.at(-x, y)
			require.True(t, ok)
			require.Equal(t, [3]Point{{-to.XMM, to.YMM}, {dx.XMM, -dx.YMM}, {-dy.XMM, dy.YMM}}, [3]Point{mirrored, mx, my})
			mirrored, mx, my, _, _ = l.at(x, -y)
			require.Equal(t, [3]Point{{to.XMM, -to.YMM}, {dx.XMM, -dx.YMM}, {-dy.XMM, dy.YMM}}, [3]Point{mirrored, mx, my})
		}
	}
}

// BenchmarkLatticeAt looks places up one beside the other, and here and there.
func BenchmarkLatticeAt(b *testing.B) {
	p := latticePlan(b, flip.Ball, 0, 0.85)
	l := p.Hang().bent.through
	random := rand.New(rand.NewSource(5))
	var inLine, anywhere [4096]Point
	for i := range inLine {
		inLine[i] = Point{(float64(i)/4096 - 0.5) * p.Picture.WidthMM, 0.1 * p.Picture.HeightMM}
		anywhere[i] = Point{(random.Float64() - 0.5) * p.Picture.WidthMM, (random.Float64() - 0.5) * p.Picture.HeightMM}
	}
	for name, places := range map[string]*[4096]Point{"in line": &inLine, "anywhere": &anywhere} {
		b.Run(name, func(b *testing.B) {
			sum := 0.0
			for i := 0; b.Loop(); i++ {
				to, _, _, _, _ := l.at(places[i%4096].XMM, places[i%4096].YMM)
				sum += to.XMM
			}
			require.False(b, math.IsNaN(sum))
		})
	}
}

func BenchmarkHang(b *testing.B) {
	p := latticePlan(b, flip.Ball, 0, 0.85)
	for b.Loop() {
		p.Hang()
	}
}
