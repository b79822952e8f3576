package jpeg

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// standard encodes with the standard library.
func standard(t testing.TB, img image.Image, quality int) []byte {
	var file bytes.Buffer
	require.NoError(t, jpeg.Encode(&file, img, &jpeg.Options{Quality: quality}))
	return file.Bytes()
}

// segments returns the data of a file's segments up to its scan's header, by marker.
func segments(t *testing.T, file []byte) map[byte][]byte {
	found := map[byte][]byte{}
	for rest := file[2:]; ; {
		require.Equal(t, byte(0xff), rest[0])
		length := int(binary.BigEndian.Uint16(rest[2:]))
		found[rest[1]] = rest[4 : 2+length]
		if rest[1] == startOfScan {
			return found
		}
		rest = rest[2+length:]
	}
}

func TestHeaderIsTheStandardLibrarys(t *testing.T) {
	// It lists its Huffman tables in another order: each is 17 bytes and its symbols.
	split := func(data []byte) map[byte]string {
		tables := map[byte]string{}
		for len(data) > 0 {
			n := 17
			for _, codes := range data[1:17] {
				n += int(codes)
			}
			tables[data[0]], data = string(data[1:n]), data[n:]
		}
		return tables
	}
	for kind := range 3 {
		m := paint(kind, image.Rect(0, 0, 300, 7), noise(rand.New(rand.NewPCG(8, 0))))
		for quality := 1; quality <= 100; quality++ {
			file, err := Encode(m, quality, half)
			require.NoError(t, err)
			got, want := segments(t, file), segments(t, standard(t, m, quality))
			for _, marker := range []byte{baselineFrame, startOfScan} {
				require.Equal(t, want[marker], got[marker], "kind %d, marker %#x", kind, marker)
			}
			require.Equal(t, split(want[huffmanTables]), split(got[huffmanTables]), "kind %d", kind)
			// It writes the table of chroma for grey too.
			require.Equal(t, want[quantisationTables][:len(got[quantisationTables])], got[quantisationTables],
				"kind %d, quality %d", kind, quality)
		}
	}
}

// squares is the squared distance of a file's planes from those of the picture that it was made from, for
// each pixel of luma, chroma included.
func squares(t *testing.T, file []byte, img image.Image) float64 {
	want, sum := truth(img, half), 0.0
	for i, p := range decoded(t, file, img.Bounds().Size(), half) {
		for j, v := range want[i] {
			sum += math.Pow(float64(p.pix[j/p.width*p.stride+j%p.width])-v, 2)
		}
	}
	return sum / float64(len(want[0]))
}

const (
	decibels = 0.1  // that a file may be farther from the original than what it is compared with
	larger   = 1.02 // times its size, at most
)

// No farther from the original than the standard library's files, and no larger. The harsh pictures keep off
// black and white, for there the standard library gains: it rounds coefficients twice (to eighths, then to
// steps), more of them up than down, and what sticks out beyond 0 and 255 is cut off, while photographs only
// grow by it.
func TestAsGoodAndAsSmallAsTheStandardLibrarys(t *testing.T) {
	const seed, jfifSegment = 9, 18 // bytes that it doesn't write
	rng := rand.New(rand.NewPCG(seed, 0))
	dots := func(_, _, _ int) byte { return byte(40 + 170*(rng.Uint32()&1)) }
	for _, picture := range []struct {
		name string
		at   func(x, y, component int) byte
	}{{"photograph", like(rng)}, {"noise", noise(rng)}, {"dots", dots}} {
		for kind := range kinds {
			m := paint(kind, image.Rect(0, 0, 240, 160), picture.at)
			for _, quality := range []int{1, 50, 92, 100} {
				t.Run(fmt.Sprintf("%s/kind %d/quality %d", picture.name, kind, quality), func(t *testing.T) {
					file, err := Encode(m, quality, half)
					require.NoError(t, err)
					theirs := standard(t, m, quality)
					loss := 10 * math.Log10(squares(t, file, m)/squares(t, theirs, m))
					size := float64(len(file)-jfifSegment) / float64(len(theirs))
					t.Logf("%+.3f dB, %.4f of the size", -loss, size)
					require.LessOrEqual(t, loss, decibels, "seed %d", seed)
					require.LessOrEqual(t, size, larger, "seed %d", seed)
				})
			}
		}
	}
}

// exact encodes a grey picture of whole blocks with the DCT's formula in floating point.
func exact(m *image.Gray, quality int) []byte {
	s := newScan(m.Rect.Size(), quality, 1, half)
	for y := 0; y < m.Rect.Dy(); y += 8 {
		for x := 0; x < m.Rect.Dx(); x += 8 {
			var c coefficients
			for n := range 64 {
				word, shift := place(n/8, n%8)
				c[word] += uint64(int64(math.Round(scale*plainDCT(m.Pix[m.PixOffset(x, y):], m.Stride, n/8, n%8)))) << shift
			}
			s.bits.block(&c, s.components[0])
		}
	}
	return s.finish()
}

// In black and white, where coefficients are greatest, files are as good and as small as if the DCT were exact.
func TestAsGoodAsTheExactDCT(t *testing.T) {
	const seed = 10
	rng := rand.New(rand.NewPCG(seed, 0))
	dots := func(_, _, _ int) byte { return -byte(rng.Uint32() & 1) }
	for name, at := range map[string]func(x, y, component int) byte{"chequers": chequers(3), "dots": dots} {
		m := paint(0, image.Rect(0, 0, 96, 96), at).(*image.Gray)
		for _, quality := range []int{1, 50, 92, 100} {
			t.Run(fmt.Sprintf("%s/quality %d", name, quality), func(t *testing.T) {
				file, err := Encode(m, quality, half)
				require.NoError(t, err)
				ideal := exact(m, quality)
				loss := 10 * math.Log10(squares(t, file, m)/squares(t, ideal, m))
				t.Logf("%+.3f dB, %.4f of the size", -loss, float64(len(file))/float64(len(ideal)))
				require.LessOrEqual(t, loss, decibels, "seed %d", seed)
				require.LessOrEqual(t, float64(len(file)), larger*float64(len(ideal)), "seed %d", seed)
			})
		}
	}
}
