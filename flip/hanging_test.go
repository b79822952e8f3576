package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// hangingSight is a drop of water that hangs, 400 mm before a board.
func hangingSight(t *testing.T, widthMM, heldMM, cameraMM float64) Sight {
	t.Helper()
	d := Drop{Body: Hanging, DiameterMM: widthMM, HeldMM: heldMM, CapillaryMM: waterCapillaryMM(t), Index: 1.333}
	require.NoError(t, d.CheckHanging())
	return Sight{Drop: d, CameraMM: cameraMM, DistanceMM: 400}
}

// Rays from all over a pupil meet the surface to 1e-9 of the radius, first where a march in small steps finds it, and
// leave it likewise; Snell's law holds at both, in vectors.
func TestHangingRaysMeetTheSurface(t *testing.T) {
	const seed = 7
	random := rand.New(rand.NewSource(seed))
	for _, c := range [][2]float64{{2.94, 2}, {3.55, 2}, {2.4, 0.6}} {
		s := hangingSight(t, c[0], c[1], 60)
		tracer, p := s.Tracer(), s.Drop.pendant()
		radius := s.Drop.RadiusMM()
		hits := 0
		for range 300 {
			from := Vec{8 * (2*random.Float64() - 1), 8 * (2*random.Float64() - 1), -60}
			to := Vec{radius * (2*random.Float64() - 1), p.equatorMM - p.topMM*random.Float64(), 0}
			r := Ray{from, to.Sub(from).Unit()}
			f, what := tracer.frontHanging(r)
			inside := func(t float64) bool { return p.alongRay(from, r.Dir, t).f < 0 }
			first := 60 - 2*radius
			for step := 0.001; first < 62 && !inside(first); first += step {
			}
			require.Equal(t, first < 62, what != meetsNothing, "seed %d: %+v", seed, r)
			if what != meetsDrop {
				continue
			}
			hits++
			require.InDelta(t, first, f.at.Sub(from).Dot(r.Dir), 0.0011)
			on := func(at Vec) float64 {
				q, _, _ := p.at(p.equatorMM - at.Y)
				return math.Hypot(at.X, at.Z) - math.Sqrt(q)
			}
			require.InDelta(t, 0, on(f.at), 1e-9*radius)
			d := r.Dir.Scale(tracer.eta).Add(f.normal.Scale(tracer.eta*f.cosIn - f.cosInside))
			require.InDelta(t, 1, d.Dot(d), 1e-12)
			require.InDelta(t, 0, cross(r.Dir, f.normal).Sub(cross(d, f.normal).Scale(1.333)).Dot(Vec{1, 1, 1}), 1e-12)
			at, normal, cosInside, ok := tracer.acrossHanging(f.at, d)
			if !ok {
				continue // up to the holder
			}
			require.InDelta(t, 0, on(at), 1e-9*radius)
			require.Greater(t, at.Sub(f.at).Dot(d), 0.0)
			middle := f.at.Add(at).Scale(0.5)
			require.Less(t, on(middle), 0.0, "inside between")
			require.InDelta(t, d.Dot(normal), cosInside, 1e-12)
		}
		require.Greater(t, hits, 150)
	}
}

func cross(a, b Vec) Vec { return Vec{a.Y*b.Z - a.Z*b.Y, a.Z*b.X - a.X*b.Z, a.X*b.Y - a.Y*b.X} }

// Without gravity a drop that hangs is a ball: what goes through it low enough comes out as through that.
func TestHangingWithoutGravityIsABall(t *testing.T) {
	s := Sight{Drop{Body: Hanging, DiameterMM: 4, HeldMM: 1, CapillaryMM: 1e6, Index: 1.333}, 300, 400}
	ball := Sight{Drop{DiameterMM: 4, Index: 1.333}, 300, 400}
	tracer, through := s.Tracer(), 0
	for x := -1.9; x < 2; x += 0.19 {
		for y := -1.3; y < 2; y += 0.17 {
			r := ball.PinholeRay(x, y)
			want, wantOK := ball.Trace(r)
			got, ok := tracer.Trace(r)
			require.Equal(t, wantOK, ok)
			require.Equal(t, want.Through, got.Through)
			require.InDelta(t, want.XMM, got.XMM, 2e-4)
			require.InDelta(t, want.YMM, got.YMM, 2e-4)
			require.InDelta(t, want.Transmittance, got.Transmittance, 1e-6)
			if got.Through {
				through++
				wantWays, _ := ball.thrownAll(r)
				ways, _ := s.thrownAll(r)
				for k := range ways {
					if k > ByFront && ways[k].Share == 0 {
						continue // up to the holder
					}
					require.InDelta(t, wantWays[k].Share, ways[k].Share, 1e-5)
				}
			}
			require.InDelta(t, ball.Drop.ClearanceMM(r), s.Drop.ClearanceMM(r), 1e-4)
		}
	}
	require.Greater(t, through, 150)
}

