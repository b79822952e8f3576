package artwork

import (
	"bytes"
	"compress/zlib"
	"errors"
	"image"
	"image/color"
	"image/png"
	"io"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestPNGByRow holds what is read by the row against the library's own reading of the same file, level by level: every
// kind of colour of 16 bits, with each filter (noise and slopes make the library's encoder use all five) and with a
// colour that stands for what is transparent.
func TestPNGByRow(t *testing.T) {
	random := rand.New(rand.NewPCG(16, 0))
	const w, h = 53, 41
	noise := func(x, y int, soft bool) uint16 {
		if soft {
			return uint16(x*991 + y*613)
		}
		return uint16(random.Uint32())
	}
	pictures := map[string]func(soft bool) image.Image{
		"grey": func(soft bool) image.Image {
			m := image.NewGray16(image.Rect(0, 0, w, h))
			for i := range w * h {
				m.SetGray16(i%w, i/w, color.Gray16{Y: noise(i%w, i/w, soft)})
			}
			return m
		},
		"colour": func(soft bool) image.Image {
			m := image.NewRGBA64(image.Rect(0, 0, w, h))
			for i := range w * h {
				v := noise(i%w, i/w, soft)
				m.SetRGBA64(i%w, i/w, color.RGBA64{R: v, G: v * 3, B: noise(i/w, i%w, soft), A: 65535})
			}
			return m
		},
		"colour with alpha": func(soft bool) image.Image {
			m := image.NewNRGBA64(image.Rect(0, 0, w, h))
			for i := range w * h {
				v := noise(i%w, i/w, soft)
				m.SetNRGBA64(i%w, i/w, color.NRGBA64{R: v, G: v * 5, B: ^v, A: noise(i/w, i%w, soft)})
			}
			return m
		},
	}
	filters := map[byte]bool{}
	for name, draw := range pictures {
		for _, soft := range []bool{false, true} {
			data := encodePNG(t, draw(soft))
			row := 1 + 2*w*map[string]int{"grey": 1, "colour": 3, "colour with alpha": 4}[name]
			for i, packed := 0, rows16(t, data, row*h); i < len(packed); i += row {
				filters[packed[i]] = true
			}
			requireAsLibrary(t, name, data)
			if name == "colour with alpha" {
				continue
			}
			clear := rows16(t, data, 64)[1:][:map[string]int{"grey": 2, "colour": 6}[name]]
			requireAsLibrary(t, name+", one colour transparent", withChunk(data, "tRNS", clear))
		}
	}
	require.Len(t, filters, 5)

	ihdr := []byte{0, 0, 0, 2, 0, 0, 0, 1, 16, 4, 0, 0, 0} // two pixels by one
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	_, err := z.Write([]byte{0, 0x12, 0x34, 0xff, 0xff, 0x56, 0x78, 0x80, 0x00})
	require.NoError(t, errors.Join(err, z.Close()))
	requireAsLibrary(t, "grey with alpha, which the library does not write", slices.Concat([]byte("\x89PNG\r\n\x1a\n"),
		pngChunk("IHDR", ihdr), pngChunk("IDAT", packed.Bytes()), pngChunk("IEND", nil)))
}

// rows16 is the start of a file's data, unpacked; of the first pixel of the first row no filter changes anything.
func rows16(t *testing.T, data []byte, n int) []byte {
	t.Helper()
	r := pngRows{chunks: pngChunks{data[pngStart:]}}
	var err error
	_, r.body, err = r.chunks.next()
	require.NoError(t, err)
	row, err := inflated(&r, n)
	require.NoError(t, err)
	return row
}

func requireAsLibrary(t *testing.T, name string, data []byte) {
	t.Helper()
	for _, under := range []color.RGBA{Reading{}.under(), {32, 48, 64, 255}, {90, 90, 90, 255}} {
		requireAsLibraryOn(t, name, data, ground{under, true})
		requireAsLibraryOn(t, name, data, ground{under, false})
	}
}

func requireAsLibraryOn(t *testing.T, name string, data []byte, under ground) {
	t.Helper()
	ours, err := decodePNG(data, under)
	require.NoError(t, err, name)
	require.IsType(t, laid{}, ours, name)
	theirs, err := png.Decode(bytes.NewReader(data))
	require.NoError(t, err, name)
	want, wantNotes, err := compact(theirs, false, under, nil)
	require.NoError(t, err, name)
	got, gotNotes, err := compact(ours, false, under, nil)
	require.NoError(t, err, name)
	require.Equal(t, wantNotes, gotNotes, name)
	if grey, ok := got.(*image.Gray); ok {
		for i, v := range grey.Pix {
			r, _, _, _ := want.At(i%grey.Rect.Dx(), i/grey.Rect.Dx()).RGBA()
			require.Equal(t, uint8(r>>8), v, name)
		}
		return
	}
	require.Equal(t, want, got, name)
}

// inflated is the first n bytes of what r has packed.
func inflated(r io.Reader, n int) ([]byte, error) {
	z, err := zlib.NewReader(r)
	if err != nil {
		return nil, err
	}
	data := make([]byte, n)
	_, err = io.ReadFull(z, data)
	return data, err
}
