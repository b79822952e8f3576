package layout

import (
	"fmt"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
)

// Near tells what At does, but for places further inside than it was asked about, which it says so of; and of
// most of the print it knows that beforehand.
func TestNearTellsWhatAtDoes(t *testing.T) {
	plans := map[string]Plan{
		"straight to the rim":         latticePlan(t, flip.Ball, 0, 0.999),
		"upright rod, far out":        latticePlan(t, flip.UprightRod, 0, 0.99),
		"pressed flat, nearly to rim": latticePlan(t, flip.Ball, 0.85, 0.99),
	}
	for name, setup := range bentSetups() {
		p, err := setup.Plan()
		require.NoError(t, err)
		plans[name] = p
	}
	for name, p := range plans {
		for _, reachMM := range []float64{0, 1.5, 30} {
			t.Run(fmt.Sprintf("%s, %g mm", name, reachMM), func(t *testing.T) {
				h := p.Hang()
				random := rand.New(rand.NewSource(4))
				inside, known := 0, 0
				for range 20000 {
					x, y := p.Backdrop.WidthMM/2+(p.Picture.WidthMM/2+1)*(2*random.Float64()-1), p.Backdrop.HeightMM/2+
						(p.Picture.HeightMM/2+1)*(2*random.Float64()-1)
					want, got := h.At(x, y), h.Near(x, y, reachMM)
					if want.InsideMM > reachMM {
						inside++
						require.Greater(t, got.InsideMM, reachMM, "at %g, %g", x, y)
						require.LessOrEqual(t, got.InsideMM, want.InsideMM, "at %g, %g", x, y)
						if got.InsideMM != want.InsideMM {
							known++
						}
						got.InsideMM = want.InsideMM
					}
					require.Equal(t, want, got, "at %g, %g", x, y)
				}
				t.Logf("%d known of %d", known, inside)
				if reachMM < 2 {
					require.Greater(t, float64(known), 0.7*float64(inside))
				}
			})
		}
	}
}

// BenchmarkShown asks what places show, here and there within the print: all that At tells, and with an
// outline that matters no further than a millimetre off.
func BenchmarkShown(b *testing.B) {
	p := latticePlan(b, flip.Ball, 0, 0.85)
	h := p.Hang()
	random := rand.New(rand.NewSource(5))
	var places [4096]Point
	for i := range places {
		places[i] = Point{p.Backdrop.WidthMM/2 + (random.Float64()-0.5)*p.Picture.WidthMM, p.Backdrop.HeightMM/2 +
			(random.Float64()-0.5)*p.Picture.HeightMM}
	}
	b.Run("all", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			h.At(places[i%4096].XMM, places[i%4096].YMM)
		}
	})
	b.Run("near", func(b *testing.B) {
		for i := 0; b.Loop(); i++ {
			h.Near(places[i%4096].XMM, places[i%4096].YMM, 1)
		}
	})
}
