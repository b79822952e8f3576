package proof

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The tables of angles agree with the functions that they stand for, all round and up to the outermost ring, to 1e-5 of
// the way from knot to knot.
func TestArcs(t *testing.T) {
	const steps = 99_991 // a prime: places all over the tables' steps
	ring, way := math.Asin(outermostShare)/ringCount, 1.0/wayCount
	for i := range steps + 1 {
		sin := outermostShare * float64(i) / steps
		require.InDelta(t, math.Asin(sin), arcs.asin(sin), 1.3e-5*ring)
		y, x := math.Sincos(2 * math.Pi * float64(i) / steps)
		want := math.Atan2(y, x) / (2 * math.Pi)
		got := arcs.turn(x, y)
		require.True(t, got >= 0 && got <= 1)
		require.InDelta(t, 0, math.Remainder(want-got, 1), 1e-5*way)
	}
}
