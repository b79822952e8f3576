package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

func waterSight(diameterMM, cameraMM, distanceMM float64) Sight {
	return Sight{Drop: Drop{Body: Ball, DiameterMM: diameterMM, Index: 1.333}, CameraMM: cameraMM, DistanceMM: distanceMM}
}

// The figures were worked outside this program: a ray by vectors, refracted by Snell's law at both faces of the ball,
// in Python's mpmath with 50 digits, through the drop's plane at the fill times D tan(asin(R/D)).
func TestReachWorkedFigures(t *testing.T) {
	for _, c := range []struct {
		name                            string
		diameterMM, cameraMM, distantMM float64
		fill, wantMM                    float64
	}{
		{"small drop, half way", 4.6, 1000, 200, 0.5, 55.67753619},
		{"small drop, near the rim", 4.6, 1000, 200, 0.9, 185.3847215},
		{"larger drop, further off", 6, 1500, 400, 0.8, 251.0763999},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, ok := waterSight(c.diameterMM, c.cameraMM, c.distantMM).ReachMM(c.fill)
			require.True(t, ok)
			require.InDelta(t, c.wantMM, got, 1e-6)
		})
	}
	// By hand: f = 1.333 x 2.3 / 0.666 = 4.60345, and 200/f - 1 - 200/1000 = 42.2457 times 0.9 of 2.300006.
	require.InDelta(t, 87.4488, waterSight(4.6, 1000, 200).NearAxisReachMM(0.9), 1e-3)
}

// Hecht, Optics, gives the ball lens f = nD / 4(n-1); a paraxial ray must agree with the thin lens 1/s + 1/L = 1/f.
func TestNearAxisLimit(t *testing.T) {
	for _, n := range []float64{1.333, 1.5168, 1.8} {
		d := Drop{DiameterMM: 5, Index: n}
		f := n * 5 / (4 * (n - 1))
		require.InDelta(t, f, d.FocalLengthMM(), 1e-12)
		s := Sight{Drop: d, CameraMM: 1e9, DistanceMM: 200}
		const fill = 1e-4
		heightMM, ok := s.HeightMM(fill)
		require.True(t, ok)
		require.InEpsilon(t, -(200-f)/f*fill*2.5, heightMM, 1e-6)
	}
}

// The near-axis reach is where a ray by the axis lands, in proportion, from near and from far.
func TestNearAxisReachIsThatOfARayByTheAxis(t *testing.T) {
	for _, cameraMM := range []float64{20, 60, 150, 300, 3000} {
		s := waterSight(5, cameraMM, 200)
		const fill = 1e-4
		reachMM, ok := s.ReachMM(fill)
		require.True(t, ok)
		require.InEpsilon(t, reachMM/fill*0.8, s.NearAxisReachMM(0.8), 1e-6, "camera at %g", cameraMM)
	}
}

// van de Hulst, Light Scattering by Small Particles (1957), 12.2: the p = 1 ray at grazing incidence is deviated by
// 180 - 2 asin(1/n) degrees: 82.8 for n = 4/3.
func TestGrazingDeviation(t *testing.T) {
	for _, c := range []struct {
		name  string
		index float64
		want  float64
	}{{"4/3", 4.0 / 3, 82.8}, {"1.333", 1.333, 82.8}} {
		t.Run(c.name, func(t *testing.T) {
			s := Sight{Drop: Drop{DiameterMM: 5, Index: c.index}, CameraMM: 1e12, DistanceMM: 200}
			_, phi := s.exit(1)
			require.InDelta(t, c.want, -phi*180/math.Pi, 0.05)
		})
	}
}

// Two routes to one figure: the closed form, and the vector trace. Neither shares a line with the other.
func TestClosedFormAgainstTrace(t *testing.T) {
	const seed = 20
	random := rand.New(rand.NewSource(seed))
	for i := range 3000 {
		s := Sight{Drop: Drop{Body: Body(i % 3), DiameterMM: 1 + 29*random.Float64(), Index: 1.05 + 0.85*random.Float64()}}
		s.CameraMM = s.Drop.DiameterMM * (2 + 100*random.Float64())
		s.DistanceMM = s.Drop.FocalLengthMM() * (1.2 + 60*random.Float64())
		fill := 0.97 * random.Float64()
		want, ok := s.HeightMM(fill)
		if !ok {
			continue
		}
		across := fill * s.ApparentRadiusMM()
		x, y := across, 0.0
		if s.Drop.Body == LevelRod {
			x, y = 0, across
		} else if s.Drop.Body == Ball {
			angle := 2 * math.Pi * random.Float64()
			x, y = across*math.Cos(angle), across*math.Sin(angle)
		}
		l, ok := s.Trace(s.PinholeRay(x, y))
		require.True(t, ok, "seed %d, case %d: %+v fill %v", seed, i, s, fill)
		require.True(t, l.Through)
		got := (l.XMM*x + l.YMM*y) / math.Hypot(x, y)
		require.InDelta(t, want, got, 1e-6*(1+math.Abs(want)), "seed %d, case %d: %+v fill %v", seed, i, s, fill)
		require.InDelta(t, 0, l.XMM*y-l.YMM*x, 1e-6*(1+math.Abs(want)), "a ray stays in its plane through the axis")
	}
}

