package layout

import (
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

// byHandOverArea is the blur over the circle of the fill by spreadByHand, on many rings of the same area.
func byHandOverArea(p Plan, focusMM float64) float64 {
	const rings = 400
	square := 0.0
	for i := range rings {
		tangential, sagittal := spreadByHand(p, p.Picture.Fill*math.Sqrt((float64(i)+0.5)/rings), focusMM)
		square += math.Pow(max(math.Abs(tangential), math.Abs(sagittal)), 2) / rings
	}
	return math.Sqrt(square)
}

// The picture's blur over its area, and where it is least, by the trace of few places against closed forms of narrow
// bundles on many. In the middle alone the picture is sharp elsewhere.
func TestFocusOverTheAreaByHand(t *testing.T) {
	p := bodied(t, flip.Ball, 1000)
	for _, focusMM := range []float64{p.EdgeMM(), 297.4, 296, p.ImageMM()} {
		traced := math.Sqrt(math.Pow(p.OverAreaPx(1000, focusMM), 2) - math.Pow(p.Camera.AiryPx(), 2))
		require.InEpsilon(t, byHandOverArea(p, focusMM), traced, 0.01, "focused at %g", focusMM)
	}
	least, at := math.Inf(1), 0.0
	for focusMM := 290.0; focusMM < 302; focusMM += 0.02 {
		if px := byHandOverArea(p, focusMM); px < least {
			least, at = px, focusMM
		}
	}
	require.InDelta(t, at, p.PictureFocusMM(1000), 0.1)
	require.Greater(t, at-p.ImageMM(), 1.0)
}

// No focus on a comb does better than those for the area, for any body, and the plan is focused where they are.
func TestFocusesForTheAreaAreBest(t *testing.T) {
	for _, body := range bodies {
		for _, focus := range []Focus{FocusPicture, FocusWhole} {
			s := plain()
			s.Drop.Body, s.DistanceMM, s.Camera.FNumber, s.Camera.Focus = body, 400, 11, focus
			p := mustPlan(t, s)
			px := p.OverAreaPx
			if focus == FocusWhole {
				px = p.WholePx
			}
			least := px(11, p.Camera.FocusMM)
			for mm := 285.0; mm < 310; mm += 0.1 {
				require.GreaterOrEqual(t, px(11, mm), least*(1-1e-4), "%s, %s at %g against %g", body, focus, mm, p.Camera.FocusMM)
			}
			whole := p.WholeFocusMM(11)
			require.InDelta(t, math.Max(p.BlurAt(11, whole).EdgePx, p.OverAreaPx(11, whole)), p.WholePx(11, whole), 1e-9)
		}
	}
}
