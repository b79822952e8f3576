package flip_test

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// tracedMM is where in the drop's plane a place of the backdrop is seen, sought with traced rays alone: half the
// stretch between two that land on either side of it, until nothing lies between.
func tracedMM(s flip.Sight, reachMM float64) float64 {
	near, far := 0.0, s.ApparentRadiusMM()
	for {
		middle := (near + far) / 2
		if middle <= near || middle >= far {
			return middle
		}
		if l, ok := s.Trace(s.PinholeRay(middle, 0)); ok && math.Abs(l.XMM) < reachMM {
			near = middle
		} else {
			far = middle
		}
	}
}

func TestFringeAgainstTracedRays(t *testing.T) {
	for _, c := range []struct {
		name           string
		body           flip.Body
		material       string
		diameterMM     float64
		distance, fill float64
	}{
		{"water", flip.Ball, "water", 5, 400, 0.85},
		{"water, near the middle", flip.Ball, "water", 5, 400, 0.1},
		{"water, toward the rim", flip.Ball, "water", 5, 400, 0.98},
		{"crown glass", flip.Ball, "crown-glass", 60, 800, 0.85},
		{"a rod of glycerol", flip.UprightRod, "glycerol", 20, 300, 0.8},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := material(t, c.material)
			s := flip.Sight{Drop: flip.Drop{Body: c.body, DiameterMM: c.diameterMM, Index: m.Index}, CameraMM: 300,
				DistanceMM: c.distance}
			reachMM, ok := s.ReachMM(c.fill)
			require.True(t, ok)
			got, ok := s.FringeMM(reachMM, m.Dispersion)
			require.True(t, ok)
			red, blue := s, s
			red.Drop.Index, blue.Drop.Index = m.Dispersion.RedIndex, m.Dispersion.BlueIndex
			require.InDelta(t, tracedMM(red, reachMM)-tracedMM(blue, reachMM), got, 1e-9)
			require.Positive(t, got, "red lies outside")
		})
	}
}

// Near the axis of a far camera a height y is seen at y f / (L - f), with f = nR / (2(n-1)). By hand, for a ball of
// water with R = 2.5 mm and L = 400 mm: f is 4.95788 mm for blue and 5.02472 for red, so a place at 10 mm is seen at
// 0.125503 and 0.127216 mm: 1.7 thousandths of a millimetre apart.
func TestFringeByHand(t *testing.T) {
	s := flip.Sight{Drop: flip.Drop{DiameterMM: 5, Index: 1.33299}, CameraMM: 1e6, DistanceMM: 400}
	got, ok := s.FringeMM(10, material(t, "water").Dispersion)
	require.True(t, ok)
	require.InEpsilon(t, 0.127216-0.125503, got, 0.01)
}

func TestFringeIsNotKnown(t *testing.T) {
	s := flip.Sight{Drop: flip.Drop{DiameterMM: 5, Index: 1.36384}, CameraMM: 300, DistanceMM: 400}
	_, ok := s.FringeMM(100, material(t, "syrup-20").Dispersion)
	require.False(t, ok, "no dispersion")
	_, ok = s.FringeMM(math.Inf(1), material(t, "water").Dispersion)
	require.False(t, ok, "out of sight")
}
