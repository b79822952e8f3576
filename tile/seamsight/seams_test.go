package seamsight_test

import (
	"testing"

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
			require.GreaterOrEqual(t, shown(m.WithSeams(r.SeamMM*1.05), i, seamsight.Through), 0.99, "and it is the widest that does")
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
			// The board with all its seams, that many times as far and as large, the picture with it.
			far := p
			k := r.FurtherTimes
			far.Drop.DistanceMM *= k
			far.Picture.WidthMM, far.Picture.HeightMM = k*p.Picture.WidthMM, k*p.Picture.HeightMM
			far.Backdrop.WidthMM, far.Backdrop.HeightMM = k*p.Backdrop.WidthMM, k*p.Backdrop.HeightMM
			far.Seams = nil
			for _, s := range p.Seams {
				s.AtMM, s.FromMM, s.ToMM = k*s.AtMM, k*s.FromMM, k*s.ToMM
				far.Seams = append(far.Seams, s)
			}
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
