package seamsight_test

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/seamsight"

	"github.com/stretchr/testify/require"
)

// Contrast by hand: the seam's share, times the paper's light less the picture's, over the picture's and the
// screen's flare. With a wide seam the share is 1. Printed white is bare paper: a light grey shows the edge, white does
// not.
func TestContrastByHand(t *testing.T) {
	const wideMM = 500
	for _, c := range []struct{ light, want float64 }{
		{0.5, (1 - 0.5) / 0.51}, {0.05, (1 - 0.05) / 0.06}, {0.80, (1 - 0.80) / 0.81}, {1, 0},
	} {
		p := plan(t)
		m := seamsight.New(p, even(c.light), wideMM)
		// Beside the drop all of the light comes through.
		s := m.At(p.Backdrop.WidthMM/2+8.5, p.Backdrop.HeightMM/2, "x", seamsight.Direct)
		require.InDelta(t, c.want, s.Contrast, 0.01*c.want+0.005, "light %g", c.light) // the picture has 8 bits
	}
}

// A seam as light as the print is hidden, one in black ink shows, one in the same black without light does not.
func TestWhatHidesASeam(t *testing.T) {
	most := func(p layout.Plan, light float64) (worst seamsight.Verdict) {
		for _, s := range seamsight.New(p, even(light), seamMM).Seams() {
			for _, sample := range s.Samples {
				worst = max(worst, sample.Verdict())
			}
		}
		return worst
	}
	require.Equal(t, seamsight.Hidden, most(plan(t), 1), "white is bare paper")
	require.Equal(t, seamsight.Shows, most(plan(t), 0.01))

	// A lamp far to one side lights one end of the board and leaves the other one in the dark; 1 is the brightest place.
	dark := plan(t, func(s *layout.Setup) { s.Lamps = []layout.Lamp{{XMM: -600, YMM: 0, ZMM: 60}} })
	m := seamsight.New(dark, even(0.01), seamMM)
	bright := m.At(120, dark.Backdrop.HeightMM/2, "x", seamsight.Through)
	dim := m.At(dark.Backdrop.WidthMM-120, dark.Backdrop.HeightMM/2, "x", seamsight.Through)
	require.InEpsilon(t, bright.WidthPx, dim.WidthPx, 1e-6, "as large as each other")
	require.Less(t, dim.OverThreshold(), bright.OverThreshold()/5)
}

// Busy detail hides what even ground of the same light shows.
func TestDetailMasks(t *testing.T) {
	p := plan(t)
	at := func(light func(u, v float64) float64) float64 {
		return seamsight.New(p, drawn(light), seamMM).At(p.Backdrop.WidthMM/2+60, p.Backdrop.HeightMM/2+40, "x",
			seamsight.Through).OverThreshold()
	}
	plain := at(func(_, _ float64) float64 { return 0.3 })
	busy := at(func(u, v float64) float64 { return 0.3 + 0.25*math.Sin(250*u)*math.Sin(170*v) })
	slope := at(func(u, _ float64) float64 { return 0.3 + 0.3*(u-0.43) })
	require.Less(t, busy, 0.5*plain)
	require.Greater(t, slope, 0.8*plain, "a slow change of light masks nothing")
}

// The print that makes up for the lamps' fall-off is what seams are held against: where it is printed darker,
// the same light edge stands out more.
func TestLevelledPrint(t *testing.T) {
	lamp := []layout.Lamp{{XMM: -300, YMM: 0, ZMM: 700}}
	p := plan(t, func(s *layout.Setup) { s.Lamps = lamp })
	levelled := p
	levelled.LevelledFor = lamp
	x, y := 100.0, p.Backdrop.HeightMM/2
	gain := levelled.Level().Gain(x, y)
	require.Less(t, gain, 0.7)
	before := seamsight.New(p, even(0.4), seamMM).At(x, y, "x", seamsight.Through)
	after := seamsight.New(levelled, even(0.4), seamMM).At(x, y, "x", seamsight.Through)
	require.InEpsilon(t, before.Picture*gain, after.Picture, 1e-9)
	require.Greater(t, after.Contrast, before.Contrast)

	// A surround is printed too.
	p = plan(t, func(s *layout.Setup) {
		s.Lamps, s.Level = lamp, true
		s.Surround, s.SurroundSize = "#808080", layout.Size{WidthMM: 1300, HeightMM: 900}
	})
	gain = p.Level().Gain(50, 450)
	require.Less(t, gain, 0.9)
	beyond := seamsight.New(p, even(0.4), seamMM).At(50, 450, "x", seamsight.Through)
	require.InEpsilon(t, lightOf(128)*gain, beyond.Picture, 1e-6)
}

