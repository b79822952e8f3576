package flip

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The corners of a path are those of the ray that is traced by vectors: each straight piece lies on the traced ray, and
// at both faces the angles, measured between the pieces and the radii, keep to Snell's law.
func TestPathIsTheTracedRay(t *testing.T) {
	for _, body := range []Body{Ball, UprightRod, LevelRod} {
		s := Sight{Drop: Drop{Body: body, DiameterMM: 20, Index: 1.5168}, CameraMM: 300, DistanceMM: 400}
		for _, fill := range []float64{0.25, 0.5, 0.85, 0.95} {
			p, ok := s.Path(fill)
			require.True(t, ok)
			require.Len(t, p.Corners, 4)
			ray := s.PinholeRay(0, fill*s.ApparentRadiusMM())
			at := func(l Landing) float64 { return l.YMM }
			if body == UprightRod {
				ray, at = s.PinholeRay(fill*s.ApparentRadiusMM(), 0), func(l Landing) float64 { return l.XMM }
			}
			l, ok := s.Trace(ray)
			require.True(t, ok && l.Through)
			require.InDelta(t, at(l), p.Corners[3].Y, 1e-9)
			pieces := make([]Vec, 3)
			for i := range pieces {
				pieces[i] = p.Corners[i+1].Sub(p.Corners[i]).Unit()
			}
			angle := func(a, b Vec) float64 { return math.Acos(a.Dot(b) / math.Sqrt(a.Dot(a)*b.Dot(b))) }
			in, out := p.Corners[1], p.Corners[2]
			for name, got := range map[string]float64{"into": angle(pieces[0], in.Scale(-1)), "out of": angle(pieces[2], out)} {
				require.InDelta(t, p.IncidenceRad, got, 1e-6, name)
			}
			for name, got := range map[string]float64{"after": angle(pieces[1], in.Scale(-1)), "before": angle(pieces[1], out)} {
				require.InDelta(t, p.InsideRad, got, 1e-6, name)
				require.InDelta(t, math.Sin(p.IncidenceRad), 1.5168*math.Sin(got), 1e-6, name)
			}
			require.InDelta(t, p.LeavesRad, angle(pieces[0], Vec{0, 0, 1}), 1e-6)
			require.InDelta(t, p.TurnedRad, angle(pieces[0], pieces[2]), 1e-6)
		}
	}
	_, ok := Sight{Drop: Drop{DiameterMM: 5, Index: 1.333, HeightOverWidth: 0.9}, CameraMM: 300, DistanceMM: 400}.Path(0.5)
	require.False(t, ok, "out of round")
}
