package seamsight_test

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/seamsight"

	"github.com/stretchr/testify/require"
)

// oblate presses the drop flat.
func oblate(heightOverWidth float64) func(*layout.Setup) {
	return func(s *layout.Setup) { s.Drop.HeightOverWidth = heightOverWidth }
}

// A spheroid that is all but round shows every figure of a seam as the ball does: the ball's come from a
// table by the distance from the axis, the spheroid's from traced slopes each way.
func TestRoundSpheroidAgainstTheBall(t *testing.T) {
	const seed = 17
	random := rand.New(rand.NewSource(seed))
	p, round := plan(t), plan(t, oblate(1+1e-9))
	ball, spheroid := seamsight.New(p, scenic(), seamMM), seamsight.New(round, scenic(), seamMM)
	stops := map[float64][2]*seamsight.Model{}
	for _, stop := range []float64{16, 45} {
		stops[stop] = [2]*seamsight.Model{ball.AtStop(stop), spheroid.AtStop(stop)}
	}
	for range 200 {
		x, y := random.Float64()*p.Backdrop.WidthMM, random.Float64()*p.Backdrop.HeightMM
		axis := []string{"x", "y"}[random.Intn(2)]
		for _, stop := range []float64{16, 45} {
			want, got := stops[stop][0].At(x, y, axis, seamsight.Through), stops[stop][1].At(x, y, axis, seamsight.Through)
			require.InDelta(t, want.Frame.XPx, got.Frame.XPx, 0.01, "seed %d", seed)
			require.InDelta(t, want.Frame.YPx, got.Frame.YPx, 0.01, "seed %d", seed)
			for _, pair := range [][2]float64{{want.WidthPx, got.WidthPx}, {want.PxPerMM, got.PxPerMM},
				{want.AlongPx, got.AlongPx}} {
				require.InEpsilon(t, pair[0], pair[1], 0.001, "seed %d: %g, %g", seed, x, y)
			}
			// Both look from places on the pupil toward the axis and at right angles to that, or across and
			// down: where rays do not land in proportion over a wide pupil that tells on the blur.
			within := map[float64]float64{16: 0.03, 45: 0.003}[stop]
			require.InEpsilon(t, want.BlurPx, got.BlurPx, within, "seed %d: %g, %g at f/%g", seed, x, y, stop)
			require.InEpsilon(t, want.VisiblePx, got.VisiblePx, within, "seed %d: %g, %g at f/%g", seed, x, y, stop)
		}
	}
}

// In a drop out of round the ray through the pixel that a place is said to show at lands on that place, and
// the scales are what neighbouring places show.
func TestThroughASpheroidTheRayLandsThere(t *testing.T) {
	const seed = 23
	random := rand.New(rand.NewSource(seed))
	for _, k := range []float64{0.85, 1.1} {
		p := plan(t, oblate(k))
		m := seamsight.New(p, even(0.3), seamMM)
		for range 200 {
			x, y := p.Backdrop.WidthMM*(0.02+0.96*random.Float64()), p.Backdrop.HeightMM*(0.02+0.96*random.Float64())
			at := m.At(x, y, "x", seamsight.Through)
			require.NotEqual(t, seamsight.OutOfSight, at.Verdict, "seed %d: %g, %g", seed, x, y)
			through := p.Camera.At(at.Frame.XPx, at.Frame.YPx)
			l, ok := p.Sight().Trace(p.Sight().PinholeRay(through.XMM, through.YMM))
			require.True(t, ok && l.Through)
			require.InDelta(t, x, l.XMM+p.Backdrop.WidthMM/2, 1e-6)
			require.InDelta(t, y, l.YMM+p.Backdrop.HeightMM/2, 1e-6)

			const apartMM = 0.05
			step := func(dx, dy float64) (xPx, yPx float64) {
				a, b := m.At(x-dx, y-dy, "x", seamsight.Through).Frame, m.At(x+dx, y+dy, "x", seamsight.Through).Frame
				return (b.XPx - a.XPx) / (2 * apartMM), (b.YPx - a.YPx) / (2 * apartMM)
			}
			acrossX, acrossY := step(apartMM, 0)
			downX, downY := step(0, apartMM)
			area := math.Abs(acrossX*downY - acrossY*downX)
			along := math.Hypot(downX, downY) // of a seam that runs down
			require.InEpsilon(t, along, at.AlongPx, 1e-3, "seed %d: %g, %g", seed, x, y)
			require.InEpsilon(t, area/along, at.PxPerMM, 1e-3, "seed %d: %g, %g", seed, x, y)
			level := m.At(x, y, "y", seamsight.Through)
			require.InEpsilon(t, math.Hypot(acrossX, acrossY), level.AlongPx, 1e-3)
			require.InEpsilon(t, area/math.Hypot(acrossX, acrossY), level.PxPerMM, 1e-3)
		}
	}
}

