package artwork

import (
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"
)

// pixelAt is the pixel (x, y) of the upright picture, wherever its stored bounds begin.
func pixelAt(p *Picture, x, y int) color.Color {
	b := p.Image.Bounds()
	sx, sy := p.Upright.Source(x, y, b.Dx(), b.Dy())
	return p.Image.At(b.Min.X+sx, b.Min.Y+sy)
}

// A crop has the very pixels of its part of the upright picture, however the picture is stored, and so has a crop of a
// crop.
func TestCrop(t *testing.T) {
	const w, h = 14, 10 // stored
	grey, rgb := image.NewGray(image.Rect(0, 0, w, h)), image.NewRGBA(image.Rect(0, 0, w, h))
	planes := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio444)
	for y := range h {
		for x := range w {
			v := uint8(w*y + x)
			grey.SetGray(x, y, color.Gray{v})
			rgb.SetRGBA(x, y, color.RGBA{v, 255 - v, v, 255})
			planes.Y[planes.YOffset(x, y)], planes.Cb[planes.COffset(x, y)], planes.Cr[planes.COffset(x, y)] = v, v, 255-v
		}
	}
	for _, m := range []image.Image{grey, rgb, planes} {
		for _, turn := range uprights[1:] {
			p := &Picture{Image: m, Upright: turn}
			part := image.Rect(2, 3, 9, 8)
			crop, err := p.Crop(part)
			require.NoError(t, err)
			requirePart(t, p, crop, part)
			smaller, err := crop.Crop(image.Rect(1, 1, 3, 5))
			require.NoError(t, err)
			requirePart(t, p, smaller, image.Rect(3, 4, 5, 8))
		}
	}
	p := &Picture{Image: grey}
	whole, err := p.Crop(image.Rect(0, 0, w, h))
	require.NoError(t, err)
	requirePart(t, p, whole, image.Rect(0, 0, w, h))
	for name, part := range map[string]image.Rectangle{
		"nothing": {}, "a column too many": image.Rect(0, 0, w+1, h), "a row too many": image.Rect(0, 0, w, h+1),
		"from before the first": image.Rect(-1, 0, w, h),
	} {
		_, err := p.Crop(part)
		require.ErrorContains(t, err, "is not in a picture of 14x10 pixels", name)
	}
}

// requirePart fails unless crop is that part of the upright picture.
func requirePart(t *testing.T, p, crop *Picture, part image.Rectangle) {
	t.Helper()
	w, h := crop.Size()
	require.Equal(t, part.Size(), image.Pt(w, h))
	for y := range h {
		for x := range w {
			require.Equal(t, pixelAt(p, part.Min.X+x, part.Min.Y+y), pixelAt(crop, x, y), "%T %v, pixel (%d, %d)", p.Image,
				p.Upright, x, y)
		}
	}
}