func (s Sight) thrownAll(r Ray) ([ThrownWays]Thrown, bool) { t := s.Tracer(); return t.Thrown(r) }

// In the level plane through its equator a drop that hangs is a circle, for which there is a closed form.
func TestHangingInTheLevelPlane(t *testing.T) {
	s := hangingSight(t, 3.5, 2, 300)
	for _, fill := range []float64{0.1, 0.5, 0.85, 0.95} {
		want, ok := s.ReachMM(fill)
		require.True(t, ok)
		l, ok := s.Trace(s.PinholeRay(fill*s.ApparentRadiusMM(), 0))
		require.True(t, ok)
		require.InEpsilon(t, want, -l.XMM, 1e-6)
		require.InDelta(t, 0, l.YMM, 1e-6)
	}
}

// Light goes back the way it came: a ray that left is turned round before the board and lands where it started.
func TestHangingRaysGoBack(t *testing.T) {
	s := hangingSight(t, 3.4, 2, 300)
	there, back := s.Tracer(), Sight{s.Drop, 400, 300}
	backward := back.Tracer()
	for x := -1.4; x < 1.5; x += 0.2 {
		for y := -1.3; y < 1.6; y += 0.2 {
			r := s.PinholeRay(x, y)
			f, what := there.frontHanging(r)
			l, ok := there.Trace(r)
			if what != meetsDrop || !ok {
				continue
			}
			d := r.Dir.Scale(there.eta).Add(f.normal.Scale(there.eta*f.cosIn - f.cosInside))
			leaves, _, _, _ := there.acrossHanging(f.at, d)
			on := Vec{l.XMM, l.YMM, 400}
			way := leaves.Sub(on).Unit()
			// mirrored in z, so that it runs toward z again
			got, ok := backward.Trace(Ray{Vec{on.X, on.Y, -400}, Vec{way.X, way.Y, -way.Z}})
			require.True(t, ok)
			require.True(t, got.Through)
			require.InDelta(t, 0, math.Hypot(got.XMM, got.YMM), 1e-4, "%g, %g", x, y)
		}
	}
}

// What passes above the held circle within its width meets the holder and goes no further; beside it and below the drop
// the board is seen.
func TestHolderStopsLight(t *testing.T) {
	s := hangingSight(t, 2.94, 2, 300)
	above := s.Drop.AboveMM()
	for _, c := range []struct {
		x, y       float64
		ok, passes bool
	}{
		{0, -above - 0.2, false, false},
		{0.9, -above - 3, false, false},
		{1.1, -above - 0.2, true, true},
		{0, s.Drop.BelowMM() + 0.05, true, true},
		{0, s.Drop.BelowMM() - 0.05, true, false},
		{0, 0, true, false},
	} {
		l, ok := s.Trace(s.PinholeRay(c.x, c.y))
		require.Equal(t, c.ok, ok, "%+v", c)
		require.Equal(t, c.passes, ok && !l.Through, "%+v", c)
		require.Equal(t, !c.passes, s.Drop.ClearanceMM(s.PinholeRay(c.x, c.y)) < 0, "%+v", c)
	}
}

// From the drop's plane to the board and back, as far as the drop's round goes.
func TestSeenThroughAHangingDrop(t *testing.T) {
	for _, c := range [][2]float64{{2.94, 2}, {3.5, 2}, {3.6, 2}, {2.4, 0.6}} {
		s := hangingSight(t, c[0], c[1], 300)
		halfWidthMM, halfHeightMM := s.OutlineMM()
		for share := 0.0; share < 0.97; share += 0.08 {
			for way := 0.1; way < 2*math.Pi; way += 0.4 {
				x, y := share*math.Cos(way)*halfWidthMM, share*math.Sin(way)*halfHeightMM
				l, ok := s.Trace(s.PinholeRay(x, y))
				require.True(t, ok && l.Through, "%v at %g, %g", c, x, y)
				backX, backY, ok := s.SeenThrough(l.XMM, l.YMM)
				require.True(t, ok, "%v at %g, %g", c, x, y)
				require.InDelta(t, 0, math.Hypot(backX-x, backY-y), 1e-8, "%v at %g, %g", c, x, y)
			}
		}
	}
}

func BenchmarkTraceHanging(b *testing.B) {
	d := Drop{Body: Hanging, DiameterMM: 3.5, HeldMM: 2, CapillaryMM: 2.7, Index: 1.333}
	s := Sight{d, 300, 400}
	tracer := s.Tracer()
	random := rand.New(rand.NewSource(1))
	var rays [64]Ray
	for k := range rays {
		rays[k] = s.PinholeRay(1.2*(2*random.Float64()-1), 1.2*(2*random.Float64()-1))
	}
	b.ResetTimer()
	for k := 0; b.Loop(); k++ {
		tracer.Trace(rays[k%len(rays)])
	}
}
