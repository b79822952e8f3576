package layout

import (
	"math"
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

// Where lines from the pupil touch a drop out of round, level and upright: the last line that meets the ellipse,
// found by halving, meets it in one place, half way between where it enters and leaves.
func TestEdgeOfASpheroid(t *testing.T) {
	for _, ratio := range []float64{0.8, 1, 1.2} {
		s := plain()
		s.DistanceMM, s.Drop.HeightOverWidth = 400, ratio
		p := mustPlan(t, s)
		halfWidth := 2.5 / math.Cbrt(ratio) // the volume of a ball 5 mm across is 4/3 pi a² (ratio a)
		for _, aside := range []float64{halfWidth, halfWidth * ratio} {
			// Of z²/a² + m²(z + D)²/b² = 1, the middle of both roots and what is under the root.
			meets := func(m float64) (middle float64, ok bool) {
				a, b, c := 1/(halfWidth*halfWidth), m*m/(aside*aside), p.Drop.CameraMM
				return -b * c / (a + b), b*b*c*c-(a+b)*(b*c*c-1) > 0
			}
			low, high := 0.0, 1.0
			for range 60 {
				if _, ok := meets((low + high) / 2); ok {
					low = (low + high) / 2
				} else {
					high = (low + high) / 2
				}
			}
			touches, _ := meets(low)
			require.InDelta(t, p.Drop.CameraMM+touches, p.EdgeMM(), 1e-9, "%g, half %g aside", ratio, aside)
		}
	}
}