// What a seam costs is read between knots, and stays near what is traced at the place, on all sides of the axis.
func TestCostThroughASpheroid(t *testing.T) {
	const seed = 29
	random := rand.New(rand.NewSource(seed))
	p := plan(t, oblate(0.85))
	m := seamsight.New(p, even(0.1), seamMM)
	inSight := 0
	for range 1000 {
		x, y := random.Float64()*p.Backdrop.WidthMM, random.Float64()*p.Backdrop.HeightMM
		axis := []string{"x", "y"}[random.Intn(2)]
		want := 0.0
		for _, path := range []seamsight.Path{seamsight.Direct, seamsight.Through} {
			s := m.At(x, y, axis, path)
			want = max(want, s.OverThreshold()*s.AlongPx)
		}
		if want > 0 {
			inSight++
			require.InEpsilon(t, want, m.CostAt(x, y, axis), 0.005, "seed %d: %g, %g", seed, x, y)
		}
	}
	require.Greater(t, inSight, 900)
}

// Beside a drop out of round, what it hides is as wide and as high as its outline.
func TestBesideASpheroid(t *testing.T) {
	p := plan(t, oblate(0.85), func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 60, 64 })
	m := seamsight.New(p, even(0.3), 2)
	cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
	a := 2.5 / math.Cbrt(0.85)
	// on the board; m²(D² - a²) = a², b² for a line that touches
	halfMM := func(mm float64) float64 { return 300 * mm / math.Sqrt(300*300-a*a) * 700 / 300 }
	at := func(x, y float64) float64 { return m.At(cx+x, cy+y, "x", seamsight.Direct).Contrast }
	open := at(halfMM(a)+20, 0)
	require.Greater(t, open, 0.0)
	for _, place := range [][2]float64{{halfMM(a) + 0.01, 0}, {0, halfMM(0.85*a) + 0.01}} {
		require.InEpsilon(t, open, at(place[0], place[1]), 1e-6)
		require.Less(t, at(0.99*place[0], 0.99*place[1]), open)
	}
}

// A print that is bent: the light that a seam is held against is the picture's at the place of the board that
// shows it, and bare paper where nothing is printed, where a seam can't be told from it.
func TestSeamOnABentPrint(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Look = layout.Straight })
	// Light from left to right as drawn. Straight, what is seen at a share of the fill lies at that share of
	// the picture's half-height.
	m := seamsight.New(p, drawn(func(u, _ float64) float64 { return 0.2 + 0.6*u }), seamMM)
	cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
	for _, fill := range []float64{-0.8, -0.4, 0.3, 0.7} {
		reachMM, ok := p.Sight().ReachMM(math.Abs(fill))
		require.True(t, ok)
		s := m.At(cx-math.Copysign(reachMM, fill), cy, "x", seamsight.Through)
		require.InDelta(t, 0.2+0.6*(0.5+fill/0.85/2/1.5), s.Picture, 0.01, "at %g of the radius", fill)
	}
	corner := m.At(5, 5, "x", seamsight.Through)
	require.InDelta(t, 1, corner.Picture, 1e-9)
	require.Zero(t, corner.Contrast)
}

// The outline of a bent print is detail itself. In its middle half of what is about it is picture and half bare
// paper: as far from their mean, to either side, as half of the step between them.
func TestOutlineMasks(t *testing.T) {
	const light, paper, through = 0.1, 1.0, 0.9 // what the drop lets through hardly matters
	p := plan(t, func(s *layout.Setup) { s.Look = layout.Straight })
	m := seamsight.New(p, even(light), seamMM)
	reachMM, ok := p.Sight().ReachMM(0.85)
	require.True(t, ok)
	x, y := p.Backdrop.WidthMM/2-reachMM, p.Backdrop.HeightMM/2
	at := m.At(x, y, "y", seamsight.Through)
	mean := (light + paper) / 2
	require.InDelta(t, mean, at.Picture, 0.01)
	detail := (paper - light) / 2 * through / (mean*through + seamsight.Flare)
	require.InEpsilon(t, seamsight.Threshold(mean*through, detail, at.VisiblePx), at.Threshold, 0.02)
	inside := m.At(x+60, y, "y", seamsight.Through)
	require.Greater(t, at.Threshold, 4*inside.Threshold)
}

// BenchmarkCostThroughASpheroid reads what a seam costs; making the model is timed apart.
func BenchmarkCostThroughASpheroid(b *testing.B) {
	p := plan(b, oblate(0.85))
	picture := scenic()
	b.Run("ready", func(b *testing.B) {
		for b.Loop() {
			seamsight.New(p, picture, seamMM)
		}
	})
	m := seamsight.New(p, picture, seamMM)
	b.Run("cost", func(b *testing.B) {
		i := 0
		for b.Loop() {
			m.CostAt(p.Backdrop.WidthMM*float64(i%317)/317, p.Backdrop.HeightMM*float64(i%1009)/1009, "x")
			i++
		}
	})
}
