package flip

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The corners of a path are those of the ray that is traced by vectors: it lands where that does, and at every face the
// angles, measured between its pieces and the radii, keep to Snell's law with the indices on either side.
func TestPathIsTheTracedRay(t *testing.T) {
	for _, d := range []Drop{
		{Body: Ball, DiameterMM: 20, Index: 1.5168},
		{Body: UprightRod, DiameterMM: 20, Index: 1.5168},
		{Body: LevelRod, DiameterMM: 20, Index: 1.333, WallMM: 2, WallIndex: 1.5168},
		{Body: UprightRod, DiameterMM: 70, Index: 1.333, WallMM: 4, WallIndex: 1.49},
	} {
		s := Sight{Drop: d, CameraMM: 300, DistanceMM: 400}
		for _, fill := range []float64{0.25, 0.5, 0.85, 0.95} {
			p, ok := s.Path(fill)
			require.True(t, ok)
			ray := s.PinholeRay(0, fill*s.ApparentRadiusMM())
			at := func(l Landing) float64 { return l.YMM }
			if d.Body == UprightRod {
				ray, at = s.PinholeRay(fill*s.ApparentRadiusMM(), 0), func(l Landing) float64 { return l.XMM }
			}
			l, ok := s.Trace(ray)
			require.True(t, ok && l.Through)
			last := len(p.Corners) - 1
			require.InDelta(t, at(l), p.Corners[last].Y, 1e-9)

			indices := []float64{1, d.Index, 1}
			if d.WallMM > 0 {
				indices = []float64{1, d.WallIndex, d.Index, d.WallIndex, 1}
			}
			require.Len(t, p.Corners, len(indices)+1)
			pieces := make([]Vec, last)
			for i := range pieces {
				pieces[i] = p.Corners[i+1].Sub(p.Corners[i]).Unit()
			}
			sine := func(a, b Vec) float64 { return math.Sqrt(1 - math.Pow(a.Dot(b.Unit()), 2)) }
			for i := 1; i < last; i++ {
				before, behind := indices[i-1]*sine(pieces[i-1], p.Corners[i]), indices[i]*sine(pieces[i], p.Corners[i])
				require.InDelta(t, before, behind, 1e-6, "Snell's law at face %d", i)
			}
			for i, f := range p.Faces {
				require.InDelta(t, math.Sin(f.BeforeRad), sine(pieces[i], p.Corners[i+1]), 1e-6)
				require.InDelta(t, math.Sin(f.BehindRad), sine(pieces[i+1], p.Corners[i+1]), 1e-6)
			}
			require.InDelta(t, math.Sin(p.LeavesRad), sine(pieces[0], Vec{0, 0, 1}), 1e-6)
			require.InDelta(t, math.Cos(p.TurnedRad), pieces[0].Dot(pieces[last-1]), 1e-9)
		}
	}
	_, ok := Sight{Drop: Drop{DiameterMM: 5, Index: 1.333, HeightOverWidth: 0.9}, CameraMM: 300, DistanceMM: 400}.Path(0.5)
	require.False(t, ok, "out of round")
}
