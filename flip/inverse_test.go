package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// sights are bodies, distances and materials from all over what a setup allows.
func randomSight(r *rand.Rand) Sight {
	s := Sight{
		Drop:       Drop{Body: Body(r.Intn(3)), DiameterMM: 0.5 + 20*r.Float64()*r.Float64(), Index: 1.2 + 0.6*r.Float64()},
		DistanceMM: 60 + 2000*r.Float64()*r.Float64(), CameraMM: 80 + 2000*r.Float64()*r.Float64(),
	}
	if s.Drop.Body == Ball && r.Intn(2) == 0 {
		s.Drop.HeightOverWidth = 0.8 + 0.4*r.Float64()
	}
	return s
}

// From the drop's plane to the board and back, for bodies of every kind.
func TestSeenThroughUndoesTheTrace(t *testing.T) {
	const seed = 20
	r := rand.New(rand.NewSource(seed))
	worst := 0.0
	for i := range 20_000 {
		s := randomSight(r)
		share, sin, cos := 0.995*math.Sqrt(r.Float64()), 0.0, 0.0
		sin, cos = math.Sincos(2 * math.Pi * r.Float64())
		halfWidthMM, halfHeightMM := s.OutlineMM()
		x, y := share*cos*min(halfWidthMM, 30), share*sin*min(halfHeightMM, 30)
		l, ok := s.Trace(s.PinholeRay(x, y))
		if !ok || !l.Through {
			continue
		}
		require.False(t, math.IsNaN(l.XMM+l.YMM))
		backX, backY, ok := s.SeenThrough(l.XMM, l.YMM)
		require.True(t, ok, "seed %d, case %d: %+v at %g, %g (share %g)", seed, i, s, x, y, share)
		worst = max(worst, math.Hypot(backX-x, backY-y))
		require.InDelta(t, 0, math.Hypot(backX-x, backY-y), 1e-9, "seed %d, case %d: %+v at %g, %g", seed, i, s, x, y)
		again, ok := s.Trace(s.PinholeRay(backX, backY))
		require.True(t, ok)
		require.InDelta(t, 0, math.Hypot(again.XMM-l.XMM, again.YMM-l.YMM),
			1e-9*(s.DistanceMM+(l.XMM*l.XMM+l.YMM*l.YMM)/s.DistanceMM), "an angle of 1e-9; seed %d, case %d", seed, i)
	}
	t.Logf("worst %.2g mm", worst)
}

// FillAt halves the closed form: it shares nothing with Newton's steps along traced rays.
func TestSeenThroughAgreesWithFillAt(t *testing.T) {
	s := waterSight(5, 300, 200)
	for _, reachMM := range []float64{0, 0.01, 1, 40, 150, 400, 1000} {
		fill, ok := s.FillAt(reachMM)
		require.True(t, ok)
		x, y, ok := s.SeenThrough(0.6*reachMM, -0.8*reachMM)
		require.True(t, ok, reachMM)
		require.InDelta(t, -0.6*fill*s.ApparentRadiusMM(), x, 1e-9)
		require.InDelta(t, 0.8*fill*s.ApparentRadiusMM(), y, 1e-9)
	}
}

func TestSeenThroughRefuses(t *testing.T) {
	s := waterSight(5, 300, 200)
	rimMM, ok := s.ReachMM(1)
	require.True(t, ok)
	for _, c := range []struct {
		name string
		s    Sight
		x, y float64
	}{
		{"past the rim", s, rimMM * 1.01, 0},
		{"past the rim, aslant", s, -rimMM, rimMM},
		{"a hundred-thousandth of a radian past the rim", s, s.DistanceMM * math.Tan(math.Atan(rimMM/s.DistanceMM)+1e-5), 0},
		{"not a number", s, math.NaN(), 0},
		{"infinite", s, 0, math.Inf(1)},
		{"inside the focal length", waterSight(5, 300, 4), 1, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, _, ok := c.s.SeenThrough(c.x, c.y)
			require.False(t, ok)
		})
	}
	_, _, ok = s.SeenThrough(rimMM*0.999, 0)
	require.True(t, ok)
}

func BenchmarkSeenThrough(b *testing.B) {
	s := waterSight(5, 300, 200)
	s.Drop.HeightOverWidth = 0.9
	for i := range b.N {
		s.SeenThrough(float64(i%100), 70)
	}
}
