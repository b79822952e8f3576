package texture

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// quarters is a picture of four flat quarters: red, green, blue, yellow from the top left by rows.
func quarters(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	colours := [4]color.RGBA{{200, 0, 0, 255}, {0, 200, 0, 255}, {0, 0, 200, 255}, {200, 200, 0, 255}}
	for y := range h {
		for x := range w {
			m.SetRGBA(x, y, colours[2*(2*y/h)+2*x/w])
		}
	}
	return m
}

func TestAtPicksThePlace(t *testing.T) {
	tex := New(&artwork.Picture{Image: quarters(64, 40)})
	for _, c := range []struct {
		name    string
		u, v    float64
		spanPx  float64
		r, g, b uint8
	}{
		{"top left", 0.25, 0.25, 1, 200, 0, 0},
		{"top right", 0.75, 0.25, 4, 0, 200, 0},
		{"bottom left", 0.25, 0.75, 8, 0, 0, 200},
		{"bottom right", 0.75, 0.75, 1, 200, 200, 0},
		{"beyond the corner its pixel goes on", 1.5, 1.5, 1, 200, 200, 0},
		{"before the corner", -1, -1, 1, 200, 0, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, color.RGBA{c.r, c.g, c.b, 255}, tex.At(c.u, c.v, c.spanPx).SRGB())
		})
	}
}

func TestOrientationIsHonoured(t *testing.T) {
	tex := New(&artwork.Picture{Image: quarters(64, 40), Upright: flip.Turn{SwapXY: true, ReverseX: true}})
	w, h := tex.Size()
	require.Equal(t, []int{40, 64}, []int{w, h})
	for _, spanPx := range []float64{1, 6} {
		require.Equal(t, color.RGBA{0, 200, 0, 255}, tex.At(0.25, 0.25, spanPx).SRGB()) // upright (x, y) is stored (w-1-y, x)
	}
}

// Half black and half white is half the light: IEC 61966-2-1 encodes 0.5 as 187.5 of 255.
func TestMeansAreOfLight(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 64, 64))
	for i := range m.Pix {
		if (i%64+i/64)%2 == 0 {
			m.Pix[i] = 255
		}
	}
	got := New(&artwork.Picture{Image: m}).At(0.5, 0.5, 16).SRGB()
	require.InDelta(t, 187.5, float64(got.R), 1)
}

// Every level comes back through linear light as itself.
func TestCurveThereAndBack(t *testing.T) {
	for v := range 256 {
		c := color.RGBA{uint8(v), uint8(v), uint8(v), 255}
		require.Equal(t, c, Linear(c).SRGB())
	}
	require.Equal(t, color.RGBA{255, 255, 255, 255}, Light{7, 2, 1.01}.SRGB())
	require.InDelta(t, 0.2140, float64(toLinear[127]+toLinear[128])/2, 0.001) // IEC 61966-2-1: level 127.5
}

func TestReducedAndOddSizes(t *testing.T) {
	for _, size := range []image.Point{{1, 1}, {1, 9}, {7, 3}, {640, 1}, {333, 500}} {
		tex := New(&artwork.Picture{Image: quarters(size.X, size.Y)})
		for _, side := range []int{1, 10, 100} {
			r := tex.Reduced(side).Rect
			require.LessOrEqual(t, max(r.Dx(), r.Dy()), side)
		}
		for _, spanPx := range []float64{0, 1, 3, 1e9, math.Inf(1)} {
			require.NotPanics(t, func() { tex.At(0.3, 0.9, spanPx) }, "%v %v", size, spanPx)
		}
	}
}
