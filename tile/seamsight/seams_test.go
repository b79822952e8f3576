package seamsight_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/seamsight"

	"github.com/stretchr/testify/require"
)

// Every seam is looked at all along, without gaps, finely near the axis.
func TestSeamsAreCoveredWhole(t *testing.T) {
	p := plan(t)
	seams := seamsight.New(p, scenic(), seamMM).Seams()
	require.Len(t, seams, len(p.Seams))
	for i, s := range seams {
		require.Equal(t, p.Seams[i], s.Seam)
		at := s.FromMM
		for _, sample := range s.Samples {
			require.Equal(t, at, sample.FromMM)
			require.Greater(t, sample.ToMM, sample.FromMM)
			require.LessOrEqual(t, sample.ToMM-sample.FromMM, 4.3)
			at = sample.ToMM
		}
		require.Equal(t, s.ToMM, at)
		for _, path := range []seamsight.Path{seamsight.Direct, seamsight.Through} {
			sum := 0.0
			for v := seamsight.OutOfSight; v <= seamsight.Shows; v++ {
				sum += s.LengthMM(path, v)
			}
			require.InDelta(t, s.ToMM-s.FromMM, sum, 1e-9)
		}
	}
	require.Equal(t, seams, seamsight.New(p, scenic(), seamMM).Seams(), "the same every time")
}

func TestWorstFirst(t *testing.T) {
	// A frame that sees seams on both paths.
	p := plan(t, func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 90, 32 })
	seams := seamsight.New(p, scenic(), seamMM).Seams()
	ranked := seamsight.WorstFirst(seams)
	paths := map[seamsight.Path]int{}
	for i, r := range ranked {
		paths[r.Path]++
		require.Equal(t, worst(r.Seam, r.Path), r.Sighting().OverThreshold())
		require.NotEqual(t, seamsight.OutOfSight, r.Sighting().Verdict)
		if i > 0 {
			require.LessOrEqual(t, r.Sighting().OverThreshold(), ranked[i-1].Sighting().OverThreshold())
		}
	}
	require.Equal(t, len(p.Seams), paths[seamsight.Through], "the drop shows them all")
	require.Greater(t, paths[seamsight.Direct], 1)
	require.Less(t, paths[seamsight.Direct], len(p.Seams))
}

// What is said to hide a seam does: each way is tried, the distance on a plan of its own.
func TestRemedies(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Camera.FrameWidthMM = 14 })
	m := seamsight.New(p, scenic(), seamMM)
	shown := func(m *seamsight.Model, at int, path seamsight.Path) float64 { return worst(m.Seams()[at], path) }
	var narrower, stops, further, touched int
	for i, s := range m.Seams() {
		found, ok := s.Worst(seamsight.Through)
		if !ok || found.Sightings[seamsight.Through].Verdict == seamsight.Hidden {
			continue
		}
		r := m.Remedies([]seamsight.Ranked{{Seam: s, Path: seamsight.Through, Sample: found}})[0]
		if r.SeamMM > 0 {
			narrower++
			require.Less(t, shown(m.WithSeams(r.SeamMM), i, seamsight.Through), 1.0)
			require.GreaterOrEqual(t, shown(m.WithSeams(r.SeamMM*1.05), i, seamsight.Through), 0.99,
				"and it is the widest that does")
		}
		for _, n := range []float64{r.OpenTo, r.CloseTo} {
			if n > 0 {
				stops++
				require.Less(t, shown(m.AtStop(n), i, seamsight.Through), 1.0, "f/%g", n)
			}
		}
		require.True(t, r.OpenTo < p.Camera.FNumber && (r.CloseTo == 0 || r.CloseTo > p.Camera.FNumber))
		if r.FurtherTimes > 0 {
			further++
			far := hungFurther(p, r.FurtherTimes)
			require.Less(t, shown(seamsight.New(far, scenic(), seamMM), i, seamsight.Through), 1.1)
		}
		// A print as light as the paper's edge would be hides it; so an edge as light as the print does.
		touched++
		require.InDelta(t, found.Sightings[seamsight.Through].Picture, lightOf(r.TouchUpLevel), 0.01)
	}
	require.Greater(t, narrower, 3)
	require.Greater(t, stops, 3)
	require.Greater(t, further, 3)
	require.Greater(t, touched, 3)
}