func TestFillAndDistanceUndoReach(t *testing.T) {
	const seed = 21
	random := rand.New(rand.NewSource(seed))
	for i := range 2000 {
		s := waterSight(1+9*random.Float64(), 50+2000*random.Float64(), 40+2000*random.Float64())
		fill := 0.02 + 0.96*random.Float64()
		reachMM, ok := s.ReachMM(fill)
		require.True(t, ok)
		back, ok := s.FillAt(reachMM)
		require.True(t, ok, "seed %d, case %d", seed, i)
		require.InDelta(t, fill, back, 1e-9, "seed %d, case %d: %+v", seed, i, s)
		distanceMM, ok := s.DistanceAtMM(fill, reachMM)
		require.True(t, ok)
		require.InEpsilon(t, s.DistanceMM, distanceMM, 1e-9, "seed %d, case %d: %+v", seed, i, s)
	}
}

func TestNoRayIsToldNotInvented(t *testing.T) {
	s := waterSight(5, 300, 200)
	glass := Sight{Drop: Drop{DiameterMM: 5, Index: 1.9}, CameraMM: 300, DistanceMM: 200}
	for _, c := range []struct {
		name string
		ok   func() bool
	}{
		{"fill above 1", func() bool { _, ok := s.HeightMM(1.01); return ok }},
		{"fill below 0", func() bool { _, ok := s.HeightMM(-0.01); return ok }},
		{"fill NaN", func() bool { _, ok := s.HeightMM(math.NaN()); return ok }},
		{"rim of dense glass looks backwards", func() bool { _, ok := glass.HeightMM(1); return ok }},
		{"reach beyond the rim's view", func() bool { _, ok := s.FillAt(1e6); return ok }},
		{"reach NaN", func() bool { _, ok := s.FillAt(math.NaN()); return ok }},
		{"no distance reaches nothing", func() bool { _, ok := s.DistanceAtMM(0.5, 0); return ok }},
		{"no distance at fill 0", func() bool { _, ok := s.DistanceAtMM(0, 10); return ok }},
		{"a ray that runs away from the backdrop",
			func() bool { _, ok := s.Trace(Ray{Vec{0, 0, -300}, Vec{0, 0, -1}}); return ok }},
	} {
		t.Run(c.name, func(t *testing.T) { require.False(t, c.ok()) })
	}
}

func TestReverses(t *testing.T) {
	far := waterSight(5, 300, 200)
	rod := func(b Body) Sight { s := far; s.Drop.Body = b; return s }
	near := waterSight(5, 300, 4.9)
	between := waterSight(5, 300, 5.05) // beyond f = 5.0075, but its image falls behind the camera
	for _, c := range []struct {
		name  string
		sight Sight
		want  Reversal
	}{
		{"ball", far, ReversesBoth},
		{"upright rod", rod(UprightRod), ReversesX},
		{"level rod", rod(LevelRod), ReversesY},
		{"inside the focal length", near, ReversesNone},
		{"image behind the camera", between, ReversesNone},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, c.sight.Reverses())
			// The trace must say the same: a ray just off the axis lands on the other side, or does not.
			l, ok := c.sight.Trace(c.sight.PinholeRay(0.001, 0.001))
			require.True(t, ok)
			require.Equal(t, c.want == ReversesBoth || c.want == ReversesX, l.XMM < 0)
			require.Equal(t, c.want == ReversesBoth || c.want == ReversesY, l.YMM < 0)
		})
	}
}

// Normal incidence from air on water of n = 1.333 reflects ((n-1)/(n+1))^2 = 2.0 % (Hecht, Optics, 4.6.3);
// both surfaces let 96.0 % through. At the rim nothing gets in.
func TestTransmittance(t *testing.T) {
	s := waterSight(5, 300, 200)
	centre, ok := s.Trace(s.PinholeRay(0, 0))
	require.True(t, ok)
	require.InDelta(t, 0.960, centre.Transmittance, 0.0005)
	last := 1.0
	for fill := 0.0; fill < 1; fill += 0.05 {
		l, ok := s.Trace(s.PinholeRay(fill*s.ApparentRadiusMM(), 0))
		require.True(t, ok)
		require.LessOrEqual(t, l.Transmittance, last+1e-4) // unpolarised reflectance first dips by less than this
		last = l.Transmittance
	}
	rim, ok := s.Trace(s.PinholeRay(0.999999*s.ApparentRadiusMM(), 0))
	require.True(t, ok)
	require.Less(t, rim.Transmittance, 0.02)
}

// 20 drops to the millilitre make 0.05 ml each; a ball of 50 mm³ is 4.571 mm across (V = pi d³ / 6).
func TestDiameterFromDropsPerML(t *testing.T) {
	d := DiameterFromDropsPerMLMM(20)
	require.InDelta(t, 4.571, d, 0.0005)
	require.InDelta(t, 50, math.Pi*d*d*d/6, 1e-9)
}
