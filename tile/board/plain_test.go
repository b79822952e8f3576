package board

import (
	"image"
	"image/color"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour/icctest"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// A picture of four flat quarters as each body has it hang. A ray sees what a whole patch does.
func TestPlain(t *testing.T) {
	picture := quarters()
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
			s := NewDrawing(flatPlan(surround, c.reverses), picture)
			at := func(x, y float64) color.RGBA {
				whole, ray := s.At(x, y, Patch{}), s.AtRay(x, y, Patch{}, nil)
				require.Equal(t, whole, ray)
				return whole.Print.SRGB()
			}
			for i, want := range c.corners {
				x, y := 75+50*float64(i%2), 30+40*float64(i/2)
				require.Equal(t, want, at(x, y).G, "%s, place %g, %g", c.name, x, y)
				require.Equal(t, 1.0, s.At(x, y, Patch{}).Picture)
			}
			if surround == layout.Stretch {
				require.Equal(t, c.corners[0], at(20, 30).G, "the picture's left edge goes on")
				require.Equal(t, c.corners[3], at(190, 95).G, "and so does its corner")
				require.Equal(t, c.corners[3], at(205, 105).G, "a drawing has it go on past the board")
				continue
			}
			beyond := color.RGBA{0x0a, 0x1e, 0x28, 0xff}
			for _, place := range [][2]float64{{49.9, 50}, {150.1, 50}, {100, 9.9}, {100, 90.1}, {1, 1}, {-5, 50}} {
				require.Equal(t, beyond, at(place[0], place[1]), "%s, %v", c.name, place)
				require.Equal(t, 1.0, s.At(place[0], place[1], Patch{}).Surround)
			}
			// Half of a patch about the picture's edge is picture: the mean of both lights.
			want := texture.Linear(color.RGBA{c.corners[0], c.corners[0], c.corners[0], 0xff}).Mix(texture.Linear(beyond), 0.5)
			got := s.At(50, 30, Box(4, 4)).Print
			for k := range want {
				require.InDelta(t, want[k], got[k], 1e-3)
			}
		}
	}
}

// The board ends in a room, but for a drawing of it.
func TestBoardEnds(t *testing.T) {
	s := New(flatPlan(layout.Stretch, flip.ReversesBoth), quarters())
	for _, place := range [][2]float64{{-0.1, 50}, {200.1, 50}, {100, -0.1}, {100, 100.1}} {
		require.Equal(t, Seen{None: 1}, s.At(place[0], place[1], Patch{}), "%v", place)
	}
	require.Equal(t, 1.0, s.At(0.1, 50, Patch{}).Picture)
	require.InDelta(t, 0.25, s.At(0, 0, Box(3, 5)).Picture, 1e-9, "a corner of the board is a quarter of what is about it")
	require.InDelta(t, 0.75, s.At(0, 0, Box(3, 5)).None, 1e-9)
	require.InDelta(t, 200.0/800, s.At(100, 50, Box(800, 60)).Picture, 1e-9, "a patch wider than the board")
}

// Printed for lamps, picture and surround have as much of their light as the plan's compensation leaves them;
// bare paper has all of its own, and so has a drawing.
func TestLevelled(t *testing.T) {
	p := flatPlan("#808080", flip.ReversesBoth)
	p.LevelledFor = []layout.Lamp{{XMM: -300, YMM: 0, ZMM: 200}}
	p.Seams = []layout.Seam{{Axis: "x", AtMM: 80, ToMM: 100}}
	levelled, drawing := New(p, quarters()), NewDrawing(p, quarters())
	for _, x := range []float64{10, 60, 120, 190} {
		gain := float32(p.Level().Gain(x, 30))
		got, want := levelled.At(x, 30, Patch{}).Print, drawing.At(x, 30, Patch{}).Print
		require.InDelta(t, gain*want[1], got[1], 1e-6)
		require.InDelta(t, gain, levelled.InPicture(x, 30, 0).Gain, 1e-6)
	}
	require.Less(t, p.Level().Gain(10, 30), 0.5)
	seam := levelled.WithSeams(2).At(80, 30, Patch{})
	require.Equal(t, Seen{Paper: 1}, seam)
	require.Equal(t, white.Scale(0.5), seam.Under(0.5, white, nobody), "half lit, for bare paper is not levelled")
}

// Under lamps print and paper are as bright as those leave them, and the dark where there is no sheet as it is.
func TestUnder(t *testing.T) {
	s := Seen{Print: texture.Light{0.1, 0.2, 0.3}, Picture: 0.4, Surround: 0.1, Paper: 0.25, None: 0.25}
	got := s.Under(0.5, texture.Light{0.8, 0.6, 0.4}, texture.Light{0.04, 0.08, 0.12})
	for k, want := range []float64{0.5*(0.1+0.2) + 0.01, 0.5*(0.2+0.15) + 0.02, 0.5*(0.3+0.1) + 0.03} {
		require.InDelta(t, want, got[k], 1e-6)
	}
}

// A seam that ends at the board's edge runs on past it, so that all of what a patch there has of the board is
// seam; one that ends on the board ends there. Two of one line that meet are one.
func TestSeamEnds(t *testing.T) {
	p := flatPlan(layout.Stretch, flip.ReversesBoth)
	p.Seams = []layout.Seam{
		{Axis: "x", AtMM: 80, FromMM: 0, ToMM: 40}, {Axis: "x", AtMM: 80, FromMM: 40, ToMM: 70},
		{Axis: "y", AtMM: 70, FromMM: 80, ToMM: 200},
	}
	s := New(p, quarters()).WithSeams(3)
	for _, c := range []struct {
		name  string
		x, y  float64
		over  Patch
		paper float64
	}{
		{"at the board's top", 80, 0, Box(1, 4), 0.5},
		{"at its right", 200, 70, Box(4, 1), 0.5},
		{"where it ends", 80, 70, Box(1, 20), 0.5 + 0.5*0.5*1.5/10},
		{"where two meet", 80, 40, Box(1, 20), 1},
		{"at its side", 81.5, 30, Box(1, 4), 0.5},
		{"beside it", 82.1, 30, Box(1, 4), 0},
	} {
		require.InDelta(t, c.paper, s.At(c.x, c.y, c.over).Paper, 1e-9, c.name)
	}
}

// A surround's colour is in the artwork's own levels, as the sheets print it. What an outside colour engine
// makes of them, by "transicc -t1 -n -s -i FILE.icc -o '*sRGB'" of lcms 2.14, each channel rounded.
func TestSurroundInOwnColours(t *testing.T) {
	m := image.NewRGBA(image.Rect(0, 0, 37, 20))
	for i := 0; i < len(m.Pix); i += 4 {
		copy(m.Pix[i:], []uint8{200, 120, 100, 255})
	}
	picture := texture.New(&artwork.Picture{Image: m, ICC: icctest.AdobeRGB.Profile()})
	s := New(flatPlan("#6e965a", flip.ReversesBoth), picture)
	requireNear(t, color.RGBA{224, 121, 99, 255}, s.At(100, 50, Box(1, 1)).Print.SRGB(), "the picture")
	requireNear(t, color.RGBA{87, 151, 86, 255}, s.At(20, 50, Box(1, 1)).Print.SRGB(), "the surround")
}

// requireNear allows a level: the table of encodings is that coarse.
func requireNear(t *testing.T, want, got color.RGBA, words string) {
	t.Helper()
	for i, v := range []uint8{got.R, got.G, got.B} {
		require.InDelta(t, float64([]uint8{want.R, want.G, want.B}[i]), float64(v), 1, words)
	}
}
