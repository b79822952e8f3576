package raster

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
)

// The ways that sheets store chroma.
const half, full = image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio444

// At the artwork's own pixels planes are the same picture as Cut's, to the last level, however it is turned,
// cropped and cut.
func TestPlanesAreTheSamePicture(t *testing.T) {
	const seed = 8
	random := rand.New(rand.NewSource(seed))
	whole := noise("4:2:0", 64, 48, random).(*image.YCbCr)
	for _, art := range []*image.YCbCr{whole, whole.SubImage(image.Rect(6, 4, 58, 40)).(*image.YCbCr)} {
		for _, turn := range turns {
			w, h := turn.Size(art.Rect.Dx(), art.Rect.Dy())
			s := NewSource(&artwork.Picture{Image: art}, turn, Grid{w, h}, half)
			for range 20 {
				x, y := 2*random.Intn(w/2)-4, 2*random.Intn(h/2)-4
				r := image.Rect(x, y, x+2+2*random.Intn(20), y+2+2*random.Intn(20))
				planes := s.CutYCbCr(r).(*image.YCbCr)
				want := s.Cut(r).(*image.RGBA)
				require.Equal(t, want.Rect, planes.Rect)
				for y := range r.Dy() {
					for x := range r.Dx() {
						if want, got := want.RGBAAt(x, y), rgba(planes.YCbCrAt(x, y)); want != got {
							require.Equal(t, want, got, "seed %d, %+v, %v at %d, %d", seed, turn, r, x, y)
						}
					}
				}
			}
		}
	}
}

// Shrunk or bent, each plane is filtered by itself: luma is then that of the same artwork in grey, exactly.
func TestPlanesFilterLumaAsGrey(t *testing.T) {
	art := noise("4:2:0", 96, 64, rand.New(rand.NewSource(9))).(*image.YCbCr)
	luma := &image.Gray{Pix: art.Y, Stride: art.YStride, Rect: art.Rect}
	bent := scenes()["straight"]
	for _, c := range []struct {
		name   string
		source func(m image.Image) *Source
	}{
		{"shrunk", func(m image.Image) *Source {
			return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, Grid{40, 26}, half)
		}},
		{"bent", func(m image.Image) *Source { return bent.source(m, Grid{90, 90}) }},
	} {
		t.Run(c.name, func(t *testing.T) {
			r := image.Rect(-2, 0, 42, 26)
			planes := c.source(art).CutYCbCr(r).(*image.YCbCr)
			require.Equal(t, c.source(luma).Cut(r).(*image.Gray).Pix, planes.Y)
			require.Len(t, planes.Cb, 22*13)
		})
	}
}

// smoothly is a picture of slow changes in luma and chroma, of a ratio, so that pictures of any two ratios
// show nearly the same.
func smoothly(ratio image.YCbCrSubsampleRatio, w, h int) *image.YCbCr {
	m := image.NewYCbCr(image.Rect(0, 0, w, h), ratio)
	across, down := chromaStep(ratio)
	for y := range h {
		for x := range w {
			m.Y[m.YOffset(x, y)] = uint8(130 + 70*math.Sin(float64(x)/31+float64(y)/47))
			// Chroma stands in the middle of the pixels that share it.
			cx, cy := float64(x/across*across)+float64(across)/2, float64(y/down*down)+float64(down)/2
			m.Cb[m.COffset(x, y)], m.Cr[m.COffset(x, y)] = uint8(128+40*math.Sin(cx/40)), uint8(128+40*math.Cos(cy/36-cx/50))
		}
	}
	return m
}

