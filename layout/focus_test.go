package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// No focus on a fine comb does better than the best focus, and none of edge and picture is worse there than told.
func TestBestFocusIsBest(t *testing.T) {
	for _, body := range bodies {
		for _, fNumber := range []float64{4, 16, 45} {
			p := bodied(t, body, fNumber)
			best := p.BestFocusMM(fNumber)
			least := p.WorstPx(p.BlurAt(fNumber, best))
			for focus := 285.0; focus < 315; focus += 0.02 {
				require.GreaterOrEqual(t, p.WorstPx(p.BlurAt(fNumber, focus)), least*(1-1e-5), "%s f/%g: %g against %g", body,
					fNumber, focus, best)
			}
			require.Equal(t, best, p.Camera.FocusMM, "the plan is focused there")
		}
	}
}
