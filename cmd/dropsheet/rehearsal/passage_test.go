package rehearsal

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// When a drop comes and goes is by free fall, y = v t + g t²/2 (Galileo), g = 9806.65 mm/s².
func TestPasses(t *testing.T) {
	const g, off = 9806.65, 5.0
	y := func(v, t float64) float64 { return v*t + g*t*t/2 }
	for _, c := range []struct {
		name            string
		speed           float64
		fromMM, toMM    float64
		restsAtTheStart bool
	}{
		{"fast", 2000, -off, off, false},
		{"let go on the way", 100, -100 * 100 / 2 / g, off, true},
		{"rising through", -2000, off, -off, false},
		{"rising, and back", -100, off, off, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			from, to := passes(c.speed, off)
			require.Less(t, from, 0.0)
			require.Greater(t, to, 0.0)
			require.InDelta(t, c.fromMM, y(c.speed, from), 1e-9)
			require.InDelta(t, c.toMM, y(c.speed, to), 1e-9)
			if c.restsAtTheStart {
				require.InDelta(t, 0, c.speed+g*from, 1e-9)
			}
		})
	}
}

// A passage has the camera's frames, shown at the playback's rate, the drop going down and swinging about round.
func TestPassage(t *testing.T) {
	address, _ := served(t)
	words := append([]Word{{"fall", "20cm"}, {"frame-rate", "2000"}, {"playback", "20"}}, usual...)
	all := asked(t, address, "play", question{Words: words, SidePx: 64})
	// From 5.5 mm above the middle to as far below (6 mm of frame and 5 of drop), at √(2·9806.65·200) = 1980.6 mm/s:
	// 11/1980.6 s, 11.1 frames.
	require.Equal(t, "passage", all[0].Kind, all[0].Text)
	require.Equal(t, "11", string(all[0].Count))
	require.InDelta(t, 11.1/20/11, all[0].EachS, 0.001)
	require.Len(t, all, 12)
	require.NotEqual(t, all[1].follows, all[6].follows)

	asked, err := read(words)
	require.NoError(t, err)
	_, _, plans, err := asked.Bench("", 60, 40)
	require.NoError(t, err)
	p, ok := newPassage(plans[0])
	require.True(t, ok)
	least, most := math.Inf(1), 0.0
	for i, m := range p.moments {
		if i > 0 {
			require.Greater(t, m.downMM, p.moments[i-1].downMM)
		}
		least, most = min(least, m.heightOverWidth), max(most, m.heightOverWidth)
	}
	require.InDelta(t, 0, p.moments[5].downMM, 0.1, "the middle one is in the middle")
	require.InDelta(t, 1, p.moments[5].heightOverWidth, 0.01)
	require.Less(t, least, 0.98)
	require.Greater(t, most, 1.02)

	refused := askedOne(t, address, "play", question{Words: usual, SidePx: 64})
	require.Equal(t, "fall", refused.Flag)
}
