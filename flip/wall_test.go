package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// tube is a tube of water with a wall of crown glass.
func tube(body Body) Drop {
	return Drop{Body: body, DiameterMM: 20, Index: 1.333, WallMM: 2, WallIndex: 1.5168}
}

// steppedThrough follows a ray through an upright tube by means of its own: faces found by bisection along the ray, and
// refraction by the part along the surface, which grows by the ratio of the indices. It shares nothing with Trace.
func steppedThrough(d Drop, from, dir Vec, distanceMM float64) (x, y float64) {
	outer, inner := d.DiameterMM/2, d.DiameterMM/2-d.WallMM
	index := func(r float64) float64 {
		switch {
		case r > outer:
			return 1
		case r > inner:
			return d.WallIndex
		}
		return d.Index
	}
	away := func(v Vec) float64 { return math.Hypot(v.X, v.Z) }
	at, now := from, 1.0
	for at.Z < distanceMM {
		step := 0.005
		if away(at) > outer+1 {
			step = 0.5
		}
		next := at.Add(dir.Scale(step))
		if is := index(away(next)); is != now {
			low, high := 0.0, step
			for range 60 {
				if middle := (low + high) / 2; index(away(at.Add(dir.Scale(middle)))) == now {
					low = middle
				} else {
					high = middle
				}
			}
			next = at.Add(dir.Scale(high))
			normal := Vec{next.X, 0, next.Z}.Unit()
			if normal.Dot(dir) < 0 {
				normal = normal.Scale(-1)
			}
			along := dir.Sub(normal.Scale(dir.Dot(normal))).Scale(now / is)
			dir = along.Add(normal.Scale(math.Sqrt(1 - along.Dot(along))))
			now = is
		}
		at = next
	}
	at = at.Add(dir.Scale((distanceMM - at.Z) / dir.Z))
	return at.X, at.Y
}

// Rays through a tube, slanting along it too, land where stepping along them has them land.
func TestTubeAgainstSteps(t *testing.T) {
	s := Sight{Drop: tube(UprightRod), CameraMM: 300, DistanceMM: 200}
	random := rand.New(rand.NewSource(1))
	for range 40 {
		share, down := 1.9*random.Float64()-0.95, 60*random.Float64()-30
		r := s.PinholeRay(share*s.ApparentRadiusMM(), down)
		x, y := steppedThrough(s.Drop, r.From, r.Dir, s.DistanceMM)
		l, ok := s.Trace(r)
		require.True(t, ok && l.Through)
		require.InDelta(t, x, l.XMM, 1e-6, "share %g, down %g", share, down)
		require.InDelta(t, y, l.YMM, 1e-6)
	}
}

// Near the axis a tube is four refracting surfaces and the ways between them: matrices of rays (Hecht, Optics, 6.2.1,
// from memory), with the slope taken times the index. What they make of a ray from the pupil lands where the tracer
// has it.
func TestTubeNearTheAxis(t *testing.T) {
	d := tube(LevelRod)
	s := Sight{Drop: d, CameraMM: 300, DistanceMM: 200}
	const slope = 1e-5
	height, optical := slope*(300-10), slope
	way := func(mm, index float64) { height += mm * optical / index }
	face := func(before, behind, radius float64) { optical -= (behind - before) / radius * height }
	face(1, 1.5168, 10)
	way(2, 1.5168)
	face(1.5168, 1.333, 8)
	way(16, 1.333)
	face(1.333, 1.5168, -8)
	way(2, 1.5168)
	face(1.5168, 1, -10)
	way(200-10, 1)
	l, ok := s.Trace(s.PinholeRay(0, slope*300))
	require.True(t, ok)
	require.InDelta(t, height, l.YMM, 1e-6*math.Abs(height))
	heightMM, ok := s.HeightMM(slope * 300 / s.ApparentRadiusMM())
	require.True(t, ok)
	require.InDelta(t, height, heightMM, 1e-6*math.Abs(height))

	// Light that comes along the axis crosses it at the focal length from the tube's middle.
	far := Sight{Drop: d, CameraMM: 1e7, DistanceMM: 1e4}
	l, ok = far.Trace(far.PinholeRay(0, 1e-3))
	require.True(t, ok)
	crosses := 1e4 / (1 - l.YMM/1e-3) // from the plane through the middle, where the height is 1e-3, on a straight line
	require.InDelta(t, crosses, d.FocalLengthMM(), 0.01)
	without := d
	without.WallMM = 0
	require.InDelta(t, 20*1.333/4/0.333, without.FocalLengthMM(), 1e-9)
	// By hand, 1/f = 2 ((1 - 1/1.5168)/10 + (1/1.5168 - 1/1.333)/8): longer by a tenth.
	require.InDelta(t, 22.018, d.FocalLengthMM(), 0.001)
}

