package paint

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestFillLandsWhereThePlaceSays fills a box that reaches 2 to 4 right of the spot and 1 to 2 above it. The
// spot lies at 10, 10 in units, the canvas begins 4 units down, a unit is 2 pixels.
func TestFillLandsWhereThePlaceSays(t *testing.T) {
	for _, c := range []struct {
		name      string
		scale, up float64
		want      image.Rectangle // in pixels
	}{
		{"upright", 1, -1, image.Rect(24, 8, 28, 10)},
		{"mirror image", 1, 1, image.Rect(24, 14, 28, 16)},
		{"half as large", 0.5, -1, image.Rect(22, 10, 24, 11)},
	} {
		t.Run(c.name, func(t *testing.T) {
			canvas := NewCanvas(40, 20, 4, 2)
			place := Place{Canvas: canvas, XU: 10, YU: 10, Scale: c.scale, Up: c.up, Near: 0.5}
			place.Fill(Poly(2, 1, 4, 1, 4, 2, 2, 2), Flat(0xff0000))
			img := canvas.Image(0)
			for y := range 20 {
				for x := range 40 {
					red, in := img.RGBAAt(x, y).R > 127, image.Pt(x, y).In(c.want)
					require.Equal(t, in, red, "pixel %d, %d", x, y)
					_, near := canvas.Sample((float64(x)+0.5)/2, 4+(float64(y)+0.5)/2)
					require.Equal(t, in, near > 0.25, "nearness of pixel %d, %d", x, y)
				}
			}
		})
	}
}

// TestLightAddsAndFillCovers: by the law of screening, half over half is three quarters.
func TestLightAddsAndFillCovers(t *testing.T) {
	canvas := NewCanvas(4, 4, 0, 1)
	canvas.Rows(0, 4, Flat(0x808080))
	place := Place{Canvas: canvas, YU: 4, Scale: 1, Up: -1, Near: 1}
	place.Light(Poly(0, 0, 2, 0, 2, 4, 0, 4), Flat(0x808080))
	place.Fill(Poly(2, 0, 4, 0, 4, 4, 2, 4), Flat(0x404040))
	lit, near := canvas.Sample(0.5, 1.5)
	require.InDelta(t, 0.75, lit.R, 0.005)
	require.Zero(t, near, "light is not a thing")
	covered, near := canvas.Sample(3.5, 1.5)
	require.InDelta(t, 0.25, covered.R, 0.005)
	require.InDelta(t, 1, near, 0.005)
}
