package raster

import (
	"image"
	"image/color"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
)

// At the artwork's own pixels planes are the same picture as Cut's, to the last level, however it is turned, cropped and cut.
func TestPlanesAreTheSamePicture(t *testing.T) {
	const seed = 8
	random := rand.New(rand.NewSource(seed))
	whole := noise("4:2:0", 64, 48, random).(*image.YCbCr)
	for _, art := range []*image.YCbCr{whole, whole.SubImage(image.Rect(6, 4, 58, 40)).(*image.YCbCr)} {
		for i := range 8 {
			turn := flip.Turn{SwapXY: i&1 != 0, ReverseX: i&2 != 0, ReverseY: i&4 != 0}
			w, h := turn.Size(art.Rect.Dx(), art.Rect.Dy())
			s := NewSource(&artwork.Picture{Image: art}, turn, Grid{w, h})
			for range 20 {
				x, y := 2*random.Intn(w/2)-4, 2*random.Intn(h/2)-4
				r := image.Rect(x, y, x+2+2*random.Intn(20), y+2+2*random.Intn(20))
				planes, ok := s.CutPlanes(r)
				require.True(t, ok)
				want := s.Cut(r).(*image.RGBA)
				require.Equal(t, want.Rect, planes.Rect)
				for y := range r.Dy() {
					for x := range r.Dx() {
						require.Equal(t, want.RGBAAt(x, y), color.RGBAModel.Convert(planes.YCbCrAt(x, y)), "seed %d, %+v, %v at %d, %d", seed, turn, r, x, y)
					}
				}
			}
		}
	}
}

// Shrunk, each plane is filtered by itself: luma is then that of the same artwork in grey, exactly.
func TestPlanesShrink(t *testing.T) {
	art := noise("4:2:0", 96, 64, rand.New(rand.NewSource(9))).(*image.YCbCr)
	grid := Grid{40, 26}
	planes, ok := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, grid).CutPlanes(image.Rect(-2, 0, 42, 26))
	require.True(t, ok)
	luma := &image.Gray{Pix: art.Y, Stride: art.YStride, Rect: art.Rect}
	want := NewSource(&artwork.Picture{Image: luma}, flip.HalfTurn, grid).Cut(image.Rect(-2, 0, 42, 26)).(*image.Gray)
	require.Equal(t, want.Pix, planes.Y)
	require.Len(t, planes.Cb, 22*13)
}

func TestPlanesRefused(t *testing.T) {
	art := noise("4:2:0", 64, 48, rand.New(rand.NewSource(8))).(*image.YCbCr)
	colour := noise("colour", 64, 48, rand.New(rand.NewSource(8)))
	source := func(m image.Image, g Grid) *Source { return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, g) }
	even := image.Rect(0, 0, 8, 8)
	for _, c := range []struct {
		name string
		s    *Source
		r    image.Rectangle
	}{
		{"red, green and blue", source(colour, Grid{64, 48}), even},
		{"an odd artwork", source(art.SubImage(image.Rect(0, 0, 63, 48)), Grid{63, 48}), even},
		{"an odd crop", source(art.SubImage(image.Rect(1, 0, 63, 48)), Grid{62, 48}), even},
		{"an odd grid", source(art, Grid{33, 24}), even},
		{"an odd rectangle", source(art, Grid{64, 48}), image.Rect(1, 0, 9, 8)},
		{"in a surround", source(art, Grid{64, 48}).Surround(layout.Surround("#102030")), even},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, ok := c.s.CutPlanes(c.r)
			require.False(t, ok)
		})
	}
}

func TestEven(t *testing.T) {
	require.Equal(t, image.Rect(-4, 0, 2, 8), Even(image.Rect(-3, 1, 1, 7)))
	require.Equal(t, image.Rect(-4, 0, 2, 8), Even(image.Rect(-4, 0, 2, 8)))
}
