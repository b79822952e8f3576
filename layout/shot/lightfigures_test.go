package shot

import (
	"math"
	"testing"

	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// One lamp on the axis: the cosine-fourth law (Smith, Modern Optical Engineering, 8.6; recalled from memory).
func TestLightFiguresOfALampOnTheAxis(t *testing.T) {
	const z = 700.0
	p := litPlan(t, layout.Lamp{XMM: 0, YMM: 0, ZMM: z})
	cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
	f := Of(p).LightFigures()
	require.InDelta(t, 1, f.Centre.Share, 1e-12)
	require.InDelta(t, cx, f.Brightest.Board.XMM, 1e-3)
	require.InDelta(t, cy, f.Brightest.Board.YMM, 1e-3)
	corner := math.Cos(math.Atan(math.Hypot(cx, cy) / z))
	for _, place := range append(f.Corners, f.Darkest) {
		require.InDelta(t, math.Pow(corner, 4), place.Share, 1e-12)
		require.InDelta(t, -4*math.Log2(corner), place.Stops, 1e-12)
	}
	// Under half a stop: cos⁴ = 2^-1/2 at the corner.
	wantMM := math.Hypot(cx, cy) / math.Tan(math.Acos(math.Pow(2, -1.0/8)))
	require.InEpsilon(t, wantMM, f.Retreat.Lamps[0].ZMM, 2e-4)
	require.InDelta(t, 2*math.Log2(f.Retreat.Factor), f.Retreat.LossStops, 1e-9, "inverse square")
	require.Nil(t, Of(litPlan(t)).LightFigures(), "without lamps")
}

func TestRetreat(t *testing.T) {
	t.Run("lamps that may stay", func(t *testing.T) {
		f := Of(litPlan(t, layout.Lamp{XMM: 0, YMM: 0, ZMM: 5000})).LightFigures()
		require.Equal(t, 1.0, f.Retreat.Factor)
		require.Zero(t, f.Retreat.LossStops)
	})
	t.Run("one from the side: just under at the distance told", func(t *testing.T) {
		p := litPlan(t, layout.Lamp{XMM: -600, YMM: -400, ZMM: 900})
		f := Of(p).LightFigures()
		require.Greater(t, f.FalloffStops, evenStops)
		falloff := func(factor float64) float64 {
			return Of(litPlan(t, moved(p.Lamps, factor)...)).LightFigures().FalloffStops
		}
		require.LessOrEqual(t, falloff(f.Retreat.Factor), evenStops)
		require.Greater(t, falloff(f.Retreat.Factor*0.999), evenStops)
		require.InDelta(t, 2*math.Log2(f.Retreat.Factor), f.Retreat.LossStops, 1e-9)
	})
	t.Run("a pair from both sides is evener than one", func(t *testing.T) {
		one := Of(litPlan(t, layout.Lamp{XMM: -900, YMM: 0, ZMM: 900})).LightFigures()
		two := Of(litPlan(t, layout.Lamp{XMM: -900, YMM: 0, ZMM: 900},
			layout.Lamp{XMM: 900, YMM: 0, ZMM: 900})).LightFigures()
		require.Less(t, two.FalloffStops, one.FalloffStops/2)
		require.InDelta(t, two.FalloffStops, one.TwinStops, 1e-12)
	})
	t.Run("no distance within a kilometre", func(t *testing.T) {
		f := Of(litPlan(t, layout.Lamp{XMM: 9e5, YMM: 0, ZMM: 1}, layout.Lamp{XMM: 10, YMM: 0, ZMM: 1})).LightFigures()
		require.Nil(t, f.Retreat)
	})
}

// A twin shines from the other side on the other side, and nothing else of it differs.
func TestTwinsOfAimedLamps(t *testing.T) {
	lamp := layout.Lamp{XMM: -700, YMM: -300, ZMM: 900, LuxAt1M: 5000, BeamDeg: 50, Aim: layout.Aim{XMM: 250, YMM: 100}}
	twin := layout.Lamp{XMM: 700, YMM: 300, ZMM: 900, LuxAt1M: 5000, BeamDeg: 50, Aim: layout.Aim{XMM: -250, YMM: -100}}
	both := Of(litPlan(t, lamp, twin)).LightFigures()
	require.InDelta(t, both.FalloffStops, Of(litPlan(t, lamp)).LightFigures().TwinStops, 1e-9)
}
