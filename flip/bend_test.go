package flip

import (
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

// Forward and inverse maps undo each other, for every body and share.
func TestBendUndone(t *testing.T) {
	const seed = 41
	r := rand.New(rand.NewSource(seed))
	worst, tried := 0.0, 0
	for i := range 20_000 {
		s := randomSight(r)
		if s.Reverses() == ReversesNone {
			continue
		}
		const fill = 0.85
		reachMM, ok := s.ReachMM(fill)
		if !ok {
			continue
		}
		b := Bend{Sight: s, Straight: float64(r.Intn(5)) / 4, FlatPerDrop: reachMM / (fill * s.ApparentRadiusMM())}
		sin, cos := math.Sincos(2 * math.Pi * r.Float64())
		x, y := reachMM*math.Sqrt(r.Float64())*cos, reachMM*math.Sqrt(r.Float64())*sin
		boardX, boardY, ok := b.Board(x, y)
		if !ok {
			continue
		}
		tried++
		backX, backY, ok := b.Flat(boardX, boardY)
		require.True(t, ok, "seed %d, case %d: %+v", seed, i, b)
		worst = max(worst, math.Hypot(backX-x, backY-y)/reachMM)
		require.InDelta(t, 0, math.Hypot(backX-x, backY-y), 1e-9*reachMM, "seed %d, case %d: %+v at %g, %g", seed, i, b, x, y)
	}
	require.Greater(t, tried, 10_000)
	t.Logf("worst %.2g of the reach", worst)
}

// A straight print of a ball by the closed form alone: a place at reach(u) shows what lies u / fill of the
// way to the fill.
func TestBendOfABallIsTheClosedForm(t *testing.T) {
	s := waterSight(5, 300, 200)
	const fill = 0.9
	reachMM, _ := s.ReachMM(fill)
	b := Bend{Sight: s, Straight: 1, FlatPerDrop: reachMM / (fill * s.ApparentRadiusMM())}
	for _, u := range []float64{0, 0.1, 0.5, 0.85, 0.9, 0.97} {
		atMM, _ := s.ReachMM(u)
		x, y, ok := b.Flat(-0.6*atMM, 0.8*atMM)
		require.True(t, ok)
		require.InDelta(t, -0.6*u/fill*reachMM, x, 1e-7)
		require.InDelta(t, 0.8*u/fill*reachMM, y, 1e-7)
	}
	// Half-way to straight lies half-way.
	half := b
	half.Straight = 0.5
	x, _, _ := b.Flat(100, 0)
	mixed, _, _ := half.Flat(100, 0)
	require.InDelta(t, (100+x)/2, mixed, 1e-9)
	flat := b
	flat.Straight = 0
	x, y, ok := flat.Flat(12, -34)
	require.True(t, ok)
	require.Equal(t, [2]float64{12, -34}, [2]float64{x, y})
}

// Along an upright rod the near-axis factor is that of a slab as thick as the rod: (D + L - 2R (1 - 1/n)) /
// D, the shift of a plane-parallel plate (Hecht, Optics, 4.4, exercise; recalled from memory).
func TestBendAlongARod(t *testing.T) {
	s := Sight{Drop: Drop{Body: UprightRod, DiameterMM: 8, Index: 1.333}, CameraMM: 300, DistanceMM: 200}
	b := Bend{Sight: s, Straight: 1, FlatPerDrop: 20}
	_, boardY, ok := b.Board(0, 20*1e-3)
	require.True(t, ok)
	require.InEpsilon(t, (300+200-8*(1-1/1.333))/300*1e-3, boardY, 1e-6)
	boardX, _, ok := b.Board(20, 0)
	require.True(t, ok)
	require.Positive(t, boardX, "the picture hangs turned: what lies right of the axis on the print lies right of it "+
		"in the flat picture")
}

// A spheroid of ratio 1 is the ball.
func TestSpheroidOfRatioOneIsTheBall(t *testing.T) {
	ball, round := waterSight(5, 300, 200), waterSight(5, 300, 200)
	round.Drop.HeightOverWidth = 1 + 1e-15 // goes the spheroid's way
	require.True(t, round.Drop.Oblate())
	for _, at := range [][2]float64{{0, 0}, {1, 0.5}, {-2, 1.2}, {0, -2.4}} {
		want, ok := ball.Trace(ball.PinholeRay(at[0], at[1]))
		require.True(t, ok)
		got, ok := round.Trace(round.PinholeRay(at[0], at[1]))
		require.True(t, ok)
		require.InDelta(t, want.XMM, got.XMM, 1e-9)
		require.InDelta(t, want.YMM, got.YMM, 1e-9)
		require.InDelta(t, want.Transmittance, got.Transmittance, 1e-12)
	}
	wantMM, _ := ball.ReachMM(0.85)
	gotMM, ok := round.ReachDownMM(0.85)
	require.True(t, ok)
	require.InDelta(t, wantMM, gotMM, 1e-9)
	wantMM, _ = ball.NearestInvertingMM()
	gotMM, _ = round.NearestInvertingMM()
	require.InDelta(t, wantMM, gotMM, 1e-9)
	ray := Ray{Vec{1, 3, -300}, Vec{0.001, 0, 1}.Unit()}
	require.InDelta(t, ball.Drop.ClearanceMM(ray), round.Drop.ClearanceMM(ray), 1e-12)
}

func TestSpheroid(t *testing.T) {
	for _, c := range []struct {
		name  string
		ratio float64
	}{{"pressed flat", 0.8}, {"drawn long", 1.2}} {
		t.Run(c.name, func(t *testing.T) {
			s := waterSight(5, 300, 200)
			s.Drop.HeightOverWidth = c.ratio
			a, b := s.Drop.RadiusMM(), s.Drop.HalfHeightMM()
			require.InEpsilon(t, 2.5*2.5*2.5, a*a*b, 1e-12, "the volume stays")
			require.InEpsilon(t, c.ratio, b/a, 1e-12)

			// The outline parts rays that meet the drop from rays that don't.
			halfWidthMM, halfHeightMM := s.OutlineMM()
			for _, azimuth := range []float64{0, 0.4, 1, math.Pi / 2, 2.5} {
				sin, cos := math.Sincos(azimuth)
				for _, share := range []float64{0.999999, 1.000001} {
					ray := s.PinholeRay(share*cos*halfWidthMM, share*sin*halfHeightMM)
					l, ok := s.Trace(ray)
					require.Equal(t, share < 1, l.Through || !ok, "a long drop looks backwards at its very rim")
					require.Equal(t, share < 1, s.Drop.ClearanceMM(ray) < 0)
				}
			}
			// In the level plane it is a ball of its width: the closed form holds.
			ball := waterSight(2*a, 300, 200)
			want, _ := ball.ReachMM(0.7)
			got, ok := s.ReachMM(0.7)
			require.True(t, ok)
			require.InDelta(t, want, got, 1e-9)
			l, _ := s.Trace(s.PinholeRay(0.7*halfWidthMM, 0))
			require.InDelta(t, -want, l.XMM, 1e-7)

			// Near the axis the upright plane is a thick lens of the ellipse's own curvature: where a near-axis
			// ray crosses the axis again.
			nearest, ok := s.nearestInverting(b * b / a)
			require.True(t, ok)
			at := s
			at.DistanceMM = nearest
			l, ok = at.Trace(at.PinholeRay(0, 1e-4))
			require.True(t, ok)
			require.InDelta(t, 0, l.YMM, 1e-7)
		})
	}
}

// A long drop bends less in its upright plane than in its level one, so there are distances from which it turns the
// backdrop over across and not down. There is no reach down then.
func TestReachDownIsOfABackdropTurnedOver(t *testing.T) {
	s := waterSight(5, 300, 200)
	s.Drop.HeightOverWidth = 1.2
	levelMM, ok := s.nearestInverting(s.Drop.RadiusMM())
	require.True(t, ok)
	bothMM, ok := s.NearestInvertingMM()
	require.True(t, ok)
	require.Greater(t, bothMM, levelMM+1)
	s.DistanceMM = (levelMM + bothMM) / 2
	_, ok = s.ReachMM(0.05)
	require.True(t, ok)
	_, ok = s.ReachDownMM(0.05)
	require.False(t, ok)
	s.DistanceMM = bothMM + 1
	_, ok = s.ReachDownMM(0.05)
	require.True(t, ok)
}

// Light goes back the way it came, and as much of it comes through (Stokes; Hecht, Optics, 4.10, recalled
// from memory): each way meets first the face that the other meets last. Of a drop out of round the two throw
// back different shares.
func TestTransmittanceIsTheSameBothWays(t *testing.T) {
	for _, ratio := range []float64{0.8, 1.2} {
		s := waterSight(5, 300, 200)
		s.Drop.HeightOverWidth = ratio
		_, halfHeightMM := s.OutlineMM()
		for _, share := range []float64{0.4, 0.6, 0.8} {
			there := s.PinholeRay(0.3, share*halfHeightMM)
			far := s
			far.DistanceMM = 210
			a, okA := s.Trace(there)
			b, okB := far.Trace(there)
			require.True(t, okA && okB && a.Through)
			// Backwards, seen from behind the board: the drop looks alike from there.
			from := Vec{b.XMM, b.YMM, -far.DistanceMM}
			back := Ray{from, Vec{a.XMM, a.YMM, -s.DistanceMM}.Sub(from).Unit()}
			c, ok := Sight{Drop: s.Drop, CameraMM: 210, DistanceMM: s.CameraMM}.Trace(back)
			require.True(t, ok && c.Through)
			require.InDelta(t, 0, math.Hypot(c.XMM, c.YMM), 1e-9, "it comes out at the pupil")
			require.InEpsilon(t, a.Transmittance, c.Transmittance, 1e-12, "%g at %g", ratio, share)
		}
	}
}
