package texture

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour/icctest"
)

// TestFirstLevelNotHeld: each pixel of the first level comes out as it does where the level is held, to the bit.
func TestFirstLevelNotHeld(t *testing.T) {
	grey := image.NewGray(image.Rect(0, 0, 31, 17))
	for i := range grey.Pix {
		grey.Pix[i] = uint8(i * 37)
	}
	planes := image.NewYCbCr(image.Rect(0, 0, 33, 20), image.YCbCrSubsampleRatio420)
	for i := range planes.Y {
		planes.Y[i] = uint8(i * 29)
	}
	for i := range planes.Cb {
		planes.Cb[i], planes.Cr[i] = uint8(i*13), uint8(i*7)
	}
	for name, p := range map[string]*artwork.Picture{
		"colour":      {Image: quarters(61, 40)},
		"turned":      {Image: quarters(61, 40), Upright: flip.Turn{SwapXY: true, ReverseX: true}},
		"own colours": {Image: quarters(62, 41), ICC: icctest.AdobeRGB.Profile()},
		"grey":        {Image: grey},
		"planes":      {Image: planes},
		"one column":  {Image: flat(1, 9, color.RGBA{200, 100, 50, 255})},
	} {
		t.Run(name, func(t *testing.T) {
			tex := New(p)
			require.True(t, tex.holdsFirst())
			held := tex.half(1)
			n := held.channels
			for y := range held.height {
				for x := range held.width {
					pixel := tex.firstPixel(x, y)
					require.Equal(t, held.row(y)[n*x:n*(x+1)], pixel[:n], "at %d, %d", x, y)
				}
			}
			for i := range 100 {
				u, v := float64(i)/99, float64(i*i%100)/99
				require.Equal(t, tex.bilinear(1, u, v), tex.bilinearFirst(u, v))
			}
		})
	}
}
