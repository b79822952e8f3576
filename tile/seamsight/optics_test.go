package seamsight_test

import (
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/seamsight"

	"github.com/stretchr/testify/require"
)

// In a ball a place shows at the fill whose reach is its distance from the axis, on the other side (the
// closed form, flip.Sight.FillAt); across a seam the scale is the area's over the line's own, both from the
// closed form's slopes.
func TestThroughABallAgainstTheClosedForm(t *testing.T) {
	const seed = 7
	random := rand.New(rand.NewSource(seed))
	p := plan(t)
	m := seamsight.New(p, even(0.3), seamMM)
	sight, perMM := p.Sight(), 1/p.Camera.PixelMM()
	for range 300 {
		x, y := (random.Float64()-0.5)*p.Backdrop.WidthMM, (random.Float64()-0.5)*p.Backdrop.HeightMM
		away := math.Hypot(x, y)
		shown := func(awayMM float64) float64 {
			fill, ok := sight.FillAt(awayMM)
			require.True(t, ok)
			return fill * sight.ApparentRadiusMM() * perMM
		}
		at := shown(away)
		s := m.At(x+p.Backdrop.WidthMM/2, y+p.Backdrop.HeightMM/2, "x", seamsight.Through)
		require.NotEqual(t, seamsight.OutOfSight, s.Verdict, "seed %d: %g, %g", seed, x, y)
		require.InDelta(t, 300-at*x/away, s.Frame.XPx, 0.01, "seed %d: %g, %g", seed, x, y)
		require.InDelta(t, 200-at*y/away, s.Frame.YPx, 0.01, "seed %d: %g, %g", seed, x, y)

		tangential, sagittal := (shown(away+0.01)-shown(away-0.01))/0.02, at/away
		along := math.Hypot(tangential*y/away, sagittal*x/away) // of a line that runs down
		require.InEpsilon(t, along, s.AlongPx, 0.002, "seed %d: %g, %g", seed, x, y)
		require.InEpsilon(t, tangential*sagittal/along, s.PxPerMM, 0.002, "seed %d: %g, %g", seed, x, y)
		require.InEpsilon(t, seamMM*s.PxPerMM, s.WidthPx, 1e-9)
	}
}

// In rods too, the ray through the pixel that a place is said to show at lands on that place.
func TestThroughRodsTheRayLandsThere(t *testing.T) {
	for _, body := range []flip.Body{flip.UprightRod, flip.LevelRod} {
		p := plan(t, rod(body))
		m := seamsight.New(p, even(0.3), seamMM)
		found := 0
		for i := range 41 {
			for j := range 41 {
				x, y := p.Backdrop.WidthMM*float64(i)/40, p.Backdrop.HeightMM*float64(j)/40
				s := m.At(x, y, "y", seamsight.Through)
				if s.Verdict == seamsight.OutOfSight || s.Frame.XPx <= 0 || s.Frame.YPx <= 0 || s.Frame.XPx >= 600 ||
					s.Frame.YPx >= 400 {
					continue
				}
				found++
				through := p.Camera.At(s.Frame.XPx, s.Frame.YPx)
				l, ok := p.Sight().Trace(p.Sight().PinholeRay(through.XMM, through.YMM))
				require.True(t, ok && l.Through)
				pxMM := 1 / s.PxPerMM // across, the finer side may be the other one
				require.InDelta(t, x, l.XMM+p.Backdrop.WidthMM/2, 0.3*pxMM+0.05, "%s at %g, %g", body, x, y)
				require.InDelta(t, y, l.YMM+p.Backdrop.HeightMM/2, 0.3*pxMM+0.05, "%s at %g, %g", body, x, y)
			}
		}
		require.Greater(t, found, 40, body.String())
	}
}