// A stop's mark is rounded: with the lens at f/22, which is f/22.6, and at f/23, that stop is where one is, not
// one to go to, though on its own it would hide a seam that is only just seen.
func TestTheStopItself(t *testing.T) {
	const next = 22.627416997969522 // the ninth power of the square root of two
	hides := 0
	for _, fNumber := range []float64{22, 23} {
		p := plan(t, func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 14, fNumber })
		m := seamsight.New(p, scenic(), seamMM)
		for i := range p.Seams {
			shown := func(m *seamsight.Model) float64 { return worst(m.Seams()[i], seamsight.Through) }
			low, high := 0.01, 1.0 // widths at which it is hidden and seen
			if shown(m.WithSeams(low)) >= 1 || shown(m.WithSeams(high)) <= 1 {
				continue
			}
			for range 14 {
				if middle := (low + high) / 2; shown(m.WithSeams(middle)) < 1 {
					low = middle
				} else {
					high = middle
				}
			}
			just := m.WithSeams(high)
			if shown(just.AtStop(next)) >= 1 {
				continue
			}
			hides++
			sample, _ := just.Seams()[i].Worst(seamsight.Through)
			r := just.Remedies([]seamsight.Ranked{{Seam: just.Seams()[i], Path: seamsight.Through, Sample: sample}})[0]
			require.False(t, r.OpenTo > 20 || r.CloseTo > 0 && r.CloseTo < 25, "f/%g: %+v", fNumber, r)
		}
	}
	require.Greater(t, hides, 3)
}

// What hides a seam on one path does not bring it out on the other: every remedy is tried, and both paths are
// looked at all along the seam.
func TestRemediesOnBothPaths(t *testing.T) {
	aside := layout.Lamp{XMM: -1000, YMM: 1000, ZMM: 1000}
	var gaps, stops, distances, heldBack int
	for _, c := range []struct {
		name   string
		edgeMM float64
		change func(*layout.Setup)
	}{
		{"frame close round the drop", seamMM, func(*layout.Setup) {}},
		{"frame that sees seams beside the drop", seamMM, func(s *layout.Setup) { s.Camera.FrameWidthMM = 90 }},
		{"frame that sees few", seamMM, func(s *layout.Setup) {
			s.Camera.FrameWidthMM, s.Camera.WidthPx,
				s.Camera.HeightPx = 72, 6000, 4000
		}},
		{"lamp from one side, board near", seamMM, func(s *layout.Setup) {
			s.DistanceMM, s.Lamps = 200, []layout.Lamp{aside}
			s.Camera.FrameWidthMM, s.Camera.WidthPx, s.Camera.HeightPx = 72, 6000, 4000
		}},
		{"narrow seams, blurred beside the drop", 0.1, func(s *layout.Setup) {
			s.DistanceMM, s.Camera.FNumber = 200, 32
			s.Camera.FrameWidthMM, s.Camera.WidthPx, s.Camera.HeightPx = 72, 6000, 4000
		}},
		{"upright rod", seamMM, rod(flip.UprightRod)},
		{"level rod", seamMM, rod(flip.LevelRod)},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change)
			m := seamsight.New(p, scenic(), c.edgeMM)
			seams := m.Seams()
			var shown []seamsight.Ranked
			for _, r := range seamsight.WorstFirst(seams) {
				if r.Sighting().Verdict > seamsight.Hidden {
					shown = append(shown, r)
				}
			}
			for i, r := range m.Remedies(shown) {
				path, other := shown[i].Path, seamsight.Through-shown[i].Path
				at := slices.IndexFunc(seams, func(s seamsight.Seam) bool { return s.Seam == shown[i].Seam.Seam })
				verdict := func(m *seamsight.Model, path seamsight.Path) seamsight.Verdict {
					return seamsight.VerdictOf(worst(m.Seams()[at], path))
				}
				spared := func(there *seamsight.Model, way string) {
					require.LessOrEqual(t, verdict(there, other), verdict(m, other), "%s %v: %s", path, seams[at].Between, way)
				}
				if r.SeamMM > 0 {
					gaps++
					there := m.WithSeams(r.SeamMM)
					require.Equal(t, seamsight.Hidden, verdict(there, path))
					spared(there, fmt.Sprintf("gap of %g mm", r.SeamMM))
				}
				for _, n := range []float64{r.OpenTo, r.CloseTo} {
					if n > 0 {
						stops++
						require.Equal(t, seamsight.Hidden, verdict(m.AtStop(n), path))
						spared(m.AtStop(n), fmt.Sprintf("f/%g", n))
					}
				}
				if r.FurtherTimes > 0 {
					distances++
					spared(seamsight.New(hungFurther(p, r.FurtherTimes), scenic(), c.edgeMM),
						fmt.Sprintf("%g times as far", r.FurtherTimes))
				}
				// Some stop hides the seam on this path alone, and is not named.
				for k := 4; k <= 12; k++ {
					there := m.AtStop(math.Pow(math.Sqrt2, float64(k)))
					if verdict(there, path) == seamsight.Hidden && verdict(there, other) > verdict(m, other) {
						heldBack++
					}
				}
			}
		})
	}
	require.Greater(t, gaps, 10)
	require.Greater(t, stops, 10)
	require.Greater(t, distances, 3)
	require.Positive(t, heldBack, "the scenes try what they are for")
}

