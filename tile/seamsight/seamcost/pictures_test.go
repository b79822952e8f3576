package seamcost_test

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// The pictures that placement is tried on: the harbour, and five of our own invention, drawn here. Each is
// light at places and busy or dark at others, in another way.
var pictures = []struct {
	name string
	draw func(u, v float64) float64 // grey, 0 to 1, at picture coordinates, the picture's width 1.5 of its height
}{
	{"harbour", nil},
	{"meadow", meadow},
	{"towers", towers},
	{"portrait", portrait},
	{"snow", snow},
	{"windows", windows},
}

// meadow is an even sky over grass that grows coarser toward the front.
func meadow(u, v float64) float64 {
	if v < 0.42 {
		return 0.75 - 0.3*v
	}
	scale := 500 / (0.2 + 2*(v-0.42))
	return 0.12 + 0.45*noise(u*scale, v*scale)
}

// towers are dark houses of many widths against a light evening.
func towers(u, v float64) float64 {
	block := math.Floor(u*11 + 0.3*math.Sin(7*u))
	if v > 0.25+0.5*lattice(block, 3) {
		return 0.04 + 0.05*noise(u*300, v*200)
	}
	return 0.55 + 0.3*(1-v)
}

// portrait is a light face on a dark ground with a patterned coat.
func portrait(u, v float64) float64 {
	x, y := (u-0.5)*1.5, v-0.4
	switch {
	case math.Hypot(x/0.19, y/0.25) < 1:
		return 0.8 - 0.2*math.Hypot(x, y) - 0.1*noise(u*40, v*40)
	case v > 0.62+0.8*x*x:
		return 0.3 + 0.25*math.Sin(90*x)*math.Sin(90*y)
	default:
		return 0.05 + 0.03*noise(u*20, v*20)
	}
}

// snow is a white slope with a band of trees across it and single trees below.
func snow(u, v float64) float64 {
	edge := 0.38 + 0.05*math.Sin(9*u)
	if v > edge && v < edge+0.16 {
		return 0.05 + 0.25*noise(u*400, v*120)
	}
	if v > 0.6 && lattice(math.Floor(u*40), math.Floor(v*12)) > 0.9 {
		return 0.15
	}
	return 0.92 - 0.1*v
}

// windows are lit panes, here and there, in a dark wall.
func windows(u, v float64) float64 {
	column, row := math.Floor(u*14), math.Floor(v*8)
	x, y := u*14-column, v*8-row
	if x > 0.2 && x < 0.8 && y > 0.2 && y < 0.85 && lattice(column, row) > 0.55 && math.Abs(x-0.5) > 0.03 {
		return 0.85
	}
	return 0.06
}

// lattice is a number from 0 to 1 that belongs to a pair of whole numbers: scrambled, yet the same every time.
func lattice(x, y float64) float64 {
	h := uint32(int32(x))*0x9e3779b1 ^ uint32(int32(y))*0x85ebca6b
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 13
	return float64(h) / math.MaxUint32
}

// noise goes smoothly between the lattice's numbers.
func noise(x, y float64) float64 {
	x0, y0 := math.Floor(x), math.Floor(y)
	fx, fy := x-x0, y-y0
	upper := lattice(x0, y0)*(1-fx) + lattice(x0+1, y0)*fx
	lower := lattice(x0, y0+1)*(1-fx) + lattice(x0+1, y0+1)*fx
	return upper*(1-fy) + lower*fy
}

// paint is a picture as a texture; the harbour, which has no drawing here, is read from the examples.
func paint(t testing.TB, draw func(u, v float64) float64) *texture.Texture {
	t.Helper()
	if draw == nil {
		art, err := artwork.Open("../../../examples/harbour/harbour.jpg", artwork.Default)
		require.NoError(t, err)
		return texture.New(art)
	}
	const w, h = 1800, 1200
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			level := draw((float64(x)+0.5)/w, (float64(y)+0.5)/h)
			m.SetGray(x, y, color.Gray{Y: uint8(math.Round(255 * max(0, min(level, 1))))})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}
