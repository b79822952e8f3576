package weigh

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A path whose places, with Shift more binary places, leave their 63 bits is refused: the loop in AVX2 would
// read before the picture.
func TestRefusesPathsThatOverflow(t *testing.T) {
	xs := []int{31 << 58, 31 << 58} // 31 pixels; times 16 it is -2^62, a pixel before the first
	src := make([]byte, 2000)
	zero := []int{0, 0}
	for name, p := range map[string]Path{
		"across": {X: xs, Y: zero, Shift: 4, Places: 58},
		"down":   {X: zero, Y: xs, Shift: 4, Places: 58},
	} {
		require.Panics(t, func() { LookUp(make([]byte, 1), src, 20, p, new(Kernel)) }, name)
	}
}