// A wall of the liquid's own index is none, to the last ray and all its light; and so, nearly, is one without
// thickness.
func TestWallOfTheSameIndex(t *testing.T) {
	for _, body := range []Body{UprightRod, LevelRod} {
		solid := Sight{Drop: Drop{Body: body, DiameterMM: 20, Index: 1.333}, CameraMM: 300, DistanceMM: 200}
		same, thin := solid, solid
		same.Drop.WallMM, same.Drop.WallIndex = 2, 1.333
		thin.Drop.WallMM, thin.Drop.WallIndex = 1e-7, 1.5168
		require.InDelta(t, solid.Drop.FocalLengthMM(), same.Drop.FocalLengthMM(), 1e-9)
		for _, share := range []float64{0, 0.3, 0.7, 0.9} {
			ray := solid.PinholeRay(share*10, share*9)
			want, ok := solid.Trace(ray)
			require.True(t, ok)
			got, ok := same.Trace(ray)
			require.True(t, ok)
			require.InDelta(t, want.XMM, got.XMM, 1e-8)
			require.InDelta(t, want.YMM, got.YMM, 1e-8)
			// Faces that throw nothing back still turn the axes that light is told against, and Stokes's U is left out.
			require.InDelta(t, want.Transmittance, got.Transmittance, 1e-4)
			got, ok = thin.Trace(ray)
			require.True(t, ok)
			require.InDelta(t, want.XMM, got.XMM, 1e-4)
			was, _ := solid.thrown(ray)
			is, _ := same.thrown(ray)
			for way := range was {
				require.InDelta(t, was[way].Share, is[way].Share, 1e-4)
				if was[way].Share > 0 {
					require.InDelta(t, 1, was[way].Ray.Dir.Dot(is[way].Ray.Dir), 1e-12)
				}
			}
		}
	}
}

func (s Sight) thrown(r Ray) ([ThrownWays]Thrown, bool) {
	t := s.Tracer()
	return t.Thrown(r)
}

// What a tube sees of the backdrop is found again, which straight pictures go by: through the place that is found the
// ray lands where it was asked for.
func TestTubeSeesThrough(t *testing.T) {
	for _, body := range []Body{UprightRod, LevelRod} {
		s := Sight{Drop: tube(body), CameraMM: 300, DistanceMM: 200}
		require.NotEqual(t, ReversesNone, s.Reverses())
		for _, place := range [][2]float64{{0, 0}, {60, 20}, {-95, 70}, {30, -90}} {
			x, y, ok := s.SeenThrough(place[0], place[1])
			require.True(t, ok, place)
			l, ok := s.Trace(s.PinholeRay(x, y))
			require.True(t, ok && l.Through)
			require.InDelta(t, place[0], l.XMM, 1e-8)
			require.InDelta(t, place[1], l.YMM, 1e-8)
		}
	}
}

// Straight on, four faces let through what Fresnel's formula for straight incidence says, 1 - ((n - m)/(n + m))² each.
func TestTubeLetsThrough(t *testing.T) {
	s := Sight{Drop: tube(UprightRod), CameraMM: 300, DistanceMM: 200}
	l, ok := s.Trace(s.PinholeRay(0, 0))
	require.True(t, ok)
	air, inside := 1-math.Pow(0.5168/2.5168, 2), 1-math.Pow((1.5168-1.333)/(1.5168+1.333), 2)
	require.InDelta(t, air*air*inside*inside, l.Transmittance, 1e-12)
}

// A wall may be as thick as lets a ray that grazes the tube still meet the liquid; a ball has none.
func TestWallThatCantBe(t *testing.T) {
	d := tube(UprightRod)
	d.WallMM = d.MostWallMM()
	require.NoError(t, d.CheckWall())
	require.InDelta(t, 10*(1-1/1.333), d.WallMM, 1e-12)
	s := Sight{Drop: d, CameraMM: 300, DistanceMM: 200}
	l, ok := s.Trace(s.PinholeRay(0.999999*s.ApparentRadiusMM(), 0))
	require.True(t, ok && l.Through, "at the rim")
	d.WallMM += 0.01
	require.ErrorContains(t, d.CheckWall(), "past 2.498mm light at its rim")
	ball := tube(Ball)
	require.ErrorContains(t, ball.CheckWall(), "a ball has no wall")
	d = tube(LevelRod)
	d.WallIndex = 1
	require.ErrorContains(t, d.CheckWall(), "index 1 can't be\nhint: take one above 1")
}