// subsampled is a picture of even size stored as 4:2:0: chroma is the mean of four pixels'.
func subsampled(m image.Image) *image.YCbCr {
	to := image.NewYCbCr(m.Bounds(), image.YCbCrSubsampleRatio420)
	for y := 0; y < to.Rect.Dy(); y += 2 {
		for x := 0; x < to.Rect.Dx(); x += 2 {
			blues, reds := 0, 0
			for i := range 4 {
				c := rgba(m.At(x+i%2, y+i/2))
				luma, blue, red := color.RGBToYCbCr(c.R, c.G, c.B)
				to.Y[to.YOffset(x+i%2, y+i/2)] = luma
				blues, reds = blues+int(blue), reds+int(red)
			}
			to.Cb[to.COffset(x, y)], to.Cr[to.COffset(x, y)] = uint8((blues+2)/4), uint8((reds+2)/4)
		}
	}
	return to
}

// Every way that planes go gives what red, green and blue give when they are then stored as 4:2:0 or 4:4:4, to what
// rounding them to luma and chroma takes.
func TestPlanesAgainstRedGreenAndBlue(t *testing.T) {
	const w, h = 240, 160
	bent := scenes()["straight"]
	lit := levelledPlan(t, layout.Lamp{XMM: -600, YMM: -400, ZMM: 900})
	for _, c := range []struct {
		name   string
		source func(art image.Image, chroma image.YCbCrSubsampleRatio) *Source
		r      image.Rectangle
	}{
		{"own pixels", func(m image.Image, chroma image.YCbCrSubsampleRatio) *Source {
			return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, Grid{w, h}, chroma)
		}, image.Rect(-6, -4, 100, 90)},
		{"shrunk", func(m image.Image, chroma image.YCbCrSubsampleRatio) *Source {
			return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, Grid{w / 2, h / 2}, chroma)
		}, image.Rect(-6, -4, 100, 84)},
		{"in a surround", func(m image.Image, chroma image.YCbCrSubsampleRatio) *Source {
			return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, Grid{w, h}, chroma).Surround("#2040c0")
		}, image.Rect(-20, -20, 100, 90)},
		{"bent, on white paper", func(m image.Image, chroma image.YCbCrSubsampleRatio) *Source {
			return bent.sourceIn(m, Grid{180, 180}, chroma)
		}, image.Rect(-20, -20, 120, 120)}, // four blocks; the next has the four at the other corner
		{"bent, in a surround", func(m image.Image, chroma image.YCbCrSubsampleRatio) *Source {
			return bent.sourceIn(m, Grid{180, 180}, chroma).Surround("#c08020")
		}, image.Rect(60, 60, 200, 200)},
		{"levelled", func(m image.Image, chroma image.YCbCrSubsampleRatio) *Source {
			return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, Grid{w, h}, chroma).Level(lit.Level(),
				lit.PictureOnBoard())
		}, image.Rect(0, 0, w, h)},
	} {
		for _, ratio := range []image.YCbCrSubsampleRatio{image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio422,
			image.YCbCrSubsampleRatio440, image.YCbCrSubsampleRatio444} {
			for _, chroma := range []image.YCbCrSubsampleRatio{half, full} {
				t.Run(fmt.Sprint(c.name, " ", ratio, " as ", chroma), func(t *testing.T) {
					s := c.source(smoothly(ratio, w, h), chroma)
					require.NotNil(t, s.planes)
					got, want := s.CutYCbCr(c.r), s.Cut(c.r)
					if chroma == half {
						want = subsampled(want)
					}
					require.Equal(t, want.Bounds(), got.Bounds())
					rms := rmsBetween(got, want)
					t.Logf("%.2f levels", rms)
					require.Less(t, rms, 1.0)
				})
			}
		}
	}
}

// rmsBetween is how far two pictures of a size differ, in levels of red, green and blue.
func rmsBetween(one, other image.Image) float64 {
	square, n := 0.0, 0.0
	for y := range one.Bounds().Dy() {
		for x := range one.Bounds().Dx() {
			a, b := rgba(one.At(x, y)), rgba(other.At(x, y))
			for _, off := range [3]float64{float64(a.R) - float64(b.R), float64(a.G) - float64(b.G),
				float64(a.B) - float64(b.B)} {
				square, n = square+off*off, n+1
			}
		}
	}
	return math.Sqrt(square / n)
}

