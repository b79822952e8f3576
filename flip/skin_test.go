package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// meridian is a ray along z that meets a ball at such an incidence, in the plane x, z.
func meridian(radiusMM, incidence float64) Ray {
	return Ray{Vec{radiusMM * math.Sin(incidence), 0, -300}, Vec{0, 0, 1}}
}

// turned is by how much a ray along z was turned in that plane: 0 to 2 pi, toward the axis.
func turned(d Vec) float64 { return math.Mod(math.Atan2(-d.X, d.Z)+2*math.Pi, 2*math.Pi) }

// Thrown light is turned by 180 degrees less twice the incidence, away from the axis, by the front; and toward it by
// 180 + 2i - 4r and 360 + 2i - 6r inside (Descartes; van de Hulst, Light Scattering by Small Particles, 1957, 12.21).
// What share takes each way: Fresnel's sines and tangents at each face, for each polarisation, then the mean.
func TestThrownAgainstClosedForms(t *testing.T) {
	s := waterSight(5, 300, 200)
	tracer := s.Tracer()
	for _, degrees := range []float64{1, 20, 45, 59.4, 70, 80, 89} {
		i := degrees * math.Pi / 180
		r := math.Asin(math.Sin(i) / 1.333)
		ways, ok := tracer.Thrown(meridian(2.5, i))
		require.True(t, ok)
		want := []float64{2*i + math.Pi, math.Pi + 2*i - 4*r, 2*math.Pi + 2*i - 6*r}
		across, in := math.Pow(math.Sin(i-r)/math.Sin(i+r), 2), math.Pow(math.Tan(i-r)/math.Tan(i+r), 2)
		shares := func(of func(back float64) float64) float64 { return (of(across) + of(in)) / 2 }
		wantShare := []float64{
			shares(func(b float64) float64 { return b }),
			shares(func(b float64) float64 { return (1 - b) * b * (1 - b) }),
			shares(func(b float64) float64 { return (1 - b) * b * b * (1 - b) }),
		}
		for k, way := range ways {
			require.InDelta(t, math.Mod(want[k], 2*math.Pi), turned(way.Ray.Dir), 1e-9, "%g degrees, way %d", degrees, k)
			require.InDelta(t, wantShare[k], way.Share, 1e-12, "%g degrees, way %d", degrees, k)
			require.InDelta(t, 2.5, math.Sqrt(way.Ray.From.Dot(way.Ray.From)), 1e-9, "leaves the surface")
		}
	}
}

// What water mirrors: 2.0 % straight on, ((n-1)/(n+1))²; Fresnel's formulas by hand come to 13 % at 70 degrees and
// 35 % at 80.
func TestFrontOfWaterMirrors(t *testing.T) {
	tracer := waterSight(5, 300, 200).Tracer()
	for degrees, want := range map[float64]float64{0: 0.0204, 70: 0.133, 80: 0.348} {
		ways, ok := tracer.Thrown(meridian(2.5, degrees*math.Pi/180))
		require.True(t, ok)
		require.InDelta(t, want, ways[ByFront].Share, 0.001, "%g degrees", degrees)
		require.InDelta(t, want, (Drop{Index: 1.333}).Reflectance(degrees*math.Pi/180), 0.001, "%g degrees", degrees)
	}
}

// Descartes: light thrown back once inside a ball of water leaves at 137.92 degrees or more from its way, for n = 4/3
// at 137.97, and at 59.4 degrees of incidence; thrown back twice it is turned by at least 230.9 (Adam, The mathematical
// physics of rainbows and glories, Physics Reports 356, 2002; from memory).
func TestDescartesRays(t *testing.T) {
	tracer := waterSight(5, 300, 200).Tracer()
	least := func(way int) (turn, at float64) {
		turn = math.Inf(1)
		for degrees := 0.5; degrees < 90; degrees += 0.01 {
			ways, ok := tracer.Thrown(meridian(2.5, degrees*math.Pi/180))
			require.True(t, ok)
			by := turned(ways[way].Ray.Dir)
			if way == TwiceInside && by < math.Pi {
				by += 2 * math.Pi
			}
			if by < turn {
				turn, at = by, degrees
			}
		}
		return turn * 180 / math.Pi, at
	}
	turn, at := least(OnceInside)
	require.InDelta(t, 137.92, turn, 0.01)
	require.InDelta(t, 59.41, at, 0.05)
	turn, _ = least(TwiceInside)
	require.InDelta(t, 230.9, turn, 0.1)
}

