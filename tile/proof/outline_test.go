package proof

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// In focus, a pixel on the drop's outline is as light as the share of it that lies outside: beside the drop is
// an even white board, and its rim is dark. The outline is a circle of radius R D / sqrt(D² - R²), the tangent
// cone's in the drop's plane; shares are counted point by point.
func TestOutlineIsSmooth(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Fill = 0.7 })
	m := image.NewGray(image.Rect(0, 0, 30, 20))
	for i := range m.Pix {
		m.Pix[i] = 255
	}
	frame := Pinhole(p, p.Camera, texture.New(&artwork.Picture{Image: m}))
	radiusPx := 2.5 * 300 / math.Sqrt(300*300-2.5*2.5) / p.Camera.PixelMM()
	square, worst, n := 0.0, 0.0, 0
	for j := range 320 {
		for i := range 480 {
			if away := math.Hypot(float64(i)+0.5-240, float64(j)+0.5-160) - radiusPx; math.Abs(away) > 0.8 {
				continue
			}
			const side = 40
			outside := 0
			for b := range side {
				for a := range side {
					if math.Hypot(float64(i)+(float64(a)+0.5)/side-240, float64(j)+(float64(b)+0.5)/side-160) > radiusPx {
						outside++
					}
				}
			}
			got := float64(texture.Linear(color.RGBA(frame.RGBAAt(i, j)))[1])
			off := got - float64(outside)/side/side
			square, worst, n = square+off*off, max(worst, math.Abs(off)), n+1
		}
	}
	require.Greater(t, n, 500)
	// Rays that are each wholly inside or outside come to 0.037 and 0.15.
	require.Less(t, math.Sqrt(square/float64(n)), 0.025)
	require.Less(t, worst, 0.09)
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
