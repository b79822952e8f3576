package seamsight

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestThreshold(t *testing.T) {
	t.Run("on even ground in good light it is 2 % (Blackwell 1946, recalled from memory)", func(t *testing.T) {
		require.InDelta(t, 0.02, threshold(0.5, 0, 3), 0.0005)
	})
	t.Run("detail far over it raises it by the 0.62 power (Legge and Foley 1980, recalled from memory)",
		func(t *testing.T) {
			require.InDelta(t, math.Pow(2, 0.62), threshold(0.5, 0.8, 3)/threshold(0.5, 0.4, 3), 0.005)
		})
	t.Run("detail under it does not", func(t *testing.T) {
		require.InDelta(t, 0.02, threshold(0.5, 0.005, 3), 0.001)
	})
	t.Run("in the dark noise does, less where the line is wide", func(t *testing.T) {
		// 20,000 electrons at white: 20 at a thousandth of it, a noise of sqrt(20)/20,000 of white, held against 0.011.
		noise := math.Sqrt(20) / 20_000 / 0.011
		require.InDelta(t, math.Hypot(0.02, noise), threshold(0.001, 0, 1), 1e-6)
		require.InDelta(t, math.Hypot(0.02, noise/4), threshold(0.001, 0, 4), 1e-6)
	})
	t.Run("nowhere is it no number", func(t *testing.T) {
		for _, light := range []float64{0, 1e-12, 0.3, 1, 50} {
			for _, detail := range []float64{0, 0.1, 1e6} {
				for _, px := range []float64{0, 1, 1e9} {
					v := threshold(light, detail, px)
					require.False(t, math.IsNaN(v) || math.IsInf(v, 0) || v < thinLine*0.999)
				}
			}
		}
	})
}

func TestVerdicts(t *testing.T) {
	for _, c := range []struct {
		times float64
		want  Verdict
	}{{0, Hidden}, {0.99, Hidden}, {1, Faint}, {2.99, Faint}, {3, Shows}, {100, Shows}} {
		require.Equal(t, c.want, verdict(c.times), "%g", c.times)
	}
	require.True(t, OutOfSight < Hidden && Hidden < Faint && Faint < Shows, "the worse the larger")
}
