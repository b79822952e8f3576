package raster

import (
	"image"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// In a surround, a rectangle of the grid is the picture's own cut inside and the colour outside, pixel by
// pixel, whether filtered or not, and any rectangle is the same pixels as that part of the whole.
func TestCutInASurround(t *testing.T) {
	const seed = 34
	random := rand.New(rand.NewSource(seed))
	for _, kind := range kinds {
		for _, surround := range []layout.Surround{"#20a0ff", "#777777", layout.Stretch} {
			for _, shrink := range []int{1, 2} {
				art := noise(kind, 40, 26, random)
				grid := Grid{40 / shrink, 26 / shrink}
				picture := &artwork.Picture{Image: art}
				plain := NewSource(picture, flip.HalfTurn, grid, half)
				s := NewSource(picture, flip.HalfTurn, grid, half).Surround(surround)
				c, coloured := surround.Colour()
				require.Equal(t, kind == "grey" && surround != "#20a0ff", s.Gray())
				for range 30 {
					x, y := random.Intn(80)-30, random.Intn(60)-25
					r := image.Rect(x, y, x+1+random.Intn(60), y+1+random.Intn(50))
					got, own := s.Cut(r), plain.Cut(r)
					require.Equal(t, image.Rect(0, 0, r.Dx(), r.Dy()), got.Bounds())
					_, gray := got.(*image.Gray)
					require.Equal(t, s.Gray(), gray)
					for j := range r.Dy() {
						for i := range r.Dx() {
							at := image.Pt(x+i, y+j)
							want := rgba(own.At(i, j))
							if coloured && !at.In(image.Rect(0, 0, grid.WidthPx, grid.HeightPx)) {
								want = c
							}
							if got := rgba(got.At(i, j)); want != got {
								require.Equal(t, want, got, "seed %d, %s, %s, %v", seed, kind, surround, at)
							}
						}
					}
				}
			}
		}
	}
}

// Where the picture does not lie in the board's corner, the grid starts at the picture's corner and ends on
// its far one.
func TestGridLiesOnThePicture(t *testing.T) {
	g := Grid{800, 600}
	picture := layout.Rect{XMM: 123.4, YMM: 56.7, WidthMM: 400, HeightMM: 300}
	require.Equal(t, image.Rect(0, 0, 800, 600), g.Pixels(picture, picture))
	require.Equal(t, image.Rect(-20, -10, 0, 5),
		g.Pixels(picture, layout.Rect{XMM: 113.4, YMM: 51.7, WidthMM: 10, HeightMM: 7.5}))
	back := g.OnBoard(picture, image.Rect(-20, -10, 0, 5))
	require.InDelta(t, 113.4, back.XMM, 1e-9)
	require.InDelta(t, 51.7, back.YMM, 1e-9)
	require.InDelta(t, 123.4, back.RightMM(), 1e-9)
	require.InDelta(t, 2.0, g.Resolution(picture).PixelsPerMM(), 1e-12)
}

// BenchmarkCutInASurround cuts sheets of which half is surround.
func BenchmarkCutInASurround(b *testing.B) {
	art := image.NewRGBA(image.Rect(0, 0, 4000, 3000))
	for i := range art.Pix {
		art.Pix[i] = 0xff
	}
	s := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{4000, 3000}, half).
		Surround(layout.Surround("#203040"))
	r := image.Rect(-1000, 0, 1000, 2000)
	for b.Loop() {
		s.Cut(r)
	}
	b.ReportMetric(float64(r.Dx()*r.Dy())*float64(b.N)/1e6/b.Elapsed().Seconds(), "Mpixel/s")
}

// Sheets are grey only where both the artwork and what stands beyond it are, by all three of its colours.
func TestPrintsGray(t *testing.T) {
	grey, coloured := image.NewGray(image.Rect(0, 0, 2, 2)), image.NewRGBA(image.Rect(0, 0, 2, 2))
	for _, c := range []struct {
		name     string
		art      image.Image
		surround layout.Surround
		want     bool
	}{
		{"grey", grey, "", true},
		{"grey, stretched", grey, layout.Stretch, true},
		{"grey in grey", grey, "#202020", true},
		{"grey in a red", grey, "#302020", false},
		{"grey in a green", grey, "#203020", false},
		{"grey in a blue", grey, "#202030", false},
		{"coloured", coloured, "", false},
		{"coloured in grey", coloured, "#202020", false},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, PrintsGray(c.art, c.surround)) })
	}
}

// A pixel that shows some of the picture is mixed to the nearest level.
func TestMixRoundsToTheNearest(t *testing.T) {
	for _, paper := range []uint8{0, 128, 255} {
		c := newCanvas(image.Rect(0, 0, 1, 1), true, gray(paper))
		for share := 0; share <= 256; share++ {
			for v := range 256 {
				c.mix(0, 0, []byte{uint8(v)}, share)
				exact := (float64(v)*float64(share) + float64(paper)*float64(256-share)) / 256
				if got := float64(c.pix[0]); got < exact-0.5 || got > exact+0.5 {
					t.Fatalf("%d/256 of %d on %d is %v, want %v to the nearest", share, v, paper, got, exact)
				}
			}
		}
	}
}
