package ink

import (
	"image"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// drawn is the smallest rectangle that holds all ink.
func drawn(m *image.RGBA) image.Rectangle {
	var box image.Rectangle
	for y := range m.Rect.Dy() {
		for x := range m.Rect.Dx() {
			if m.RGBAAt(x, y).A > 0 {
				box = box.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	return box
}

// A word centred on a point by Box lies in it, give or take the letters' own clear sides.
func TestWordsFillTheirBox(t *testing.T) {
	for _, size := range []float64{20, 27, 50} {
		for _, weight := range []Weight{Regular, Bold} {
			f := NewFace(weight, size)
			m := blank()
			box := f.Box(Point{150, 150}, "HEX")
			On(m).Text(f, Point{box.Left, box.Bottom}, red, "HEX")
			got := drawn(m)
			require.InDelta(t, box.Left, float64(got.Min.X), 0.1*size)
			require.InDelta(t, box.Right, float64(got.Max.X), 0.1*size)
			require.InDelta(t, box.Top, float64(got.Min.Y), 1.1)
			require.InDelta(t, box.Bottom, float64(got.Max.Y), 1.1)
			require.InDelta(t, 0.7, f.CapPx()/size, 0.08, "a capital is some seven tenths of the em, as in most sans serifs "+
				"(common practice, no source)")
		}
	}
}

func TestTextKeylineGoesRound(t *testing.T) {
	f := NewFace(Bold, 40)
	plain, rimmed := blank(), blank()
	On(plain).Text(f, Point{60, 150}, red, "R2C3 gy")
	On(rimmed).TextWithKeyline(f, Point{60, 150}, red, green, 3, "R2C3 gy")
	require.Equal(t, drawn(plain).Inset(-3), drawn(rimmed))
	for y := range 300 {
		for x := range 300 {
			if plain.RGBAAt(x, y).A == 0xff {
				require.Equal(t, red, rimmed.RGBAAt(x, y), "the letters stay")
			}
			if inRim := rimmed.RGBAAt(x, y).A > 0; inRim {
				require.Less(t, nearestInk(plain, x, y), 3.5, "the rim is round: no wider over corners, at (%d, %d)", x, y)
			}
		}
	}
}

// nearestInk is how far from a pixel the next one with ink is, in pixels; 9 where there is none near.
func nearestInk(m *image.RGBA, x, y int) float64 {
	nearest := 9.0
	for dy := -5; dy <= 5; dy++ {
		for dx := -5; dx <= 5; dx++ {
			if m.RGBAAt(x+dx, y+dy).A > 0 {
				nearest = min(nearest, math.Hypot(float64(dx), float64(dy)))
			}
		}
	}
	return nearest
}

func TestWrap(t *testing.T) {
	f := NewFace(Regular, 20)
	text := "One line of words, as long as it is, falls into several, and 41.2\u00a0mm stays together."
	for _, width := range []float64{1, 90, 160, 300, 5000} {
		lines := f.Wrap(text, width)
		require.Equal(t, text, strings.Join(lines, " "), "nothing is lost")
		for _, line := range lines {
			if strings.Contains(line, " ") {
				require.LessOrEqual(t, f.WidthPx(line), width)
			}
			require.False(t, strings.HasPrefix(line, "mm"))
		}
	}
	require.Len(t, f.Wrap(text, 5000), 1)
	require.Empty(t, f.Wrap("", 100))
}
