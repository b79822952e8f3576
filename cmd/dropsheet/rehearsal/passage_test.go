package rehearsal

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A passage has the camera's frames, shown at the playback's rate; of a long one some, in the same time. What is not
// known of it is said.
func TestPassage(t *testing.T) {
	address, _ := served(t)
	play := func(rate string) []record {
		words := append([]Word{{"fall", "20cm"}, {"frame-rate", rate}, {"playback", "20"}}, usual...)
		return asked(t, address, "play", question{Words: words, SidePx: 64})
	}
	// From about 5.5 mm above the middle to as far below (6 mm of frame and 5 of a drop that swings), at
	// √(2·9806.65·200) = 1980.6 mm/s: 11/1980.6 s, 11.1 frames.
	all := play("2000")
	require.Equal(t, "passage", all[0].Kind, all[0].Text)
	require.Equal(t, "11", string(all[0].Count))
	require.InDelta(t, 1.0/20, all[0].EachS, 1e-9)
	require.Len(t, all, 12)
	require.NotEqual(t, all[1].follows, all[6].follows)

	all = play("20000") // 111 frames, and up to four more while it is longer than round, by 7 per cent at most
	require.Equal(t, "40", string(all[0].Count))
	require.InDelta(t, 113.0/20/40, all[0].EachS, 2.5/20/40)

	refused := askedOne(t, address, "play", question{Words: usual, SidePx: 64})
	require.Equal(t, "fall", refused.Flag)
	require.Contains(t, refused.Text, "takes the drop's speed and the frame rate")
	refused = askedOne(t, address, "play", question{Words: append([]Word{{"fall", "20cm"}}, usual...), SidePx: 64})
	require.Equal(t, "frame-rate", refused.Flag)
}
