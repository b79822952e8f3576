package jobtest

import (
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// DrawPattern is an artwork of that size: upright and unlike itself under every turn and mirroring, with
// edges, a gradient and fine lines. Nothing in it is white, so bare paper shows.
func DrawPattern(w, h int) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			u, v := float64(x)/float64(w), float64(y)/float64(h)
			c := color.RGBA{uint8(40 + 120*u), uint8(60 + 100*v), uint8(180 - 90*u*v), 255}
			ring := math.Hypot(u-0.7, v-0.3) * 40
			switch {
			case u > 0.455 && u < 0.475 && v > 0.42 && v < 0.58, // a letter F in the middle, where the drop bends least
				u > 0.455 && u < 0.545 && v > 0.42 && v < 0.45,
				u > 0.455 && u < 0.530 && v > 0.485 && v < 0.515:
				c = color.RGBA{220, 210, 60, 255}
			case ring < 6 && int(ring)%2 == 0:
				c = color.RGBA{30, 30, 40, 255}
			case u > 0.1 && u < 0.3 && v > 0.7 && v < 0.9 && (x/6+y/6)%2 == 0:
				c = color.RGBA{200, 90, 90, 255}
			}
			m.SetRGBA(x, y, c)
		}
	}
	return m
}

// WritePattern writes the pattern as a PNG, and returns where.
func WritePattern(t testing.TB, w, h int) (path string, m *image.RGBA) {
	t.Helper()
	m = DrawPattern(w, h)
	path = filepath.Join(t.TempDir(), "pattern.png")
	f, err := os.Create(path)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, m))
	require.NoError(t, f.Close())
	return path, m
}
