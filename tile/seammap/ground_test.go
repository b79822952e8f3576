package seammap

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// The board ends at the picture's height, which the drop shows at the fill: within that it is picture, and past it
// the dark of the room, up and down alike; toward the edge that mirrors the board. At 0.98 of the radius, 78.5
// degrees of incidence, water mirrors 0.30 of the light (Fresnel's formulas by hand): level 153 for white over the
// dark.
func TestDropSeesPastTheBoard(t *testing.T) {
	p := plan(t, nil)
	_, drop := mapOf(p)
	got := image.NewRGBA(image.Rect(0, 0, widthPx, drop.square.Max.Y))
	ground(got, drop, inTheDrop(p, white()), 0)
	m := drop.middle()
	for _, c := range []struct {
		share float64 // of the drop's radius
		want  color.RGBA
	}{{0, paper}, {p.Picture.Fill - 0.01, paper}, {p.Picture.Fill + 0.01, wall},
		{0.98, color.RGBA{153, 153, 154, 255}}} {
		for _, way := range []float64{-1, 1} {
			at := got.RGBAAt(int(m.X), int(m.Y+way*c.share*drop.radiusPx))
			require.InDelta(t, float64(c.want.G), float64(at.G), 3, "%g of the radius", way*c.share)
		}
	}
}

// The drop's outline is smooth: where it halves a pixel, that is half as far from the paper around to the dark
// within, a board as dark as the room that is mirrored.
func TestOutlineOfTheDropIsSmooth(t *testing.T) {
	p := plan(t, nil)
	_, drop := mapOf(p)
	got := image.NewRGBA(image.Rect(0, 0, widthPx, drop.square.Max.Y))
	dark := image.NewGray(image.Rect(0, 0, 30, 20))
	for i := range dark.Pix {
		dark.Pix[i] = wall.G
	}
	ground(got, drop, inTheDrop(p, texture.New(&artwork.Picture{Image: dark})), 0)
	m := drop.middle()
	on := 0
	for y := drop.square.Min.Y; y < drop.square.Max.Y; y++ {
		for x := drop.square.Min.X; x < drop.square.Max.X; x++ {
			away := math.Hypot(float64(x)+0.5-m.X, float64(y)+0.5-m.Y) - drop.radiusPx
			if math.Abs(away) < 0.1 {
				on++
				require.InDelta(t, (float64(paper.G)+float64(wall.G))/2, float64(got.RGBAAt(x, y).G), 25, "at %d, %d", x, y)
			}
		}
	}
	require.Greater(t, on, 100)
}

// Detail that is finer than a pixel of the map is averaged: a chequered picture is even, and half as light as
// white (187.5 of 255, IEC 61966-2-1).
func TestFineDetailIsAveraged(t *testing.T) {
	p := plan(t, nil)
	_, drop := mapOf(p)
	m := image.NewGray(image.Rect(0, 0, 6000, 4000))
	for i := range m.Pix {
		m.Pix[i] = uint8(255 * ((i%6000 + i/6000) % 2))
	}
	got := image.NewRGBA(image.Rect(0, 0, widthPx, drop.square.Max.Y))
	ground(got, drop, inTheDrop(p, texture.New(&artwork.Picture{Image: m})), 0)
	middle := drop.middle()
	for y := range got.Rect.Dy() {
		for x := range widthPx {
			if math.Hypot(float64(x)-middle.X, float64(y)-middle.Y) < 0.7*drop.radiusPx {
				require.InDelta(t, 187.5, float64(got.RGBAAt(x, y).G), 12, "at %d, %d", x, y)
			}
		}
	}
}
