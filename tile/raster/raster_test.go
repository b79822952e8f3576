package raster

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"

	"github.com/stretchr/testify/require"
)

// noise is a picture of each kind that a Source takes, no two pixels alike.
func noise(kind string, w, h int, random *rand.Rand) image.Image {
	r := image.Rect(0, 0, w, h)
	switch kind {
	case "grey":
		m := image.NewGray(r)
		random.Read(m.Pix)
		return m
	case "colour":
		m := image.NewRGBA(r)
		random.Read(m.Pix)
		for i := 3; i < len(m.Pix); i += 4 {
			m.Pix[i] = 0xff
		}
		return m
	default:
		m := image.NewYCbCr(r, image.YCbCrSubsampleRatio420)
		random.Read(m.Y)
		random.Read(m.Cb)
		random.Read(m.Cr)
		return m
	}
}

var kinds = []string{"grey", "colour", "4:2:0"}

var turns = []flip.Turn{
	{}, flip.HalfTurn, {ReverseX: true}, {ReverseY: true},
	{SwapXY: true}, {SwapXY: true, ReverseX: true}, {SwapXY: true, ReverseY: true},
	{SwapXY: true, ReverseX: true, ReverseY: true},
}

func rgba(c color.Color) color.RGBA { return color.RGBAModel.Convert(c).(color.RGBA) }

// The artwork's own pixels, turned, bleed included: against a pixel-by-pixel look-up through image.Image.
func TestCutCopiesOwnPixels(t *testing.T) {
	const seed = 30
	random := rand.New(rand.NewSource(seed))
	for _, kind := range kinds {
		for _, turn := range turns {
			art := noise(kind, 13, 7, random)
			w, h := turn.Size(13, 7)
			s := NewSource(&artwork.Picture{Image: art}, turn, Grid{w, h}, half)
			for range 40 {
				x, y := random.Intn(w+20)-10, random.Intn(h+20)-10
				r := image.Rect(x, y, x+1+random.Intn(20), y+1+random.Intn(20))
				got := s.Cut(r)
				require.Equal(t, image.Rect(0, 0, r.Dx(), r.Dy()), got.Bounds())
				for j := range r.Dy() {
					for i := range r.Dx() {
						u, v := min(max(x+i, 0), w-1), min(max(y+j, 0), h-1)
						ax, ay := turn.Source(u, v, 13, 7)
						if want, got := rgba(art.At(ax, ay)), rgba(got.At(i, j)); want != got {
							require.Equal(t, want, got, "seed %d %s %+v %v (%d,%d)", seed, kind, turn, r, i, j)
						}
					}
				}
			}
		}
	}
}

// Sheets share one grid: any rectangle is the same pixels as that part of the whole, filtered or not.
func TestSheetsShareOneGrid(t *testing.T) {
	const seed = 31
	random := rand.New(rand.NewSource(seed))
	for _, kind := range kinds {
		for _, turn := range turns {
			art := noise(kind, 61, 47, random)
			w, h := turn.Size(61, 47)
			s := NewSource(&artwork.Picture{Image: art}, turn, Grid{w * 10 / 23, h * 10 / 23}, half)
			all := image.Rect(-6, -6, w*10/23+6, h*10/23+6)
			whole := s.Cut(all)
			for range 20 {
				x, y := all.Min.X+random.Intn(all.Dx()-1), all.Min.Y+random.Intn(all.Dy()-1)
				r := image.Rect(x, y, x+1+random.Intn(all.Max.X-x), y+1+random.Intn(all.Max.Y-y)).Intersect(all)
				part := s.Cut(r)
				for j := range r.Dy() {
					for i := range r.Dx() {
						if want, got := whole.At(x+i-all.Min.X, y+j-all.Min.Y), part.At(i, j); want != got {
							require.Equal(t, want, got, "seed %d %s %+v %v", seed, kind, turn, r)
						}
					}
				}
			}
		}
	}
}

// Beyond a shrunk picture its outermost pixels repeat, as shrunk.
func TestShrunkBleedRepeats(t *testing.T) {
	for _, kind := range kinds {
		for _, turn := range turns {
			s := NewSource(&artwork.Picture{Image: noise(kind, 60, 46, rand.New(rand.NewSource(13)))}, turn, Grid{23, 19}, half)
			own, all := s.Cut(image.Rect(0, 0, 23, 19)), s.Cut(image.Rect(-7, -6, 30, 25))
			for y := range 31 {
				for x := range 37 {
					require.Equal(t, own.At(min(max(x-7, 0), 22), min(max(y-6, 0), 18)), all.At(x, y), "%s, %+v: %d,%d", kind, turn,
						x-7, y-6)
				}
			}
		}
	}
}

