package raster

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/raster/weigh"
)

// Every kernel keeps what package weigh asks of it: weights that add up to One, and their absolute values to
// 1.99 of it.
func TestWeightsKeepTheirBounds(t *testing.T) {
	most := 0.0
	check := func(weights []int16, what ...any) {
		sum, size := 0, 0.0
		for _, w := range weights {
			sum, size = sum+int(w), size+math.Abs(float64(w))
		}
		most = max(most, size/weigh.One)
		if sum != weigh.One || size > 1.99*weigh.One {
			require.Equal(t, weigh.One, sum, what...)
			require.LessOrEqual(t, size, 1.99*weigh.One, what...)
		}
	}
	for phase, weights := range phases {
		check(weights[:], "phase %d", phase)
		require.Equal(t, []int16{0, 0}, weights[weigh.KernelTaps:], "phase %d", phase)
	}
	// Right on a pixel it alone counts, and half-way between two the kernel is even.
	require.Equal(t, []int16{0, 0, weigh.One, 0, 0, 0}, phases[0][:weigh.KernelTaps])
	for k, w := range phases[1<<weigh.PhaseBits/2][:weigh.KernelTaps] {
		require.InDelta(t, w, phases[1<<weigh.PhaseBits/2][weigh.KernelTaps-1-k], 2, "tap %d", k)
	}
	for length := 1.0; length <= 12; length += 0.01 {
		for _, corner := range []float64{length, 1.4 * length} {
			check(newFiner(load{length, corner}).weights, "%g pixels to one, %g aslant", length, corner)
		}
	}
	axis := func(n, m int) {
		for i, tap := range taps(-1, m+1, n, m) {
			check(tap.weights, "pixel %d of %d to %d", i-1, n, m)
			require.Zero(t, len(tap.weights)%2)
			require.True(t, tap.first >= 0 && (tap.first == 0 || tap.first+len(tap.weights) <= n), "pixel %d of %d to %d", i-1,
				n, m)
		}
	}
	for n := 1; n <= 50; n++ {
		for m := 1; m <= n; m++ {
			axis(n, m)
		}
	}
	for _, n := range []int{1000, 9999, 16384, 20000, 30000, 65535} { // weights that round to nothing or nearly
		for m := 1; m <= 3; m++ {
			axis(n, m)
		}
	}
	t.Logf("%.3f of One at most", most)
}
