package seammap

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/ink"

	"github.com/stretchr/testify/require"
)

// square is where these tests put the drop.
var square = arrange(layout.Rect{WidthMM: 3, HeightMM: 2}, func(float64) float64 { return 0 }).drop

// Every point of a bent seam must show the seam: the ray through it, traced, must land on the seam's line and
// between its ends, within a hundredth of a pixel of the map.
func TestBentSeamsLandOnTheSeams(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
	}{
		{"ball", nil},
		{"ball, four times as wide as high", func(s *layout.Setup) { s.Proportions = 4 }},
		{"ball of glass", func(s *layout.Setup) { s.Drop.Index, s.Fill = 1.5168, 0.7 }},
		{"upright rod", rod(flip.UprightRod)},
		{"level rod", rod(flip.LevelRod)},
		{"drop pressed flat", func(s *layout.Setup) { s.Drop.HeightOverWidth, s.DistanceMM = 0.85, 500 }},
		{"drop drawn long", func(s *layout.Setup) { s.Drop.HeightOverWidth = 1.2 }},
		{"straight, corner cells bare", func(s *layout.Setup) {
			s.Look, s.Proportions, s.DistanceMM = layout.Straight, 1,
				900
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change)
			v := newDropView(p, square)
			sight, board := p.Sight(), p.Backdrop.Board()
			trace := func(at ink.Point) (layout.Point, bool) {
				xMM := (at.X - float64(square.Min.X+square.Max.X)/2) / v.pxPerMM
				yMM := (at.Y - float64(square.Min.Y+square.Max.Y)/2) / v.pxPerMM
				l, ok := sight.Trace(sight.PinholeRay(xMM, yMM))
				return layout.Point{XMM: l.XMM + board.WidthMM/2, YMM: l.YMM + board.HeightMM/2}, ok && l.Through
			}
			points := 0
			for _, s := range p.Seams {
				held := func(p layout.Point) (held, along float64) {
					if s.Axis == "x" {
						return p.XMM, p.YMM
					}
					return p.YMM, p.XMM
				}
				for _, at := range v.line(s.Axis, s.AtMM, s.FromMM, s.ToMM) {
					points++
					here, ok := trace(at)
					require.True(t, ok, "%v: no landing at %v", s, at)
					// What a hundredth of a pixel inward, where the drop changes least, does to the landing bounds the error.
					m := v.middle()
					near, ok := trace(ink.Point{X: at.X + 0.01*sign(m.X-at.X), Y: at.Y + 0.01*sign(m.Y-at.Y)})
					require.True(t, ok)
					toleranceMM := math.Hypot(near.XMM-here.XMM, near.YMM-here.YMM)
					heldMM, alongMM := held(here)
					require.InDelta(t, s.AtMM, heldMM, toleranceMM, "%v at %v", s, at)
					require.GreaterOrEqual(t, alongMM, s.FromMM-toleranceMM, "%v at %v", s, at)
					require.LessOrEqual(t, alongMM, s.ToMM+toleranceMM, "%v at %v", s, at)
				}
			}
			require.Greater(t, points, 400, "the seams show")
		})
	}
}

func sign(v float64) float64 { return math.Copysign(1, v) }

// A ball's bend has a closed form: a board point that far from the axis shows at the fill whose reach that
// is, straight across the axis (flip.Sight.FillAt). Points of every seam, taken at random, must lie on the
// bent seam.
func TestBentSeamsAgainstTheClosedForm(t *testing.T) {
	const seed = 31
	random := rand.New(rand.NewSource(seed))
	for _, proportions := range []float64{0.25, 1.5, 4} {
		p := plan(t, func(s *layout.Setup) { s.Proportions = proportions })
		v := newDropView(p, square)
		for _, s := range p.Seams {
			path := v.line(s.Axis, s.AtMM, s.FromMM, s.ToMM)
			for range 20 {
				along := s.FromMM + random.Float64()*(s.ToMM-s.FromMM)
				on := layout.Point{XMM: s.AtMM, YMM: along}
				if s.Axis == "y" {
					on = layout.Point{XMM: along, YMM: s.AtMM}
				}
				want := closedForm(t, p, v, on)
				require.Less(t, distance(path, want), 0.05, "seed %d, proportions %g: %v of %v", seed, proportions, on, s)
				got, ok := v.spot(on)
				require.True(t, ok)
				require.Less(t, ink.Path{got, want}.Length(), 0.01, "seed %d: spot of %v", seed, on)
			}
		}
	}
}

// closedForm is where a ball shows a point of the board.
func closedForm(t *testing.T, p layout.Plan, v *dropView, on layout.Point) ink.Point {
	x, y := on.XMM-p.Backdrop.WidthMM/2, on.YMM-p.Backdrop.HeightMM/2
	fill, ok := p.Sight().FillAt(math.Hypot(x, y))
	require.True(t, ok)
	r := fill * v.radiusPx / math.Hypot(x, y)
	m := v.middle()
	return ink.Point{X: m.X - r*x, Y: m.Y - r*y}
}

// distance is how far a point lies from a path.
func distance(path ink.Path, p ink.Point) float64 {
	least := math.Inf(1)
	for i := 1; i < len(path); i++ {
		a, b := path[i-1], path[i]
		dx, dy := b.X-a.X, b.Y-a.Y
		share := max(0, min(((p.X-a.X)*dx+(p.Y-a.Y)*dy)/(dx*dx+dy*dy), 1))
		least = min(least, math.Hypot(a.X+share*dx-p.X, a.Y+share*dy-p.Y))
	}
	return least
}

// A line that the drop does not show, or shows in part, gives what there is and no more.
func TestLinesOutOfSight(t *testing.T) {
	p := plan(t, nil)
	v := newDropView(p, square)
	rimMM, ok := p.Sight().ReachMM(1)
	require.True(t, ok)
	require.Empty(t, v.line("x", p.Backdrop.WidthMM/2+2*rimMM, 0, 100), "a line that the rim does not reach")
	_, ok = v.spot(layout.Point{XMM: 2 * rimMM, YMM: 2 * rimMM})
	require.False(t, ok)

	part := v.line("x", p.Backdrop.WidthMM/2+1, -3*rimMM, p.Backdrop.HeightMM/2)
	require.NotEmpty(t, part, "a line that runs from the middle out past the rim")
	for _, at := range part {
		require.LessOrEqual(t, math.Hypot(at.X-v.middle().X, at.Y-v.middle().Y), v.radiusPx)
	}

	upright := newDropView(plan(t, rod(flip.UprightRod)), square)
	side := upright.line("x", 200, 0, upright.downward.board.HeightMM)
	require.InDelta(t, float64(square.Min.Y), side[0].Y, 1, "a rod shows the line from one end of the strip")
	require.InDelta(t, float64(square.Max.Y), side[len(side)-1].Y, 1, "to the other")
}