// On a surround of one colour, seams are held against that colour.
func TestSurround(t *testing.T) {
	p := plan(t, func(s *layout.Setup) {
		s.Surround, s.SurroundSize = "#ffffff", layout.Size{WidthMM: 1300, HeightMM: 900}
	})
	m := seamsight.New(p, even(0.02), seamMM)
	require.InDelta(t, 1, m.At(50, 450, "x", seamsight.Through).Picture, 1e-6)
	require.InDelta(t, 0.02, m.At(650, 450, "x", seamsight.Through).Picture, 0.002)
}

// CostAt is contrast over threshold times pixels along, of the path that shows it more.
func TestCostAt(t *testing.T) {
	const seed = 11
	random := rand.New(rand.NewSource(seed))
	for _, changes := range [][]func(*layout.Setup){nil, {func(s *layout.Setup) { s.Camera.FrameWidthMM = 90 }},
		{rod(flip.UprightRod)}} {
		p := plan(t, changes...)
		m := seamsight.New(p, scenic(), seamMM)
		inSight := 0
		for range 2000 {
			x, y := random.Float64()*p.Backdrop.WidthMM, random.Float64()*p.Backdrop.HeightMM
			axis := []string{"x", "y"}[random.Intn(2)]
			want := 0.0
			for _, path := range []seamsight.Path{seamsight.Direct, seamsight.Through} {
				s := m.At(x, y, axis, path)
				want = max(want, s.OverThreshold()*s.AlongPx)
			}
			cost := m.CostAt(x, y, axis)
			if p.Drop.Body == flip.Ball { // a rod's places are not refined for costs
				require.InDelta(t, want, cost, 1e-9, "seed %d: %g, %g", seed, x, y)
			}
			require.True(t, cost >= 0 && !math.IsInf(cost, 0), "seed %d", seed)
			if cost > 0 {
				inSight++
			}
		}
		require.Greater(t, inSight, 20)
	}
}

// Whatever the plan, every figure is a number.
func TestWildPlans(t *testing.T) {
	const seed = 5
	random := rand.New(rand.NewSource(seed))
	between := func(low, high float64) float64 { return low * math.Pow(high/low, random.Float64()) }
	picture := scenic()
	made := 0
	for range 120 {
		s := usual()
		s.Drop = flip.Drop{Body: flip.Body(random.Intn(3)), DiameterMM: between(0.1, 100), Index: between(1.05, 3)}
		s.CameraMM, s.DistanceMM, s.Fill = between(10, 5000), between(10, 2000), between(0.02, 0.999)
		s.Proportions = between(0.1, 10)
		s.Camera.FNumber, s.Camera.FrameWidthMM = between(1, 128), between(0.5, 2000)
		if random.Intn(2) == 0 {
			s.Lamps = []layout.Lamp{{XMM: between(1, 1e4) - 100, YMM: 10 - between(1, 1e4), ZMM: between(1, 1e4)}}
		}
		p, err := s.Plan()
		if err != nil {
			continue
		}
		made++
		m := seamsight.New(p, picture, between(0.01, 50))
		for range 50 {
			x, y := (1.2*random.Float64()-0.1)*p.Backdrop.WidthMM, (1.2*random.Float64()-0.1)*p.Backdrop.HeightMM
			for _, axis := range []string{"x", "y"} {
				for _, path := range []seamsight.Path{seamsight.Direct, seamsight.Through} {
					s := m.At(x, y, axis, path)
					for _, v := range []float64{s.Frame.XPx, s.Frame.YPx, s.WidthPx, s.PxPerMM, s.AlongPx, s.BlurPx, s.Picture,
						s.Contrast, s.Threshold, s.OverThreshold()} {
						require.False(t, math.IsNaN(v) || math.IsInf(v, 0) || v < 0, "seed %d: %+v of %+v", seed, s, p.Drop)
					}
				}
				require.GreaterOrEqual(t, m.CostAt(x, y, axis), 0.0)
			}
		}
	}
	require.Greater(t, made, 30, "seed %d", seed)
}
