package proof

import (
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// whiteBoard is the light from a place of the frame, in pixels from its middle, where a drop of water of radius 2.5
// hangs 300 mm before the pupil and 200 before an even white board of that half-size in the dark: 1 beside the drop,
// whose outline is the tangent cone's, and in it what comes through and what its front mirrors. It is worked out in the
// ray's plane by angles (Descartes: turned by 2(i - r) through the drop, by 180 degrees less 2i at its front), with
// Fresnel's sines and tangents.
func whiteBoard(xPx, yPx, pixelMM, halfWidthMM, halfHeightMM float64) float64 {
	const radiusMM, cameraMM, distanceMM, index = 2.5, 300, 200, 1.333
	awayPx := math.Hypot(xPx, yPx)
	a := math.Atan(awayPx * pixelMM / cameraMM)
	impactMM := cameraMM * math.Sin(a)
	if impactMM >= radiusMM {
		return 1
	}
	i := math.Asin(impactMM / radiusMM)
	r := math.Asin(impactMM / radiusMM / index)
	across, in := math.Pow(math.Sin(i-r)/math.Sin(i+r), 2), math.Pow(math.Tan(i-r)/math.Tan(i+r), 2)
	// shines tells whether a ray that leaves at such an angle to the axis, so far from the middle, meets the board.
	shines := func(angle, besideMM float64) float64 {
		if math.Abs(angle) >= math.Pi/2 {
			return 0
		}
		y := distanceMM*math.Tan(angle) + besideMM/math.Cos(angle)
		if math.Abs(y*xPx/awayPx) > halfWidthMM || math.Abs(y*yPx/awayPx) > halfHeightMM {
			return 0
		}
		return 1
	}
	through := (math.Pow(1-across, 2) + math.Pow(1-in, 2)) / 2 * shines(a-2*(i-r), impactMM)
	return through + (across+in)/2*shines(a+math.Pi-2*i, impactMM)
}

// In focus, a pixel on the drop's outline is as light as its parts are, counted point by point: beside the drop is an
// even white board, which the skin mirrors the less the further in, down to the dark rim.
func TestOutlineIsSmooth(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Fill = 0.7 })
	require.True(t, p.Backdrop.Uncut, "so that its paper is the white board")
	paper := p.Backdrop.PaperOnBoard(p.Sheets[0])
	frame := Pinhole(p, p.Camera, grey(255))
	pixelMM := p.Camera.PixelMM()
	radiusPx := 2.5 * 300 / math.Sqrt(300*300-2.5*2.5) / pixelMM
	for _, c := range []struct {
		name        string
		from, to    float64 // of the radius
		square, off float64 // the most that pixels may be off
	}{
		{"outline", 1 - 0.8/radiusPx, 1 + 0.8/radiusPx, 0.025, 0.09}, // rays wholly inside or outside come to 0.037 and 0.15
		{"skin", 0.93, 1 - 0.8/radiusPx, 0.02, 0.09},
	} {
		square, worst, n := 0.0, 0.0, 0
		for j := range 320 {
			for i := range 480 {
				x, y := float64(i)+0.5-240, float64(j)+0.5-160
				if share := math.Hypot(x, y) / radiusPx; share < c.from || share > c.to {
					continue
				}
				const side = 20
				want := 0.0
				for b := range side {
					for a := range side {
						want += whiteBoard(x-0.5+(float64(a)+0.5)/side, y-0.5+(float64(b)+0.5)/side, pixelMM, paper.WidthMM/2,
							paper.HeightMM/2) / side / side
					}
				}
				off := math.Abs(float64(texture.Linear(frame.RGBAAt(i, j))[1]) - want)
				square, worst, n = square+off*off, max(worst, off), n+1
			}
		}
		t.Logf("%s: %d pixels, off by %.4f, at most %.4f", c.name, n, math.Sqrt(square/float64(n)), worst)
		require.Greater(t, n, 500, c.name)
		require.Less(t, math.Sqrt(square/float64(n)), c.square, c.name)
		require.Less(t, worst, c.off, c.name)
	}
}

// Near the outline, slopes are traced toward the drop's middle, where rays go through: within a pixel of it all
// round, a step either way still moves the landing.
func TestSlopesAtTheOutline(t *testing.T) {
	p := plan(t, nil)
	v := Scene{Plan: p, Camera: p.Camera, Picture: quarters()}.view()
	for _, drop := range []layout.Point{{}, {XMM: 1.5, YMM: -0.8}} {
		radiusMM := v.outline.WidthMM - 0.3*p.Camera.PixelMM()
		for turn := 0.1; turn < 2*math.Pi; turn += 0.4 {
			sin, cos := math.Sincos(turn)
			s, ok := v.slopes(layout.Point{XMM: drop.XMM + radiusMM*cos, YMM: drop.YMM + radiusMM*sin}, drop)
			require.True(t, ok)
			require.NotZero(t, s.across, "turn %g", turn)
			require.NotZero(t, s.down, "turn %g", turn)
		}
	}
}
