package jpeg

import (
	"bytes"
	"fmt"
	"image"
	"image/jpeg"
	"iter"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// decoded returns the planes of a file as the standard library reads them.
func decoded(t testing.TB, file []byte, size image.Point, chroma image.YCbCrSubsampleRatio) []plane {
	img, err := jpeg.Decode(bytes.NewReader(file))
	require.NoError(t, err)
	require.Equal(t, image.Rectangle{Max: size}, img.Bounds())
	if m, ok := img.(*image.Gray); ok {
		return []plane{{m.Pix, m.Stride, size.X, size.Y}}
	}
	m := img.(*image.YCbCr)
	require.Equal(t, chroma, m.SubsampleRatio)
	w, h := (size.X+1)/2, (size.Y+1)/2
	if chroma == full {
		w, h = size.X, size.Y
	}
	return []plane{{m.Y, m.YStride, size.X, size.Y}, {m.Cb, m.CStride, w, h}, {m.Cr, m.CStride, w, h}}
}

// requireClose encodes a picture and fails where a decoded block is farther from it than quantisation allows.
// The DCT of A.3.3 keeps lengths: a block is off by the square root of the sum of its coefficients' squared
// errors, each half a step at most. Cutting levels off at 0 and 255 brings it only nearer. To that come
// levels rounded in the planes (half a level; only for RGBA) and by the decoder (half a level, and as much
// for its DCT), and each coefficient may be off by a tenth more (TestTransformIsTheDCT has less).
func requireClose(t testing.TB, img image.Image, quality int, name string) {
	requireCloseIn(t, img, quality, half, name+", 4:2:0")
	requireCloseIn(t, img, quality, full, name+", 4:4:4")
}

func requireCloseIn(t testing.TB, img image.Image, quality int, chroma image.YCbCrSubsampleRatio, name string) {
	file, err := Encode(img, quality, chroma)
	require.NoError(t, err, name)
	want := truth(img, chroma)
	got := decoded(t, file, img.Bounds().Size(), chroma)
	require.Len(t, got, len(want), name)
	for i, p := range got {
		bound := 0.0
		for _, n := range quantisation(&annexK[min(i, 1)], quality) {
			bound += math.Pow(float64(n)/2+0.1, 2)
		}
		bound = math.Sqrt(bound) + 8*1.5
		for y := 0; y < p.height; y += 8 {
			for x := 0; x < p.width; x += 8 {
				sum := 0.0
				for j := y; j < min(y+8, p.height); j++ {
					for k := x; k < min(x+8, p.width); k++ {
						sum += math.Pow(float64(p.pix[j*p.stride+k])-want[i][j*p.width+k], 2)
					}
				}
				if math.Sqrt(sum) > bound {
					require.LessOrEqual(t, math.Sqrt(sum), bound, "%s: plane %d, block at (%d, %d)", name, i, x, y)
				}
			}
		}
	}
}

func TestEverySizeOfEveryKind(t *testing.T) {
	const seed = 4
	rng := rand.New(rand.NewPCG(seed, 0))
	for kind := range kinds {
		for width := 1; width <= 40; width++ {
			height := 1 + rng.IntN(40)
			at := image.Pt(rng.IntN(9)-4, rng.IntN(9)-4)
			whole := paint(kind, image.Rect(-6, -6, 50, 50), like(rng))
			for _, size := range []image.Point{{width, height}, {height, width}} {
				for _, quality := range []int{1, 50, 92, 100} {
					m := window(whole, image.Rectangle{at, at.Add(size)})
					requireClose(t, m, quality, fmt.Sprintf("seed %d, kind %d, %v, quality %d", seed, kind, m.Bounds(), quality))
				}
			}
		}
	}
}

// A picture's place and its rows' length don't matter, nor does the way by which its planes are had.
func TestSamePixelsSameBytes(t *testing.T) {
	const seed = 5
	rng := rand.New(rand.NewPCG(seed, 0))
	for kind := range kinds {
		whole := paint(kind, image.Rect(-6, -6, 70, 70), noise(rng))
		for range 40 {
			x, y := rng.IntN(20)-6, rng.IntN(20)-6
			m := window(whole, image.Rect(x, y, x+1+rng.IntN(50), y+1+rng.IntN(50)))
			r := m.Bounds()
			var same image.Image
			switch m := m.(type) {
			case *image.Gray:
				same = paint(0, image.Rectangle{Max: r.Size()}, func(x, y, _ int) byte { return m.GrayAt(r.Min.X+x, r.Min.Y+y).Y })
			case *image.RGBA:
				same = paint(1, image.Rect(3, 3, 3+r.Dx(), 3+r.Dy()),
					func(x, y, component int) byte { return m.Pix[m.PixOffset(r.Min.X+x, r.Min.Y+y)+component] })
			case *image.YCbCr:
				full := image.NewYCbCr(image.Rectangle{Max: r.Size()}, image.YCbCrSubsampleRatio444)
				for y := range r.Dy() {
					for x := range r.Dx() {
						c := m.YCbCrAt(r.Min.X+x, r.Min.Y+y)
						i := full.YOffset(x, y)
						full.Y[i], full.Cb[i], full.Cr[i] = c.Y, c.Cb, c.Cr
					}
				}
				same = full
			}
			for _, chroma := range []image.YCbCrSubsampleRatio{half, full} {
				want, err := Encode(same, 92, chroma)
				require.NoError(t, err)
				got, err := Encode(m, 92, chroma)
				require.NoError(t, err)
				require.Equal(t, want, got, "seed %d, kind %d, %v, chroma %v", seed, kind, r, chroma)
			}
		}
	}
}

// Beyond a picture its last pixels repeat: its scan is that of one which has them.
func TestLastPixelsRepeat(t *testing.T) {
	const seed = 6
	rng := rand.New(rand.NewPCG(seed, 0))
	scanOf := func(m image.Image) []byte {
		file, err := Encode(m, 92, half)
		require.NoError(t, err)
		return file[bytes.Index(file, []byte{0xff, startOfScan}):]
	}
	for range 100 {
		w, h := 1+rng.IntN(40), 1+rng.IntN(40)
		gray := paint(0, image.Rect(0, 0, w, h), noise(rng)).(*image.Gray)
		colour := paint(2, image.Rect(0, 0, w, h), noise(rng)).(*image.YCbCr)
		grown := image.Rect(0, 0, (w+15)&^15, (h+15)&^15)
		grownGray, grownColour := image.NewGray(image.Rect(0, 0, (w+7)&^7, (h+7)&^7)),
			image.NewYCbCr(grown, image.YCbCrSubsampleRatio420)
		for y := range grown.Dy() {
			for x := range grown.Dx() {
				grownColour.Y[y*grownColour.YStride+x] = colour.Y[min(y, h-1)*colour.YStride+min(x, w-1)]
				if image.Pt(x, y).In(grownGray.Rect) {
					grownGray.Pix[y*grownGray.Stride+x] = gray.Pix[min(y, h-1)*gray.Stride+min(x, w-1)]
				}
				c, from := grownColour.COffset(x, y), colour.COffset(min(x, w-1), min(y, h-1))
				grownColour.Cb[c], grownColour.Cr[c] = colour.Cb[from], colour.Cr[from]
			}
		}
		require.Equal(t, scanOf(grownGray), scanOf(gray), "seed %d, %d x %d", seed, w, h)
		require.Equal(t, scanOf(grownColour), scanOf(colour), "seed %d, %d x %d", seed, w, h)
	}
}

// The bytes behind a picture's last pixel are not there to be read.
func TestReadsNothingOutside(t *testing.T) {
	const seed = 7
	rng := rand.New(rand.NewPCG(seed, 0))
	for side := 1; side <= 33; side++ {
		c := (side + 1) / 2
		exact := func(n int) []byte {
			pix := make([]byte, n)
			for i := range pix {
				pix[i] = byte(rng.Uint32())
			}
			return pix[:n:n]
		}
		const more = 5 // bytes between a row's end and the next row, which the last row lacks
		r := image.Rect(0, 0, side, side)
		y, cb, cr := exact((side-1)*(side+more)+side), exact((c-1)*(c+more)+c), exact((c-1)*(c+more)+c)
		for _, m := range []image.Image{
			&image.Gray{Pix: y, Stride: side + more, Rect: r},
			&image.YCbCr{Y: y, Cb: cb, Cr: cr, YStride: side + more, CStride: c + more,
				SubsampleRatio: image.YCbCrSubsampleRatio420, Rect: r},
			&image.RGBA{Pix: exact((side-1)*4*(side+more) + 4*side), Stride: 4 * (side + more), Rect: r},
		} {
			requireClose(t, m, 92, fmt.Sprintf("seed %d, %T of %d", seed, m, side))
		}
	}
}

// The greatest coefficients and differences there are have codes: blocks of every wave in black and white and
// its opposite, at steps of 1.
func TestGreatestCoefficients(t *testing.T) {
	for kind := range kinds {
		for n := range 64 {
			a, b := wave(n/8, n%8, true), wave(n/8, n%8, false)
			m := paint(kind, image.Rect(0, 0, 64, 32), func(x, y, component int) byte {
				if kind != 1 && component > 0 {
					x, y = x/2, y/2
				}
				if (x/8+y/8+component)%2 == 0 {
					return a[y%8*8+x%8]
				}
				return b[y%8*8+x%8]
			})
			requireClose(t, m, 100, fmt.Sprintf("kind %d, wave %d", kind, n))
		}
		for side := 1; side <= 16; side++ {
			requireClose(t, paint(kind, image.Rect(0, 0, 48, 48), chequers(side)), 100,
				fmt.Sprintf("kind %d, chequers of %d", kind, side))
		}
	}
}

// A flat picture is off by half a level, and half for each time that it is rounded: 8 * 16 / 2 / 64 of a
// coefficient from quality 50 on.
func TestFlatStaysFlat(t *testing.T) {
	for level := range 256 {
		for kind := range kinds {
			m := paint(kind, image.Rect(0, 0, 19, 21), func(_, _, component int) byte { return byte(level + 85*component) })
			for _, quality := range []int{50, 92, 100} {
				for _, chroma := range []image.YCbCrSubsampleRatio{half, full} {
					file, err := Encode(m, quality, chroma)
					require.NoError(t, err)
					want := truth(m, chroma)
					for i, p := range decoded(t, file, m.Bounds().Size(), chroma) {
						for j := range p.width * p.height {
							got := float64(p.pix[j/p.width*p.stride+j%p.width])
							if math.Abs(got-want[i][0]) > 1.7 {
								require.InDelta(t, want[i][0], got, 1.7, "level %d, kind %d, quality %d, plane %d", level, kind, quality, i)
							}
						}
					}
				}
			}
		}
	}
}

func TestEncodeRefuses(t *testing.T) {
	gray := image.NewGray(image.Rect(0, 0, 4, 4))
	tests := []struct {
		name    string
		img     image.Image
		quality int
		want    string
	}{
		{"quality too low", gray, 0, "JPEG quality 0 is out of range\nhint: take 1 to 100"},
		{"quality too high", gray, 101, "JPEG quality 101 is out of range\nhint: take 1 to 100"},
		{"no width", image.NewGray(image.Rect(0, 0, 0, 4)), 92, "a picture of 0 x 4 pixels can't be a JPEG\n" +
			"hint: take 1 to " +
			"65535 both ways"},
		{"nothing", &image.YCbCr{}, 92, "a picture of 0 x 0 pixels can't be a JPEG\nhint: take 1 to 65535 both ways"},
		{"too wide", image.NewGray(image.Rect(0, 0, 65536, 1)), 92, "a picture of 65536 x 1 pixels can't be a JPEG\n" +
			"hint: take " +
			"1 to 65535 both ways"},
		{"another kind", image.NewGray16(image.Rect(0, 0, 4, 4)), 92,
			"a picture of type *image.Gray16 can't be a JPEG\nhint: convert it to *image.Gray, *image.RGBA or *image.YCbCr"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := Encode(test.img, test.quality, half)
			require.EqualError(t, err, test.want)
		})
	}
	_, err := Encode(gray, 92, image.YCbCrSubsampleRatio422)
	require.EqualError(t, err, "JPEG with chroma of YCbCrSubsampleRatio422 isn't made\nhint: take 4:2:0 or 4:4:4")
	file, err := Encode(image.NewGray(image.Rect(0, 0, 65535, 1)), 92, full)
	require.NoError(t, err)
	decoded(t, file, image.Pt(65535, 1), full)
}

