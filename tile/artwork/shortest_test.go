package artwork

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// The shortest file that a header's picture may be in, a byte under it, and by hand what the format needs at least.
func TestShortestFiles(t *testing.T) {
	be, le := binary.BigEndian, binary.LittleEndian
	png := func(w, h uint32, depth, colour byte) []byte {
		return slices.Concat([]byte("\x89PNG\r\n\x1a\n"), pngChunk("IHDR", append(be.AppendUint32(be.AppendUint32(nil, w), h),
			depth, colour, 0, 0, 0)))
	}
	tiff := func(compression uint16) []byte {
		return directoryFile(le, make([]byte, 4), longs(le, 256, 4096), longs(le, 257, 4096), shorts(le, 258, 8, 8, 8),
			shorts(le, 259, compression), shorts(le, 262, 2), longs(le, 273, 8), shorts(le, 277, 3), longs(le, 278, 4096),
			longs(le, 279, 4))
	}
	for _, c := range []struct {
		name  string
		start []byte
		least int
		want  string
	}{
		// 5120 x 5120 pixels are 640 x 640 blocks of 8 x 8, each of a bit or more (T.81, F.1.2).
		{"jpeg", progressiveOf(5120, 5120), 640 * 640 / 8, "need 51200 bytes or more"},
		// Deflate stores 258 bytes in two bits, or 1032 in a byte (zlib, Technical Details): a byte for 1032 greys, four
		// for 1032 pixels of RGBA, a byte for 8256 bits.
		{"png, grey", png(4128, 4096, 8, 0), 4128 * 4096 / 1032, "need 16384 bytes or more"},
		{"png, with alpha", png(4128, 1024, 8, 6), 4 * 4128 * 1024 / 1032, "need 16384 bytes or more"},
		{"png, black and white", png(4128, 4096, 1, 0), 4128 * 4096 / 8256, "need 2048 bytes or more"},
		// 3 bytes a pixel as they are; LZW stores 4096 bytes in 12 bits (TIFF 6.0, section 13), 2730 in a byte; PackBits
		// stores 128 bytes in two (section 9).
		{"tiff", tiff(1), 3 * 4096 * 4096, "need 50331648 bytes or more"},
		{"tiff, lzw", tiff(5), 3 * 4096 * 4096 / 2730, "need 18436 bytes or more"},
		{"tiff, packbits", tiff(32773), 3 * 4096 * 4096 / 64, "need 786432 bytes or more"},
		// Beyond 32 megapixels any file has a byte for 4096 pixels: our own bound.
		{"webp, lossless", webpOf("VP8L", losslessOf(1<<14, 1<<13)), 1 << 27 / 4096, "in 32767 bytes are one even colour"},
	} {
		t.Run(c.name, func(t *testing.T) {
			of := func(bytes int) error {
				file := append(slices.Clone(c.start), make([]byte, bytes-len(c.start))...)
				_, err := readHeader(inMemory(file), Limits{DefaultMaxPixels, 1 << 40})
				return err
			}
			require.NoError(t, of(c.least))
			require.ErrorContains(t, of(c.least-1), c.want)
		})
	}
}