// Blur by another route: layout.Plan.BlurAt traces bundles of 36 rays and takes their variance. In the middle
// the thin lens's formula holds too (Hecht, Optics, 5.2.3), with the image of the board in the ball as the
// object.
func TestBlur(t *testing.T) {
	for _, fNumber := range []float64{11, 22, 64} {
		p := plan(t, func(s *layout.Setup) { s.Camera.FNumber = fNumber })
		m := seamsight.New(p, even(0.3), seamMM)
		want := p.BlurAt(fNumber, p.Camera.FocusMM)
		cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2

		middle := m.At(cx, cy, "x", seamsight.Through)
		require.InEpsilon(t, want.Centre.TangentialPx, middle.BlurPx, 0.02, "f/%g", fNumber)
		image, focus := p.ImageMM(), p.Camera.FocusMM
		disc := p.Camera.PupilMM() * math.Abs(image-focus) / image * p.Drop.CameraMM / focus / p.Camera.PixelMM()
		require.InEpsilon(t, math.Hypot(disc, p.Camera.AiryPx()), middle.BlurPx, 0.02, "f/%g", fNumber)

		// At the fill, a seam that runs down beside the axis is blurred tangentially, one that runs across is
		// blurred sagittally.
		reachMM, ok := p.Sight().ReachMM(p.BlurFill())
		require.True(t, ok)
		require.InEpsilon(t, want.Fill.TangentialPx, m.At(cx+reachMM, cy, "x", seamsight.Through).BlurPx, 0.05, "f/%g",
			fNumber)
		require.InEpsilon(t, want.Fill.SagittalPx, m.At(cx+reachMM, cy, "y", seamsight.Through).BlurPx, 0.05, "f/%g", fNumber)

		direct := m.At(cx+7.5, cy, "x", seamsight.Direct)
		require.InEpsilon(t, want.BackdropPx, direct.BlurPx, 1e-6, "f/%g", fNumber)
		require.InEpsilon(t, direct.BlurPx, m.AtStop(2*fNumber).AtStop(fNumber).At(cx+7.5, cy, "x",
			seamsight.Direct).BlurPx, 1e-9, "a stop and back")
	}
}

// Beside the drop everything shows D/(D+L) as large, except what is out of the frame or behind the drop.
func TestBesideTheDrop(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Camera.FrameWidthMM, s.Camera.FNumber = 60, 45 })
	m := seamsight.New(p, even(0.3), 2)
	cx, cy := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
	pxPerMM := 300.0 / 700 * 10
	s := m.At(cx+40, cy-30, "x", seamsight.Direct)
	require.InDelta(t, 300+40*pxPerMM, s.Frame.XPx, 1e-6)
	require.InDelta(t, 200-30*pxPerMM, s.Frame.YPx, 1e-6)
	require.InEpsilon(t, pxPerMM, s.PxPerMM, 1e-9)
	require.InEpsilon(t, 2*pxPerMM, s.WidthPx, 1e-9)
	require.Equal(t, seamsight.Shows, s.Verdict)

	halfBlurMM := s.BlurPx / 2 / pxPerMM
	edgeMM := 300 / pxPerMM
	require.NotEqual(t, seamsight.OutOfSight, m.At(cx+edgeMM+0.5*halfBlurMM, cy, "x", seamsight.Direct).Verdict,
		"its blur comes into the frame")
	require.Equal(t, seamsight.OutOfSight, m.At(cx+edgeMM+halfBlurMM+2, cy, "x", seamsight.Direct).Verdict)

	hiddenMM := p.Sight().ApparentRadiusMM() * 700 / 300 // what the drop hides of the board
	require.Equal(t, seamsight.Shows, m.At(cx+hiddenMM+0.1, cy, "x", seamsight.Direct).Verdict)
	require.NotEqual(t, seamsight.OutOfSight, m.At(cx+hiddenMM-0.5*halfBlurMM, cy, "x", seamsight.Direct).Verdict,
		"its blur comes out from behind the drop")
	behind := plan(t, func(s *layout.Setup) { s.Camera.FNumber = 64 })
	require.Equal(t, seamsight.OutOfSight, seamsight.New(behind, even(0.3), 2).At(cx, cy, "x", seamsight.Direct).Verdict,
		"the middle of a drop hides more than blurs out")
}
