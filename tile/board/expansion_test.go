package board

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// Rays that are told what the picture shows thereabouts see what each of them looks up by itself: light and
// shares, all over boards with seams and close to all of their edges, as far as the expansion was asked to hold.
func TestExpansionAgainstEachRay(t *testing.T) {
	const seed = 71
	gradient := slope()
	lamps := []layout.Lamp{{XMM: -300, YMM: 100, ZMM: 500}}
	plain := flatPlan("#102030", flip.ReversesBoth)
	plain.Seams = []layout.Seam{{Axis: "x", AtMM: 80, ToMM: 100}, {Axis: "y", AtMM: 60, ToMM: 200}}
	for _, c := range []struct {
		name        string
		plan        layout.Plan
		leastHeld   int  // of the expansions about places of the picture
		secondOrder bool // asked for
	}{
		{"plain", plain, 150, false},
		{"bent, second order", bentPlan(t, nil), 100, true},
		{"bent, turned, second order", bentPlan(t, func(s *layout.Setup) { s.Framing.TurnDeg = 35 }), 100, true},
		{"bent, levelled, in a background", bentPlan(t, func(s *layout.Setup) {
			s.Background, s.Lamps, s.Level = "#000080", lamps, true
		}), 100, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			random := rand.New(rand.NewSource(seed))
			s := New(c.plan, gradient).WithSeams(0.6)
			held, onSeams := 0, 0
			for range 600 {
				x, y := random.Float64()*c.plan.Backdrop.WidthMM, random.Float64()*c.plan.Backdrop.HeightMM
				reach := Reach{XMM: 0.5 + 2*random.Float64(), YMM: 0.5 + 2*random.Float64(), Ray: Box(0.8, 0.5),
					Pixel: Box(1, 1), FirstOrder: !c.secondOrder}
				near := s.Expand(x, y, reach)
				if !near.OK {
					continue
				}
				held++
				near.Average(reach.Ray)
				require.False(t, near.Holds(x+1.01*reach.XMM, y) || near.Holds(x, y-1.01*reach.YMM), "further than it was tried")
				for range 20 {
					dx, dy := (2*random.Float64()-1)*reach.XMM, (2*random.Float64()-1)*reach.YMM
					require.True(t, near.Holds(x+dx, y+dy))
					got, want := s.AtRay(x+dx, y+dy, reach.Ray, &near), s.AtRay(x+dx, y+dy, reach.Ray, nil)
					for k := range want.Print {
						require.InDelta(t, want.Print[k], got.Print[k], 5e-4, "seed %d: %+v, want %+v", seed, got, want)
					}
					got.Print, want.Print = texture.Light{}, texture.Light{}
					require.InDelta(t, want.Picture, got.Picture, 1e-9, "seed %d: %+v, want %+v", seed, got, want)
					require.InDelta(t, want.Paper, got.Paper, 1e-9)
					if want.Paper > 0 {
						onSeams++
					}
				}
			}
			require.GreaterOrEqual(t, held, c.leastHeld)
			require.Greater(t, onSeams, 20)
		})
	}
}

// The second order is there whole: what is left to the corners of where it was tried is of third order, so
// twice as far it is eight times as much. Off by so many millimetres of board; a second derivative that is
// missed by half comes to 0.016 at 4 mm.
func TestExpansionLeavesTheThirdOrder(t *testing.T) {
	const seed = 72
	s := New(bentPlan(t, func(s *layout.Setup) { s.Framing.TurnDeg = 35 }), slope())
	for _, c := range []struct{ reachMM, worstMM float64 }{{2, 0.0003}, {4, 0.0024}} {
		random := rand.New(rand.NewSource(seed))
		held, worst := 0, 0.0
		for range 2000 {
			x, y := random.Float64()*2*s.CentreMM.XMM, random.Float64()*2*s.CentreMM.YMM
			near := s.Expand(x, y, Reach{XMM: c.reachMM, YMM: c.reachMM, Ray: Box(0.8, 0.5), Pixel: Box(1, 1)})
			if !near.OK {
				continue
			}
			held++
			for _, way := range [][2]float64{{1, 1}, {-1, 1}, {1, -1}, {-1, -1}} {
				dx, dy := way[0]*c.reachMM, way[1]*c.reachMM
				u, v := near.Coordinates(dx, dy)
				at := s.hanging.At(x+dx, y+dy)
				worst = max(worst, math.Hypot(u-at.U, v-at.V)/math.Sqrt(math.Abs(at.UX*at.VY-at.UY*at.VX)))
			}
		}
		require.Greater(t, held, 1000)
		require.Less(t, worst, c.worstMM, "%g mm off, seed %d", c.reachMM, seed)
	}
}
