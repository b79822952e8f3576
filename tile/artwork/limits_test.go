package artwork

import (
	"bytes"
	"encoding/binary"
	"image"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"
)

// TestMemoryIsEstimated holds the estimate against what opening a picture takes from the heap in all: it must not be
// less than that, but for decoders' buffers, nor so much more that honest pictures are refused.
func TestMemoryIsEstimated(t *testing.T) {
	const side, slack = 1500, 1 << 20
	square := image.Rect(0, 0, side, side)
	clear, clear64 := image.NewNRGBA(square), image.NewNRGBA64(square)
	planes := image.NewYCbCr(square, image.YCbCrSubsampleRatio420)
	for name, data := range map[string][]byte{
		"jpeg, 4:2:0":          encodeJPEG(t, planes, 90),
		"jpeg, grey":           encodeJPEG(t, image.NewGray(square), 90),
		"jpeg, progressive":    evenProgressive(side, side),
		"png":                  encodePNG(t, image.NewRGBA(square)),
		"png, grey":            encodePNG(t, image.NewGray(square)),
		"png, alpha":           encodePNG(t, clear),
		"png, 16 bits, alpha":  encodePNG(t, clear64),
		"png, 16 bits, grey":   encodePNG(t, image.NewGray16(square)),
		"png, palette":         encodePNG(t, image.NewPaletted(square, paletted(0, 0).Palette)),
		"bmp":                  encodeBMP(t, image.NewRGBA(square)),
		"tiff":                 rgbTIFF(binary.LittleEndian, image.NewRGBA(square)),
		"tiff, 16 bits, alpha": encodeTIFF(t, clear64, tiff.Deflate),
		"tiff, 16 bits, grey":  encodeTIFF(t, image.NewGray16(square), tiff.Deflate),
		"tiff, packed":         encodeTIFF(t, image.NewRGBA(square), tiff.Deflate),
		"gif":                  encodeGIF(t, image.NewPaletted(square, paletted(0, 0).Palette)),
	} {
		t.Run(name, func(t *testing.T) {
			h, err := readHeader(inMemory(data), Default)
			require.NoError(t, err)
			path := saved(t, data)
			took := allocated(func() { _, err = Open(path, Default) })
			require.NoError(t, err)
			estimate := int(int64(len(data)) + h.decoding)
			t.Logf("%d x %d: estimated %.2f MB, taken %.2f MB", h.width, h.height, float64(estimate)/1e6, float64(took)/1e6)
			require.LessOrEqual(t, took, estimate+slack)
			require.LessOrEqual(t, estimate, 2*took+slack)

			_, err = Open(path, Limits{DefaultMaxPixels, h.needs(int64(len(data))) - 1})
			require.ErrorAs(t, err, new(*TooMuchMemoryError))
			_, err = Open(path, Limits{DefaultMaxPixels, h.needs(int64(len(data)))})
			require.NoError(t, err)
		})
	}
}

// evenProgressive is a progressive JPEG, 4:4:4, of one grey: the shortest there is, a bit for each block of each
// component.
func evenProgressive(w, h int) []byte {
	frame := binary.BigEndian.AppendUint16(binary.BigEndian.AppendUint16([]byte{8}, uint16(h)), uint16(w))
	frame = append(frame, 3, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0)
	oneCode := append([]byte{0, 1}, make([]byte, 16)...) // of one bit, for no difference
	blocks := (w + 7) / 8 * ((h + 7) / 8) * 3
	return slices.Concat([]byte{0xff, 0xd8}, segment(0xdb, append([]byte{0}, bytes.Repeat([]byte{1}, 64)...)),
		segment(0xc2, frame), segment(0xc4, oneCode), segment(0xda, []byte{3, 1, 0, 2, 0, 3, 0, 0, 0, 0}),
		make([]byte, blocks/8+1), []byte{0xff, 0xd9})
}

// TestSmallFilesOfMuchMemory: what takes many times the bytes of its pixels is refused by its header, with what it
// would take.
func TestSmallFilesOfMuchMemory(t *testing.T) {
	const side = 11_408 // 130 megapixels
	data := evenProgressive(side, side)
	require.Less(t, len(data), 800_000)
	_, _, err := ReadSize(saved(t, data), Default)
	var tooMuch *TooMuchMemoryError
	require.ErrorAs(t, err, &tooMuch)
	require.InEpsilon(t, 130e6*(3+3*4), tooMuch.Bytes, 0.03)
	require.ErrorContains(t, err, "MB of memory, more than the 1000 MB allowed")
}