// The integer filter against the same sum in float64 over the whole plane at once, by its definition.
func TestFilterAgainstFloatReference(t *testing.T) {
	const seed = 32
	art := noise("grey", 90, 70, rand.New(rand.NewSource(seed))).(*image.Gray)
	const w, h = 37, 29
	got := NewSource(&artwork.Picture{Image: art}, flip.Turn{}, Grid{w, h}, half).Cut(image.Rect(0, 0, w, h)).(*image.Gray)

	sinc := func(x float64) float64 {
		if x == 0 {
			return 1
		}
		return math.Sin(math.Pi*x) / (math.Pi * x)
	}
	kernel := func(d float64) float64 {
		if math.Abs(d) >= 3 {
			return 0
		}
		return sinc(d) * sinc(d/3)
	}
	worst, square := 0.0, 0.0
	for y := range h {
		for x := range w {
			cx, cy := (float64(x)+0.5)*90/w-0.5, (float64(y)+0.5)*70/h-0.5
			sum, weight := 0.0, 0.0
			for v := -20; v < 90; v++ {
				for u := -20; u < 110; u++ {
					k := kernel((float64(u)-cx)*w/90) * kernel((float64(v)-cy)*h/70)
					sum += k * float64(art.GrayAt(min(max(u, 0), 89), min(max(v, 0), 69)).Y)
					weight += k
				}
			}
			d := math.Abs(min(max(sum/weight, 0), 255) - float64(got.GrayAt(x, y).Y))
			worst, square = max(worst, d), square+d*d
		}
	}
	// Rounding to a whole level costs up to 0.5 and 0.29 RMS; the fixed-point weights may add a little.
	require.Less(t, worst, 0.75)
	require.Less(t, math.Sqrt(square/(w*h)), 0.35)
}

// A zone plate shrunk fourfold: beyond the new Nyquist limit only flat grey may be left.
func TestZonePlateDoesNotAlias(t *testing.T) {
	const n, m = 800, 200
	art := image.NewGray(image.Rect(0, 0, n, n))
	for y := range n {
		for x := range n {
			r2 := float64(x*x + y*y)
			art.SetGray(x, y, color.Gray{uint8(127.5 + 127*math.Cos(math.Pi*r2/(2*n)))}) // frequency r/(2n) cycles a pixel
		}
	}
	got := NewSource(&artwork.Picture{Image: art}, flip.Turn{}, Grid{m, m}, half).Cut(image.Rect(0, 0, m, m)).(*image.Gray)
	// Nyquist of the result is 1/8 cycle a source pixel: r = n/4. From 1.6 times that on along an axis the
	// kernel has died down. (A separable kernel passes what lies under Nyquist on the other axis, so look near
	// the axis only.)
	for x := m * 2 / 5; x < m-10; x++ {
		for y := range 3 {
			require.InDelta(t, 127.5, float64(got.GrayAt(x, y).Y), 6, "(%d, %d)", x, y)
		}
	}
}

func TestFlatStaysFlat(t *testing.T) {
	for _, level := range []byte{0, 1, 127, 254, 255} {
		art := image.NewGray(image.Rect(0, 0, 50, 50))
		for i := range art.Pix {
			art.Pix[i] = level
		}
		got := NewSource(&artwork.Picture{Image: art}, flip.HalfTurn,
			Grid{17, 19}, half).Cut(image.Rect(-3, -3, 20, 22)).(*image.Gray)
		for _, v := range got.Pix {
			require.Equal(t, level, v)
		}
	}
}

func TestNewGrid(t *testing.T) {
	board := layout.Rect{WidthMM: 254, HeightMM: 127}
	for _, c := range []struct {
		name         string
		artW, artH   int
		ppi          float64
		wantW, wantH int
	}{
		{"coarser than asked: its own pixels", 1000, 500, 300, 1000, 500},
		{"just as fine", 3000, 1500, 300, 3000, 1500},
		{"finer: as asked", 9000, 4500, 300, 3000, 1500},
		{"a hair off in proportion: its own", 3001, 1499, 300, 3001, 1499},
		{"one pixel", 1, 1, 300, 1, 1},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, Grid{c.wantW, c.wantH}, NewGrid(board, c.artW, c.artH, units.PerInch(c.ppi)))
		})
	}
}

// A sheet's pixels cover what it prints, by less than a pixel more on each side, and say exactly where they lie.
func TestPixelsCoverTheBoard(t *testing.T) {
	const seed = 33
	random := rand.New(rand.NewSource(seed))
	for range 500 {
		// of the picture
		board := layout.Rect{XMM: 300 * random.Float64(), YMM: 300 * random.Float64(), WidthMM: 100 + 900*random.Float64(),
			HeightMM: 100 + 900*random.Float64()}
		g := Grid{1 + random.Intn(8000), 1 + random.Intn(8000)}
		r := layout.Rect{XMM: -5 + 50*random.Float64(), YMM: -5 + 50*random.Float64(), WidthMM: 1 + 50*random.Float64(),
			HeightMM: 1 + 50*random.Float64()}
		back := g.OnBoard(board, g.Pixels(board, r))
		pixelW, pixelH := board.WidthMM/float64(g.WidthPx), board.HeightMM/float64(g.HeightPx)
		for _, side := range []struct{ over, pixel float64 }{
			{r.XMM - back.XMM, pixelW}, {back.RightMM() - r.RightMM(), pixelW}, {r.YMM - back.YMM, pixelH},
			{back.BottomMM() - r.BottomMM(), pixelH},
		} {
			require.GreaterOrEqual(t, side.over, -1e-5*side.pixel, "seed %d", seed)
			require.Less(t, side.over, side.pixel*(1+1e-5), "seed %d", seed)
		}
	}
}
