package guide

import (
	"bytes"
	"image"
	"image/color"
	"image/draw"
	"image/jpeg"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// A picture is reduced to what the page can show and no further, stays upright, and its white stays paper-white.
func TestPicturesAreReducedToThePage(t *testing.T) {
	for _, c := range []struct {
		name         string
		wide, high   int // pixels
		wantW, wantH int
	}{
		{"larger than the page shows", 900, 600, 300, 200}, // 50.8 mm is 2 inches of 150 pixels
		{"smaller", 90, 60, 90, 60},
		{"larger one way", 900, 60, 300, 60},
	} {
		t.Run(c.name, func(t *testing.T) {
			// White, with a dark corner at the top left; it does not start at the origin.
			picture := image.NewRGBA(image.Rect(7, 9, 7+c.wide, 9+c.high))
			draw.Draw(picture, picture.Rect, image.White, image.Point{}, draw.Src)
			corner := image.Rectangle{picture.Rect.Min, picture.Rect.Min.Add(image.Pt(c.wide/3, c.high/3))}
			draw.Draw(picture, corner, image.NewUniform(color.RGBA{40, 60, 20, 255}), image.Point{}, draw.Src)

			j := jobOf(t, usual())
			b := newBook(j.document(), j, found{}, 1)
			b.geo.scale = 1
			b.placeImage(layout.Rect{WidthMM: 50.8, HeightMM: 50.8 * 2 / 3}, picture, photoPPI)
			placed, err := b.pictures[0]()
			require.NoError(t, err)
			got, err := jpeg.Decode(bytes.NewReader(placed.Data))
			require.NoError(t, err)
			require.Equal(t, image.Pt(c.wantW, c.wantH), got.Bounds().Size())
			grey := func(x, y float64) uint8 {
				return color.GrayModel.Convert(got.At(int(x*float64(c.wantW)), int(y*float64(c.wantH)))).(color.Gray).Y
			}
			require.InDelta(t, 49.5, grey(0.15, 0.15), 3) // 0.299 R + 0.587 G + 0.114 B (ITU-R BT.601)
			for _, at := range [][2]float64{{0.8, 0.15}, {0.15, 0.8}, {0.8, 0.8}} {
				require.EqualValues(t, 255, grey(at[0], at[1]))
			}
		})
	}
}
