package shot

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// filmed is a 4.6 mm drop of water in a frame 60 x 33.75 mm of 1920 x 1080 pixels, 0.03125 mm each, half life size.
func filmed(t *testing.T, shooting layout.Shooting, frameRate float64) Shot {
	t.Helper()
	s := plain()
	s.Drop.DiameterMM, s.Material, s.DistanceMM = 4.6, "water", 400
	s.Camera.Sensor, s.Camera.WidthPx, s.Camera.HeightPx = layout.Size{WidthMM: 30, HeightMM: 16.875}, 1920, 1080
	s.Camera.LensMM, s.Camera.FrameWidthMM, s.Camera.FrameRate, s.Shooting = 0, 60, frameRate, shooting
	return Of(mustPlan(t, s))
}

// By hand: the root of 2 x 9806.65 x 200 is 1980.57 mm/s; in 1/25000 s it runs over 0.0792 mm, 2.535 pixels. It passes
// 33.75 mm in 17.056 ms (flip/motion): 213.2 frames at 12,500 a second, 8.53 s at 25.
func TestMotionByHand(t *testing.T) {
	m := filmed(t, layout.Shooting{FallMM: 200, ShutterS: 1.0 / 25000}, 12500).Motion()
	require.InDelta(t, 1980.57, m.SpeedMMPerS, 0.01)
	require.InDelta(t, 200, m.FallMM, 1e-9)
	require.InDelta(t, 17.056, m.InViewMS, 0.001)
	require.InDelta(t, 213.2, m.FramesInView, 0.1)
	require.InDelta(t, 8.53, m.PlaybackS, 0.005)
	require.InDelta(t, 0.0792, m.Smear.SmearMM, 5e-5)
	require.InDelta(t, 2.535, m.Smear.SmearPx, 0.002)
	require.InDelta(t, math.Sqrt(2.535*2.535+m.Smear.BlurPx*m.Smear.BlurPx), m.Smear.TogetherPx, 0.002)
	// Two pixels pass for sharp: 0.0625 mm, over 1980.57 mm/s.
	require.InDelta(t, 3.1557e-5, m.Smear.ShutterForSharpS, 1e-9)
	// Air counts from 390 mm on (flip/motion).
	require.InDelta(t, 390, m.DragFreeMM, 1)

	rising := filmed(t, layout.Shooting{SpeedMMPerS: -1980.57, PlaybackFPS: 50}, 12500).Motion()
	require.InDelta(t, -1980.57, rising.SpeedMMPerS, 1e-9)
	require.InDelta(t, 200, rising.FallMM, 0.01)
	require.InDelta(t, 213.2, rising.FramesInView, 0.1)
	require.InDelta(t, 4.264, rising.PlaybackS, 0.005)
	require.InDelta(t, 8e-5, rising.Smear.ShutterS, 1e-12, "the whole frame")
	require.InDelta(t, 2*0.0792, rising.Smear.SmearMM, 1e-4)
}

func TestMotionNotKnown(t *testing.T) {
	require.Nil(t, filmed(t, layout.Shooting{ShutterS: 1e-5}, 0).Motion(), "no speed")
	m := filmed(t, layout.Shooting{FallMM: 200}, 0).Motion()
	require.Nil(t, m.Smear, "no shutter")
	require.Zero(t, m.FramesInView)
	require.Zero(t, m.PlaybackS)
	require.Positive(t, m.InViewMS)
	s := filmed(t, layout.Shooting{FallMM: 200}, 0)
	s.Drop.Material = "1.38"
	require.Zero(t, s.Motion().DragFreeMM, "a liquid of which the index alone is known")
}

// At the shutter that is told, the smear is what it is told for.
func TestShuttersThatAreTold(t *testing.T) {
	for _, speed := range []float64{1980.57, -300, 0.5} {
		s := filmed(t, layout.Shooting{SpeedMMPerS: speed, ShutterS: 1e-3}, 0)
		told := s.Motion().Smear
		s.Shooting.ShutterS = told.ShutterForBlurS
		require.InEpsilon(t, told.BlurPx, s.Motion().Smear.SmearPx, 1e-9)
		s.Shooting.ShutterS = told.ShutterForSharpS
		require.InEpsilon(t, s.Camera.SharpToPx, s.Motion().Smear.SmearPx, 1e-9)
	}
}

// The blur is that of a camera focused so at that stop; no third of a stop does better than the best, and the widest
// that is hardly worse is so, but the next wider one is not.
func TestBestStopWithSmear(t *testing.T) {
	var before SmearedStop
	for _, shutterS := range []float64{1e-7, 4e-5, 4e-4} {
		s := filmed(t, layout.Shooting{FallMM: 200, ISO: 3200, ShutterS: shutterS}, 0)
		smear := s.Motion().Smear
		require.InDelta(t, s.WorstPx(s.BlurAt(16, s.Camera.FocusMM)), smear.BlurPx, 1e-12)
		together := func(n float64) float64 { return math.Hypot(s.worstAt(n), smear.SmearPx) }
		for n := 1.0; n < 64; n *= math.Pow(2, 1.0/6) {
			require.GreaterOrEqual(t, together(n), smear.Best.TogetherPx*(1-1e-9), "f/%g", n)
		}
		for _, stop := range []SmearedStop{smear.Best, smear.AsGood} {
			require.InDelta(t, math.Round(6*math.Log2(stop.FNumber)), 6*math.Log2(stop.FNumber), 1e-9, "thirds of a stop")
			require.InEpsilon(t, together(stop.FNumber), stop.TogetherPx, 1e-9)
			// By hand for half life size, 250 N² 2.25 / (t S).
			require.InEpsilon(t, 250*stop.FNumber*stop.FNumber*2.25/(shutterS*3200), stop.NeededLux, 1e-9)
		}
		require.LessOrEqual(t, smear.AsGood.FNumber, smear.Best.FNumber)
		require.LessOrEqual(t, smear.AsGood.TogetherPx, 1.1*smear.Best.TogetherPx)
		require.Greater(t, together(smear.AsGood.FNumber/math.Pow(2, 1.0/6)), 1.1*smear.Best.TogetherPx)
		if before.FNumber > 0 {
			require.Less(t, smear.AsGood.FNumber, before.FNumber, "the more it is smeared, the wider a stop is as good")
		}
		before = smear.AsGood
	}
	require.Zero(t, filmed(t, layout.Shooting{FallMM: 200, ShutterS: 1e-5}, 0).Motion().Smear.Best.NeededLux, "no ISO")
}

// A picture seen in red and one seen in blue, worked out apart, differ by that.
func TestFringe(t *testing.T) {
	s := filmed(t, layout.Shooting{}, 0)
	px, ok := s.Fringe()
	require.True(t, ok)
	reachMM, ok := s.Sight().ReachMM(s.Picture.Fill)
	require.True(t, ok)
	seen := func(index float64) float64 {
		sight := s.Sight()
		sight.Drop = flip.Drop{Body: flip.Ball, DiameterMM: 4.6, Index: index}
		x, _, ok := sight.SeenThrough(reachMM, 0)
		require.True(t, ok)
		return math.Abs(x)
	}
	m, _ := flip.MaterialByName("water")
	require.InDelta(t, (seen(m.Dispersion.RedIndex)-seen(m.Dispersion.BlueIndex))/0.03125, px, 1e-4)
	require.Positive(t, px)

	s.Drop.Material = "syrup-40"
	_, ok = s.Fringe()
	require.False(t, ok, "its dispersion is not known")
}
