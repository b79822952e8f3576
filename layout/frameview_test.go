package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What it takes to fill the frame, by hand, at three focuses. A camera 300 mm before the drop whose frame is 72 x 48 mm
// there sees 700/300 of that on a board 400 mm behind it: 168 x 112 mm. A 100 mm lens at f/16 has a pupil of 6.25 mm.
// Focused d away, a point of the frame takes in |700 - d|/d of that on the board, by similar triangles, so half of it
// lies past the frame's side, to the left as to the right, above as below.
func TestCoversByHand(t *testing.T) {
	for _, c := range []struct {
		focus             string
		focusMM           float64
		blurMM            float64
		widthMM, heightMM float64
	}{
		{"the drop", 300, 6.25 * 400 / 300, 168 + 25.0/3, 112 + 25.0/3},
		{"the board, which is then sharp", 700, 0, 168, 112},
		{"behind the board", 1000, 6.25 * 0.3, 169.875, 113.875},
	} {
		t.Run(c.focus, func(t *testing.T) {
			p := Plan{
				Drop:   Drop{CameraMM: 300, DistanceMM: 400},
				Camera: Camera{FrameWidthMM: 72, FrameHeightMM: 48, LensMM: 100, FNumber: 16, FocusMM: c.focusMM},
			}
			require.InDelta(t, c.blurMM, p.BoardBlurMM(), 1e-12)
			require.InDelta(t, c.widthMM, p.Covers().WidthMM, 1e-12)
			require.InDelta(t, c.heightMM, p.Covers().HeightMM, 1e-12)
		})
	}
}