func TestPlanesAreNotToBeHad(t *testing.T) {
	art := noise("4:2:0", 64, 48, rand.New(rand.NewSource(8))).(*image.YCbCr)
	source := func(m image.Image, g Grid) *Source {
		return NewSource(&artwork.Picture{Image: m}, flip.HalfTurn, g, half)
	}
	even := image.Rect(0, 0, 8, 8)
	for _, c := range []struct {
		name string
		s    *Source
		r    image.Rectangle
	}{
		{"red, green and blue", source(noise("colour", 64, 48, rand.New(rand.NewSource(8))), Grid{64, 48}), even},
		{"an odd artwork", source(art.SubImage(image.Rect(0, 0, 63, 48)), Grid{63, 48}), even},
		{"an artwork of odd height", source(art.SubImage(image.Rect(0, 0, 64, 47)), Grid{64, 46}), even},
		{"a crop from an odd row on", source(art.SubImage(image.Rect(0, 1, 64, 47)), Grid{64, 46}), even},
		{"a grid of odd height", source(art, Grid{32, 23}), even},
		{"a rectangle of odd width", source(art, Grid{64, 48}), image.Rect(0, 0, 9, 8)},
		{"a rectangle of odd height", source(art, Grid{64, 48}), image.Rect(0, 0, 8, 9)},
		{"an odd crop", source(art.SubImage(image.Rect(1, 0, 63, 48)), Grid{62, 48}), even},
		{"an odd grid", source(art, Grid{33, 24}), even},
		{"an odd rectangle", source(art, Grid{64, 48}), image.Rect(1, 0, 9, 8)},
		{"chroma that would have to be invented",
			source(image.NewYCbCr(image.Rect(0, 0, 64, 48), image.YCbCrSubsampleRatio411), Grid{64, 48}), even},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.s.Cut(c.r), c.s.CutYCbCr(c.r))
		})
	}
}

// Sheets share one grid plane by plane too: any rectangle is the same pixels as that part of the whole.
func TestPlanesShareOneGrid(t *testing.T) {
	const seed, w, h = 10, 240, 160
	random := rand.New(rand.NewSource(seed))
	art := noise("4:2:0", w, h, random)
	bent := scenes()["turned 20°"]
	lit := levelledPlan(t, layout.Lamp{XMM: -600, YMM: -400, ZMM: 900})
	source := func(turn flip.Turn, g Grid) *Source { return NewSource(&artwork.Picture{Image: art}, turn, g, half) }
	sources := map[string]*Source{
		"in a surround":         source(flip.HalfTurn, Grid{w / 2, h / 2}).Surround("#2040c0"),
		"levelled":              source(flip.HalfTurn, Grid{w, h}).Level(lit.Level(), lit.PictureOnBoard()),
		"bent":                  bent.source(art, Grid{180, 180}),
		"in full colour":        NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{w, h}, full),
		"shrunk in full colour": NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{150, 100}, full),
	}
	for i, turn := range turns {
		gw, gh := turn.Size(110, 74)
		sources[fmt.Sprintf("shrunk, turn %d", i)] = source(turn, Grid{gw, gh})
	}
	for name, s := range sources {
		all := image.Rect(-8, -6, s.grid.WidthPx&^1+8, s.grid.HeightPx&^1+6)
		whole := s.CutYCbCr(all)
		for range 10 {
			x, y := all.Min.X+2*random.Intn(all.Dx()/2), all.Min.Y+2*random.Intn(all.Dy()/2)
			r := image.Rect(x, y, x+2+2*random.Intn(60), y+2+2*random.Intn(60)).Intersect(all)
			part := s.CutYCbCr(r)
			for j := range r.Dy() {
				for i := range r.Dx() {
					if want, got := whole.At(x-all.Min.X+i, y-all.Min.Y+j), part.At(i, j); want != got {
						require.Equal(t, want, got, "seed %d, %s: %d,%d of %v", seed, name, i, j, r)
					}
				}
			}
		}
	}
}

