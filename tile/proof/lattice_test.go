package proof

import (
	"context"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/board"

	"github.com/stretchr/testify/require"
)

// requireLands holds where rings have a ray land, and how much of its light, against the trace: to a tenth of a pixel,
// and a two-hundredth of the light.
func (v *view) requireLands(t *testing.T, i, j int, at, drop layout.Point, s *slopes) {
	t.Helper()
	r := ringsOf(v.rings, drop)
	if r == nil {
		return
	}
	k, ok := r.at(at)
	require.True(t, ok)
	want, transmittance, ok := v.middle(i, j, drop)
	require.True(t, ok)
	pixelMM := math.Sqrt(math.Abs(s.across.xMM*s.down.yMM - s.across.yMM*s.down.xMM))
	off := math.Hypot(k.lands.xMM+drop.XMM-want.XMM, k.lands.yMM+drop.YMM-want.YMM)
	require.LessOrEqual(t, off, 0.1*pixelMM, "pixel %d, %d, at %g of the radius", i, j, v.share(at, drop))
	require.InDelta(t, transmittance, k.share, 0.005)
}

// The spread between nodes is that of traced neighbours to one per cent, for every body, in the middle of the
// drop and toward its rim.
func TestLatticeAgainstTheTrace(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		drops  []layout.Point
	}{
		{"ball", func(*layout.Setup) {}, nil},
		{"ball, out of a wide pupil", func(s *layout.Setup) { s.Camera.FNumber = 4 }, nil},
		{"glass", func(s *layout.Setup) { s.Drop.Index = 1.5 }, nil},
		{"oblate", func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.85 }, nil},
		{"upright rod", func(s *layout.Setup) { s.Drop.Body = flip.UprightRod }, nil},
		{"level rod", func(s *layout.Setup) { s.Drop.Body = flip.LevelRod }, nil},
		{"two drops", func(s *layout.Setup) { s.Camera.FrameWidthMM = 11 },
			[]layout.Point{{XMM: -2.6, YMM: 0.5}, {XMM: 2.5}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				s.Camera.WidthPx, s.Camera.HeightPx = 1200, 800
				c.change(s)
			})
			v := Scene{Plan: p, Camera: p.Camera, Picture: quarters(), Drops: c.drops}.view()
			v.lattice = v.newLattice(context.Background())
			v.rings, v.mirrors = v.newRingsOfAll(context.Background())
			if p.Drop.Body == flip.Ball {
				require.NotNil(t, v.rings[0])
			} else {
				require.Greater(t, v.lattice.step, 1)
			}
			compared, near := 0, 0.0
			for j := 0; j < 800; j += 7 {
				for i := 0; i < 1200; i += 7 {
					at := p.Camera.At(float64(i)+0.5, float64(j)+0.5)
					drop := v.nearest(at)
					between, ok := v.slopesAt(i, j, at, drop)
					if !ok {
						continue
					}
					got := v.spread(&between)
					traced, ok := v.slopes(at, drop)
					require.True(t, ok)
					v.requireLands(t, i, j, at, drop, &traced)
					want := v.spread(&traced)
					for _, pair := range [][2]board.Patch{{want.pixel, got.pixel}, {want.pupil, got.pupil}} {
						size := pair[0].XX + pair[0].YY
						for _, off := range []float64{pair[1].XX - pair[0].XX, pair[1].XY - pair[0].XY, pair[1].YY - pair[0].YY} {
							if !(math.Abs(off) <= 0.01*size) {
								require.LessOrEqual(t, math.Abs(off), 0.01*size, "pixel %d, %d, at %g of the radius", i, j, v.share(at, drop))
							}
						}
					}
					compared, near = compared+1, max(near, v.share(at, drop))
				}
			}
			require.Greater(t, compared, 2000)
			require.Greater(t, near, 0.75)
		})
	}
}
