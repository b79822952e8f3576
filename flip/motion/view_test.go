package motion

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Where the drop is then, by Galileo's law put in: at the two heights, but for one that was let go in view or falls
// back.
func TestViewS(t *testing.T) {
	const g = 9806.65
	for _, c := range []struct {
		name                string
		speed, above, below float64
		fromMM, toMM        float64 // below the middle, of where it is first and last
		ok                  bool
	}{
		{"falls through", 2000, 17, 17, -17, 17, true},
		{"falls through, off the middle", 2000, 30, -5, -30, -5, true},
		{"falls through, far below", 300, -50, 80, 50, 80, true},
		{"let go in view", 300, 17, 17, -300 * 300 / (2 * g), 17, true},
		{"let go below all of it", 300, 17, -10, 0, 0, false},
		{"rises through", -2000, 17, 20, 20, -17, true},
		{"rises, falls back", -300, 17, 20, 20, 20, true},
		{"rises, does not come by", -300, 17, -10, 0, 0, false},
		{"no height at all", 2000, -10, 5, 0, 0, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			from, to, ok := ViewS(c.speed, c.above, c.below)
			require.Equal(t, c.ok, ok)
			if !ok {
				return
			}
			place := func(s float64) float64 { return c.speed*s + g/2*s*s }
			require.InDelta(t, c.fromMM, place(from), 1e-9)
			require.InDelta(t, c.toMM, place(to), 1e-9)
			require.Less(t, from, to)
		})
	}
	from, to, _ := ViewS(-300, 17, 20)
	require.InDelta(t, 300/g, (from+to)/2, 1e-12, "as long before it turns round as after")
}