// A surround that is taken back leaves nothing behind, in no plane.
func TestSurroundTakenBack(t *testing.T) {
	art := noise("4:2:0", 64, 48, rand.New(rand.NewSource(11)))
	source := func() *Source { return NewSource(&artwork.Picture{Image: art}, flip.HalfTurn, Grid{32, 24}, half) }
	r := image.Rect(-8, -8, 40, 32)
	back := source().Surround("#2040c0").Surround(layout.Stretch)
	require.Equal(t, source().CutYCbCr(r), back.CutYCbCr(r))
	require.Equal(t, source().Cut(r), back.Cut(r))
}

// However a picture is turned, it is shrunk to the same pixels, turned: weighed where it is stored, mirrored,
// or copied.
func TestShrinkingTurns(t *testing.T) {
	random := rand.New(rand.NewSource(12))
	for _, kind := range kinds {
		const w, h = 32, 24
		// Halved, taps mirror in a pixel's centre, save that one of the two largest takes what rounding loses:
		// a level more or less.
		art := noise(kind, 2*w, 2*h, random)
		plain := NewSource(&artwork.Picture{Image: art}, flip.Turn{}, Grid{w, h}, half).Cut(image.Rect(0, 0, w, h))
		for _, turn := range turns {
			gw, gh := turn.Size(w, h)
			got := NewSource(&artwork.Picture{Image: art}, turn, Grid{gw, gh}, half).Cut(image.Rect(0, 0, gw, gh))
			for y := range gh {
				for x := range gw {
					ax, ay := turn.Source(x, y, w, h)
					if want, got := rgba(plain.At(ax, ay)), rgba(got.At(x, y)); max(want.R, got.R)-min(want.R, got.R) > 1 ||
						max(want.G, got.G)-min(want.G, got.G) > 1 || max(want.B, got.B)-min(want.B, got.B) > 1 {
						require.Equal(t, want, got, "%s, %+v: %d,%d", kind, turn, x, y)
					}
				}
			}
		}
	}
}

// A bent picture lies upright however it was stored, in red, green and blue and plane by plane.
func TestBentPicturesHangUpright(t *testing.T) {
	const w, h = 96, 64
	bent := scenes()["turned 20°"]
	g := Grid{90, 90}
	r := image.Rect(-4, -4, 94, 94)
	source := func(m image.Image, upright flip.Turn) *Source {
		return NewSource(&artwork.Picture{Image: m, Upright: upright}, flip.HalfTurn, g, half).Hang(bent.h, bent.on)
	}
	plain := image.NewYCbCr(image.Rect(0, 0, w, h), image.YCbCrSubsampleRatio420)
	for y := range h {
		for x := range w {
			plain.Y[plain.YOffset(x, y)], plain.Cb[plain.COffset(x, y)], plain.Cr[plain.COffset(x, y)] = uint8(x+2*y),
				uint8(90+x/2), uint8(160-y/2*2)
		}
	}
	want := source(plain, flip.Turn{})
	wantCut, wantPlanes := want.Cut(r), want.CutYCbCr(r)
	for _, upright := range turns {
		// Luma of a shade for each pixel and chroma of its own for each four, laid down so that upright lays it
		// as the first of the turns does.
		storedW, storedH := upright.Size(w, h)
		art := image.NewYCbCr(image.Rect(0, 0, storedW, storedH), image.YCbCrSubsampleRatio420)
		for y := range h {
			for x := range w {
				sx, sy := upright.Source(x, y, storedW, storedH)
				art.Y[art.YOffset(sx, sy)] = uint8(x + 2*y)
				art.Cb[art.COffset(sx, sy)], art.Cr[art.COffset(sx, sy)] = uint8(90+x/2), uint8(160-y/2*2)
			}
		}
		got := source(art, upright)
		require.NotNil(t, got.planes)
		require.Equal(t, wantCut, got.Cut(r), "%+v", upright)
		require.Equal(t, wantPlanes, got.CutYCbCr(r), "%+v", upright)
	}
}
