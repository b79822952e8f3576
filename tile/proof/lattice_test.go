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
			require.Greater(t, v.lattice.step, 1)
			compared, near := 0, 0.0
			for j := 0; j < 800; j += 7 {
				for i := 0; i < 1200; i += 7 {
					at := p.Camera.At(float64(i)+0.5, float64(j)+0.5)
					drop := v.nearest(at)
					between, ok := v.lattice.at(i, j, drop)
					if !ok {
						continue
					}
					got := v.spread(&between)
					traced, ok := v.slopes(at, drop)
					require.True(t, ok)
					want := v.spread(&traced)
					for _, pair := range [][2]board.Patch{{want.pixel, got.pixel}, {want.pupil, got.pupil}} {
						size := pair[0].XX + pair[0].YY
						for _, off := range []float64{pair[1].XX - pair[0].XX, pair[1].XY - pair[0].XY, pair[1].YY - pair[0].YY} {
							require.LessOrEqual(t, math.Abs(off), 0.01*size, "pixel %d, %d, at %g of the radius", i, j, v.share(at, drop))
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
