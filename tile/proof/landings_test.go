package proof

import (
	"context"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// hangingPlan is that of a drop of water 3.5 mm wide that hangs.
func hangingPlan(t testing.TB, change func(*layout.Setup)) layout.Plan {
	return plan(t, func(s *layout.Setup) {
		water, ok := flip.MaterialByName("water")
		require.True(t, ok)
		s.Drop.Body, s.Drop.DiameterMM, s.Drop.HeldMM = flip.Hanging, 3.5, 2
		s.Drop.CapillaryMM, s.Look = water.Liquid.CapillaryMM(), layout.Straight
		s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = 960, 640, 9
		if change != nil {
			change(s)
		}
	})
}

// Landings of a drop that hangs that are interpolated are those that are traced, to a fiftieth of what a pixel moves
// them by and half a level of light, all over the drop; and within its round, nearly all are interpolated.
func TestLandingsInterpolate(t *testing.T) {
	const seed = 11
	random := rand.New(rand.NewSource(seed))
	for _, c := range []struct {
		name  string
		sharp bool
		drops []layout.Point
	}{{"through a lens", false, nil}, {"sharp, off the axis", true, []layout.Point{{XMM: 0.4, YMM: -0.2}}}} {
		t.Run(c.name, func(t *testing.T) {
			p := hangingPlan(t, nil)
			v := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Sharp: c.sharp, Drops: c.drops}.view()
			box := v.edgeBox()
			l := v.newLandings(context.Background(), v.inside, box)
			require.NotNil(t, l)
			inside, known, worst, worstShare := 0, 0, 0.0, 0.0
			for range 40_000 {
				i, j := box.Min.X+random.Intn(box.Dx()), box.Min.Y+random.Intn(box.Dy())
				k := random.Intn(len(v.inside))
				at := v.camera.At(float64(i)+0.5, float64(j)+0.5)
				within := v.share(at, v.drops[0]) < 0.9
				if within {
					inside++
				}
				got, ok := l.at(i, j, k)
				if !ok {
					continue
				}
				if within {
					known++
				}
				a := v.inside[k]
				want := v.landing(i, j, &a)
				require.True(t, want.ok, "seed %d: (%d, %d), ray %d", seed, i, j, k)
				pixel := math.Inf(1)
				for _, way := range [2][2]float64{{1, 0}, {0, 1}} {
					b := a
					b.xPx, b.yPx = b.xPx+way[0], b.yPx+way[1]
					if next := v.landing(i, j, &b); next.ok {
						pixel = min(pixel, math.Hypot(next.xMM-want.xMM, next.yMM-want.yMM))
					}
				}
				worst = max(worst, math.Hypot(got.xMM-want.xMM, got.yMM-want.yMM)/pixel)
				worstShare = max(worstShare, math.Abs(got.share-want.share))
			}
			t.Logf("%d of %d within the round; worst %.4f pixels and %.5f of the light off", known, inside, worst, worstShare)
			require.Less(t, worst, 0.02)
			require.Less(t, worstShare, 0.002)
			require.Greater(t, float64(known), 0.9*float64(inside))
		})
	}
}