// A picture that comes in bands gives the file of the same picture in one.
func TestBands(t *testing.T) {
	const seed, rows = 21, 3*BlockPx + 5
	rng := rand.New(rand.NewPCG(seed, 0))
	for kind := range kinds {
		m := paint(kind, image.Rect(0, 0, 43, rows), noise(rng)).(interface {
			image.Image
			SubImage(image.Rectangle) image.Image
		})
		for _, chroma := range []image.YCbCrSubsampleRatio{half, full} {
			whole, err := Encode(m, 92, chroma)
			require.NoError(t, err)
			size := m.Bounds().Size()
			cut := func(ends ...int) iter.Seq[image.Image] {
				return func(yield func(image.Image) bool) {
					from := 0
					for _, end := range ends {
						if !yield(m.SubImage(image.Rect(0, from, size.X, end))) {
							return
						}
						from = end
					}
				}
			}
			banded, err := EncodeBands(size, cut(BlockPx, 3*BlockPx, rows), 92, chroma)
			require.NoError(t, err)
			require.Equal(t, whole, banded, "seed %d, kind %d, chroma %v", seed, kind, chroma)

			_, err = EncodeBands(size, cut(BlockPx, 3*BlockPx), 92, chroma)
			require.ErrorContains(t, err, "of 53 rows got only 48")
			_, err = EncodeBands(size, cut(BlockPx-1, rows), 92, chroma)
			require.ErrorContains(t, err, "does not fit at row 15")
			_, err = EncodeBands(image.Pt(size.X, rows-1), cut(BlockPx, rows), 92, chroma)
			require.ErrorContains(t, err, "does not fit at row 16")
			_, err = EncodeBands(image.Pt(size.X+1, rows), cut(rows), 92, chroma)
			require.ErrorContains(t, err, "does not fit at row 0")
		}
	}
}