// Hung further, a seam that a glass hides comes out from behind it: in the plane of the glass it stands at
// d/(d + kL) times k times its place, which grows with k. That is not named as a remedy, though the glass
// would show it small enough.
func TestDistanceThatBringsASeamOut(t *testing.T) {
	const edgeMM, asideMM, light = 0.15, 36, 0.63
	p := plan(t, rod(flip.UprightRod), func(s *layout.Setup) { s.Camera.FNumber = 64 })
	p.Camera.FocusMM = 900 // behind the glass, so that the board beside it is fairly sharp
	p.Seams = []layout.Seam{{Axis: "x", AtMM: p.Backdrop.WidthMM/2 + asideMM, ToMM: p.Backdrop.HeightMM}}
	m := seamsight.New(p, even(light), edgeMM)
	seam := m.Seams()[0]
	sample, _ := seam.Worst(seamsight.Through)
	r := m.Remedies([]seamsight.Ranked{{Seam: seam, Path: seamsight.Through, Sample: sample}})[0]
	require.Positive(t, r.SeamMM)
	there := seamsight.New(hungFurther(p, edgeMM/r.SeamMM), even(light), edgeMM).Seams()[0]
	require.Zero(t, worst(seam, seamsight.Direct))
	require.Less(t, worst(there, seamsight.Through), 1.1)
	require.Greater(t, worst(there, seamsight.Direct), 3.0)
	require.Zero(t, r.FurtherTimes)
}

// hungFurther is the plan of the board with all its seams, that many times as far and as large, the picture with it.
func hungFurther(p layout.Plan, times float64) layout.Plan {
	p.Drop.DistanceMM *= times
	p.Picture.WidthMM, p.Picture.HeightMM = times*p.Picture.WidthMM, times*p.Picture.HeightMM
	p.Backdrop.WidthMM, p.Backdrop.HeightMM = times*p.Backdrop.WidthMM, times*p.Backdrop.HeightMM
	seams := p.Seams
	p.Seams = nil
	for _, s := range seams {
		s.AtMM, s.FromMM, s.ToMM = times*s.AtMM, times*s.FromMM, times*s.ToMM
		p.Seams = append(p.Seams, s)
	}
	return p
}

// BenchmarkCostAt asks for places all over a board of 889 x 593 mm, both ways.
func BenchmarkCostAt(b *testing.B) {
	p := plan(b)
	m := seamsight.New(p, scenic(), seamMM)
	i := 0
	for b.Loop() {
		i += 7919
		m.CostAt(float64(i%8890)/10, float64(i/13%5930)/10, []string{"x", "y"}[i%2])
	}
}

// BenchmarkSeams prepares the model and looks at all 22 seams.
func BenchmarkSeams(b *testing.B) {
	p := plan(b)
	for b.Loop() {
		seamsight.New(p, scenic(), seamMM).Seams()
	}
}
