package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// Fresnel at 60 degrees on glass of 1.5, worked by hand from r = -sin(i-t)/sin(i+t) and tan(i-t)/tan(i+t)
// (Hecht, Optics, 4.6.2) with t = 35.264°: 17.66 % across the plane of incidence, 0.18 % in it, 8.92 % for
// unpolarised light. It is the same from within. Two such faces pass 0.8234² and 0.9982², 83.7 % in the mean; turned
// by a right angle about the ray, 0.8234 times 0.9982 of either.
func TestReflectance(t *testing.T) {
	cosIn, cosOut := 0.5, math.Cos(35.264389682754654*math.Pi/180)
	for _, r := range []polarised{reflectance(cosIn, cosOut, 1/1.5), reflectance(cosOut, cosIn, 1.5)} {
		require.InDelta(t, 0.1766, r.across, 5e-5)
		require.InDelta(t, 0.0018, r.in, 5e-5)
		require.InDelta(t, 0.0892, r.unpolarised(), 5e-5)
		require.InDelta(t, 0.8372, passes(r, r, 1), 1e-4)
		require.InDelta(t, 0.8219, passes(r, r, -1), 1e-4)
	}
}

// fieldThrough is the share of unpolarised light that a ray of direction d, met by a spheroid of semi-axes a, b, a (b
// infinite for an upright rod), carries out of it: the mean of what is left of two fields at right angles, each
// followed as a vector through both faces. It shares nothing with Trace: the body is made a unit ball by scaling, the
// way is turned by angles, and amplitudes are those of Hecht, Optics, 4.6.2: 2 sin t cos i / sin(i+t) across the
// plane, that over cos(i-t) in it.
func fieldThrough(from, d Vec, a, b, n float64) (share float64) {
	cross := func(v, w Vec) Vec { return Vec{v.Y*w.Z - v.Z*w.Y, v.Z*w.X - v.X*w.Z, v.X*w.Y - v.Y*w.X} }
	scaled := func(v Vec) Vec { return Vec{v.X / a, v.Y / b, v.Z / a} }
	// meets is how far along v from p the surface lies, the nearer or the further place.
	meets := func(p, v Vec, further float64) Vec {
		o, w := scaled(p), scaled(v)
		half, square := o.Dot(w)/w.Dot(w), (o.Dot(o)-1)/w.Dot(w)
		return p.Add(v.Scale(-half + further*math.Sqrt(half*half-square)))
	}
	face := func(p, v Vec, fields [2]Vec, from, to float64) (Vec, [2]Vec) {
		s := scaled(p)
		normal := Vec{s.X / a, s.Y / b, s.Z / a}.Unit()
		if normal.Dot(v) > 0 {
			normal = normal.Scale(-1)
		}
		i := math.Acos(-normal.Dot(v))
		out := math.Asin(math.Sin(i) * from / to)
		across := cross(v, normal).Unit()
		inBefore := cross(across, v)
		along := cross(normal, across) // the surface's direction in the plane of incidence
		if along.Dot(v) < 0 {
			along = along.Scale(-1)
		}
		v = along.Scale(math.Sin(out)).Add(normal.Scale(-math.Cos(out)))
		inAfter := cross(across, v)
		power := math.Sqrt(to * math.Cos(out) / (from * math.Cos(i)))
		ts := 2 * math.Sin(out) * math.Cos(i) / math.Sin(i+out) * power
		tp := ts / math.Cos(i-out)
		for k, e := range fields {
			fields[k] = across.Scale(ts * e.Dot(across)).Add(inAfter.Scale(tp * e.Dot(inBefore)))
		}
		return v, fields
	}
	one := cross(d, Vec{0.3, 1, 0.2}).Unit()
	fields := [2]Vec{one, cross(d, one)}
	p := meets(from, d, -1)
	d, fields = face(p, d, fields, 1, n)
	p = meets(p, d, 1)
	_, fields = face(p, d, fields, n, 1)
	return (fields[0].Dot(fields[0]) + fields[1].Dot(fields[1])) / 2
}

// The light that gets through against fields that are followed as vectors: of a ball, which keeps a ray in one plane,
// and of bodies that twist it.
func TestTransmittanceAgainstFields(t *testing.T) {
	const seed = 12
	random := rand.New(rand.NewSource(seed))
	for _, c := range []struct {
		name   string
		body   Body
		height float64
	}{{"ball", Ball, 1}, {"pressed flat", Ball, 0.7}, {"drawn long", Ball, 1.4}, {"rod", UprightRod, 1}} {
		s := waterSight(5, 60, 200)
		s.Drop.Body = c.body
		if c.height != 1 {
			s.Drop.HeightOverWidth = c.height
		}
		a, b := s.Drop.RadiusMM(), s.Drop.HalfHeightMM()
		if c.body == UprightRod {
			b = math.Inf(1)
		}
		through := 0
		for range 2000 {
			to := Vec{4 * (2*random.Float64() - 1), 4 * (2*random.Float64() - 1), 0}
			from := Vec{20 * (2*random.Float64() - 1), 30 * (2*random.Float64() - 1), -60}
			r := Ray{from, to.Sub(from).Unit()}
			l, ok := s.Trace(r)
			if !ok || !l.Through {
				continue
			}
			through++
			require.InDelta(t, fieldThrough(r.From, r.Dir, a, b, s.Drop.Index), l.Transmittance, 1e-9, "seed %d, %s", seed,
				c.name)
		}
		require.Greater(t, through, 300, c.name)
	}
}
