package texture

import (
	"image"
	"image/color"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// A picture of four flat quarters, 100 by 80 mm, in the middle of a board of 200 by 100 mm, as each body has it hang.
func TestHung(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 100, 80))
	for y := range 80 {
		for x := range 100 {
			m.SetGray(x, y, color.Gray{uint8(50 + 50*(2*(y/40)+x/50))}) // 50 100 over 150 200
		}
	}
	picture := New(&artwork.Picture{Image: m})
	for _, c := range []struct {
		name     string
		reverses flip.Reversal
		corners  [4]uint8 // of the picture on the board: top left, top right, bottom left, bottom right
	}{
		{"ball", flip.ReversesBoth, [4]uint8{200, 150, 100, 50}},
		{"upright rod", flip.ReversesX, [4]uint8{100, 50, 200, 150}},
		{"level rod", flip.ReversesY, [4]uint8{150, 200, 50, 100}},
	} {
		for _, surround := range []layout.Surround{"#0a1e28", layout.Stretch} {
			p := layout.Plan{
				Drop:     layout.Drop{Reverses: c.reverses},
				Picture:  layout.Picture{WidthMM: 100, HeightMM: 80},
				Backdrop: layout.Backdrop{WidthMM: 200, HeightMM: 100, Surround: surround},
			}
			h := Hang(p, picture)
			at := func(x, y, span float64) color.RGBA { return h.At(x, y, span).SRGB() }
			for i, want := range c.corners {
				x, y := 75+50*float64(i%2), 30+40*float64(i/2)
				require.Equal(t, want, at(x, y, 0).G, "%s, place %g, %g", c.name, x, y)
			}
			if surround == layout.Stretch {
				require.Equal(t, c.corners[0], at(20, 30, 0).G, "the picture's left edge goes on")
				require.Equal(t, c.corners[3], at(190, 95, 0).G, "and so does its corner")
				continue
			}
			beyond := color.RGBA{0x0a, 0x1e, 0x28, 0xff}
			for _, place := range [][2]float64{{49.9, 50}, {150.1, 50}, {100, 9.9}, {100, 90.1}, {1, 1}, {-5, 50}} {
				require.Equal(t, beyond, at(place[0], place[1], 0), "%s, %v", c.name, place)
			}
			// Half of a patch about the picture's edge is picture: the mean of both lights.
			want := Light{}.Add(Linear(color.RGBA{c.corners[0], c.corners[0], c.corners[0],
				0xff})).Add(Linear(beyond)).Scale(0.5)
			got := h.At(50, 30, 4)
			for k := range want {
				require.InDelta(t, want[k], got[k], 1e-3)
			}
		}
	}
}