// No light is lost or made: what goes through, what is thrown on, and what is thrown back inside three times or more,
// a geometric series, are all of it.
func TestThrownAndThroughAreAllOfTheLight(t *testing.T) {
	const seed = 71
	random := rand.New(rand.NewSource(seed))
	s := waterSight(5, 300, 200)
	tracer := s.Tracer()
	most := 0.0
	for range 500 {
		i := math.Pi / 2 * random.Float64()
		ray := meridian(2.5, i)
		ways, ok := tracer.Thrown(ray)
		require.True(t, ok)
		through, ok := tracer.Trace(ray)
		require.True(t, ok)
		r := math.Asin(math.Sin(i) / 1.333)
		across, in := math.Pow(math.Sin(i-r)/math.Sin(i+r), 2), math.Pow(math.Tan(i-r)/math.Tan(i+r), 2)
		rest := ((1-across)*math.Pow(across, 3) + (1-in)*math.Pow(in, 3)) / 2
		most = max(most, rest)
		sum := through.Transmittance + rest
		for _, way := range ways {
			sum += way.Share
		}
		require.InDelta(t, 1, sum, 1e-9, "seed %d", seed)
	}
	t.Logf("thrown back three times and more: at most %.4f", most)
}

// Bodies out of round: the front mirrors so that the normal halves the angle, and what is inside runs from face to face
// by the same laws; as the body gets round the ways become the ball's.
func TestThrownByOtherBodies(t *testing.T) {
	const seed = 72
	random := rand.New(rand.NewSource(seed))
	ball := waterSight(5, 300, 200)
	nearly, flat, rod := ball, ball, ball
	nearly.Drop.HeightOverWidth, flat.Drop.HeightOverWidth, rod.Drop.Body = 1+1e-9, 0.8, UprightRod
	followed := 0
	for range 500 {
		to := Vec{5 * (random.Float64() - 0.5), 5 * (random.Float64() - 0.5), 0}
		ray := Ray{Vec{0, 0, -300}, to.Sub(Vec{0, 0, -300}).Unit()}
		if ball.Drop.ClearanceMM(ray) > -0.01 {
			continue
		}
		followed++
		one, other := ball.Tracer(), nearly.Tracer()
		want, _ := one.Thrown(ray)
		got, ok := other.Thrown(ray)
		require.True(t, ok)
		for k := range want {
			require.InDelta(t, 1, want[k].Ray.Dir.Dot(got[k].Ray.Dir), 1e-9, "seed %d", seed)
			require.InDelta(t, want[k].Share, got[k].Share, 1e-6, "seed %d", seed)
		}
		for _, s := range []Sight{flat, rod} {
			tracer := s.Tracer()
			ways, ok := tracer.Thrown(ray)
			if !ok {
				continue
			}
			p := ways[ByFront].Ray.From
			out := Vec{p.X / math.Pow(s.Drop.RadiusMM(), 2), p.Y / math.Pow(s.Drop.HalfHeightMM(), 2),
				p.Z / math.Pow(s.Drop.RadiusMM(), 2)}
			if s.Drop.Body == UprightRod {
				out.Y = 0
			}
			half := ways[ByFront].Ray.Dir.Sub(ray.Dir).Unit()
			require.InDelta(t, 1, half.Dot(out.Unit()), 1e-9, "seed %d", seed)
			for _, way := range ways {
				require.InDelta(t, 1, way.Ray.Dir.Dot(way.Ray.Dir), 1e-9)
				require.True(t, way.Share >= 0 && way.Share <= 1)
			}
		}
	}
	require.Greater(t, followed, 200)
}
