package shot

import (
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// The stack of a picture so small that all of it hangs at ImageMM, by hand: to a blur of c without diffraction a
// plane at d is sharp where |1/d - 1/focus| is up to c over the pupil and the drop's distance (discs by similar
// triangles: Hecht, Optics, 5.2.3). The first exposure is as far toward the edge as still holds the picture, the last
// as far toward the picture as still holds the edge, and between them none is further from the next than the picture
// is sharp.
func TestStackByHand(t *testing.T) {
	for _, fNumber := range []float64{4, 8, 11} {
		p := bodied(t, flip.UprightRod, fNumber)
		p.Picture.Fill, p.Camera.SharpToPx = 0.01, 4
		airyPx := p.Camera.AiryPx()
		c := math.Sqrt(p.Camera.SharpToPx*p.Camera.SharpToPx-airyPx*airyPx) * p.Camera.PixelMM()
		reach := c / p.Camera.PupilMM() / p.Drop.CameraMM
		from, to := 1/(1/p.ImageMM()-reach), 1/(1/p.EdgeMM()+reach)
		wide := from - 1/(1/p.ImageMM()+reach)
		got, ok := Of(p).Stack(fNumber)
		require.True(t, ok)
		require.Equal(t, 1+int(math.Ceil((to-from)/wide)), got.Exposures, "f/%g", fNumber)
		require.InDelta(t, from, got.FromMM, 0.01, "f/%g", fNumber)
		require.InDelta(t, to, got.ToMM, 0.01, "f/%g", fNumber)
		require.InDelta(t, (to-from)/float64(got.Exposures-1), got.StepMM, 0.01)
	}
}

// Every place of picture and edge is sharp in one exposure of a stack at least, places between those that it was made
// for too, and with fewer that are as far apart the furthest one is not; where diffraction alone is more there is
// none.
func TestStackHoldsAll(t *testing.T) {
	p := bodied(t, flip.LevelRod, 5.6)
	p.Camera.SharpToPx = 3
	s := Of(p)
	stack, ok := s.Stack(5.6)
	require.True(t, ok)
	require.Greater(t, stack.Exposures, 2)
	sharp := func(exposures int, blurPx func(focusMM float64) float64) bool {
		for i := range exposures {
			if blurPx(stack.FromMM+float64(i)*stack.StepMM) <= p.Camera.SharpToPx*1.001 {
				return true
			}
		}
		return false
	}
	edge := func(focusMM float64) float64 { return p.BlurAt(5.6, focusMM).EdgePx }
	for fill := 0.0; fill <= p.BlurFill(); fill += 0.037 {
		require.True(t, sharp(stack.Exposures, func(focusMM float64) float64 {
			return p.PlaceBlurPx(5.6, focusMM, fill)
		}), "fill %g", fill)
	}
	require.True(t, sharp(stack.Exposures, edge))
	require.False(t, sharp(stack.Exposures-1, edge))

	_, ok = s.Stack(32)
	require.False(t, ok)
	p.Camera.FNumber = 32
	near := Of(p).StackNear()
	require.NotNil(t, near)
	require.Less(t, near.FNumber, 32.0)
	p.Camera.SharpToPx = 1e6
	one, ok := Of(p).Stack(16)
	require.True(t, ok)
	require.Equal(t, 1, one.Exposures)
	require.Zero(t, one.StepMM)
	require.Equal(t, layout.FocusBest, p.Camera.Focus)
}

// The stops for the area are no worse than any full stop is.
func TestBestStopsForTheArea(t *testing.T) {
	got := Of(bodied(t, flip.Ball, 16)).Sharpness()
	for _, line := range got.Stops {
		require.GreaterOrEqual(t, line.Picture.AreaPx, got.PictureAlone.BlurPx*(1-1e-4))
		require.GreaterOrEqual(t, max(line.Whole.AreaPx, line.Whole.Blur.EdgePx), got.Whole.BlurPx*(1-1e-4))
	}
	require.Less(t, got.PictureAlone.BlurPx, got.Whole.BlurPx)
}

// To the blur that is told there is a stack, at the stop that is told, and to a fifth less at no full stop.
func TestStackable(t *testing.T) {
	p := bodied(t, flip.UprightRod, 5.6)
	told := Of(p).Stackable()
	p.Camera.SharpToPx = told.SharpToPx
	stack, ok := Of(p).Stack(told.FNumber)
	require.True(t, ok)
	require.LessOrEqual(t, stack.Exposures, 100)
	p.Camera.SharpToPx = told.SharpToPx * 0.8
	for _, n := range []float64{1, 1.4142, 2, 2.8284, 4, 5.6569, 8, 11.314, 16, 22.627, 32, 45.255, 64} {
		_, ok := Of(p).Stack(n)
		require.False(t, ok, "f/%g", n)
	}
}
