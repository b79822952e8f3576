package flip

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// lightAt is a light far off, at an angle at the drop from the camera, which stands far off too.
func lightAt(degrees float64) Vec {
	sin, cos := math.Sincos(degrees * math.Pi / 180)
	return Vec{1e6 * sin, 0, -1e6 * cos}
}

// onWay are the glints on one way.
func onWay(all []Glint, way int) (some []Glint) {
	for _, g := range all {
		if g.Way == way {
			some = append(some, g)
		}
	}
	return some
}

// A ball mirrors a far light at R sin(theta/2), theta the angle between its way and the camera's, with the
// reflectance at theta/2, and sends as much of it every way: a quarter of R² for a steradian (van de Hulst, Light
// Scattering by Small Particles, 1957, 12.44: a sphere's reflection is isotropic).
func TestMirroredLightAgainstClosedForm(t *testing.T) {
	s := waterSight(5, 1e6, 200)
	for _, theta := range []float64{2, 40, 90, 140, 170} {
		fronts := onWay(s.Glints(lightAt(theta)), ByFront)
		require.Len(t, fronts, 1, "%g degrees", theta)
		g := fronts[0]
		half := theta / 2 * math.Pi / 180
		require.InDelta(t, 2.5*math.Sin(half), g.XMM, 1e-4, "%g degrees", theta)
		require.InDelta(t, 0, g.YMM, 1e-9)
		r := math.Asin(math.Sin(half) / 1.333)
		want := (math.Pow(math.Sin(half-r)/math.Sin(half+r), 2) + math.Pow(math.Tan(half-r)/math.Tan(half+r), 2)) / 2
		require.InEpsilon(t, want, g.Share, 1e-3, "%g degrees", theta)
		require.InEpsilon(t, 2.5*2.5/4, g.AreaMM2, 1e-3, "%g degrees", theta)
		require.InDelta(t, theta*math.Pi/180, g.OffRad, 1e-4)
	}
}

// Thrown back once inside, a far light is seen where 4r - 2i is its angle (Descartes): two places up to 42 degrees,
// none beyond. The area is b db / (sin theta dtheta), b = R sin i, by how theta changes with i.
func TestLightThrownBackOnceAgainstClosedForm(t *testing.T) {
	s := waterSight(5, 1e6, 200)
	require.Empty(t, onWay(s.Glints(lightAt(42.2)), OnceInside))
	for _, theta := range []float64{20, 30, 40, 41.8} {
		got := onWay(s.Glints(lightAt(theta)), OnceInside)
		require.Len(t, got, 2, "%g degrees", theta)
		for _, g := range got {
			i := math.Asin(math.Abs(g.XMM) / 2.5)
			r := math.Asin(math.Sin(i) / 1.333)
			require.InDelta(t, theta, (4*r-2*i)*180/math.Pi, 0.001)
			slope := 4*math.Cos(i)/(1.333*math.Cos(r)) - 2
			area := 2.5 * math.Sin(i) * 2.5 * math.Cos(i) / (math.Sin(theta*math.Pi/180) * math.Abs(slope))
			require.InEpsilon(t, area, g.AreaMM2, 0.01, "%g degrees", theta)
		}
	}
}

// From near, where camera and light see the drop under angles of their own, the mirror still stands so that its normal
// halves the angle between the ways to both; for bodies out of round and rods too.
func TestGlintsFromNear(t *testing.T) {
	for _, c := range []struct {
		name string
		drop Drop
	}{
		{"ball", Drop{DiameterMM: 5, Index: 1.333}},
		{"pressed flat", Drop{DiameterMM: 5, Index: 1.333, HeightOverWidth: 0.85}},
		{"upright rod", Drop{Body: UprightRod, DiameterMM: 20, Index: 1.5}},
		{"level rod", Drop{Body: LevelRod, DiameterMM: 20, Index: 1.5}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := Sight{Drop: c.drop, CameraMM: 60, DistanceMM: 200}
			light := Vec{-80, 50, -40}
			got := onWay(s.Glints(light), ByFront)
			require.Len(t, got, 1)
			tracer := s.Tracer()
			ways, ok := tracer.Thrown(s.PinholeRay(got[0].XMM, got[0].YMM))
			require.True(t, ok)
			p := ways[ByFront].Ray.From
			normal := c.drop.quadric().weigh(p).Unit()
			half := light.Sub(p).Unit().Add(Vec{0, 0, -60}.Sub(p).Unit()).Unit()
			require.InDelta(t, 1, half.Dot(normal), 1e-9)

			moved, ok := tracer.GlintFrom(Vec{1, 2, -60}, light.Add(Vec{3, 0, 0}), got[0])
			require.True(t, ok)
			again, ok := tracer.GlintFrom(Vec{0, 0, -60}, light, moved)
			require.True(t, ok)
			require.InDelta(t, got[0].XMM, again.XMM, 1e-5)
			require.InDelta(t, got[0].YMM, again.YMM, 1e-5)
		})
	}
}
