package artwork

import (
	"bytes"
	"compress/lzw"
	"encoding/binary"
	"image"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"
)

// tiffSeeds is one small TIFF file of every way to store that is read, by name.
func tiffSeeds(t testing.TB) map[string][]byte {
	le, be := binary.LittleEndian, binary.BigEndian
	m := patchPicture().SubImage(image.Rect(8, 12, 40, 20)).(*image.RGBA)
	var deflated bytes.Buffer
	require.NoError(t, tiff.Encode(&deflated, m, &tiff.Options{Compression: tiff.Deflate, Predictor: true}))
	ramp := make([]byte, 16*8)
	for i := range ramp {
		ramp[i] = byte(3 * i)
	}
	var coded bytes.Buffer // of so few codes that the two ways to widen them (TIFF's and the others') don't differ
	z := lzw.NewWriter(&coded, lzw.MSB, 8)
	_, err := z.Write(ramp)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	// PackBits: 64 bytes, then one 64 times (TIFF 6.0, section 9, recalled from memory)
	runs := append(append([]byte{63}, ramp[:64]...), 256-63, 200)
	// T.6: eight rows like the white one above, each a single 1; the end
	even := []byte{0xff, 0x00, 0x10, 0x01}
	grey := func(order byteOrder, compression, bits uint16, data []byte, more ...field) []byte {
		return directoryFile(order, data, append([]field{
			longs(order, 256, 16), longs(order, 257, 8), shorts(order, 258, bits), shorts(order, 259, compression),
			shorts(order, 262, 1),
			longs(order, 273, 8), shorts(order, 277, 1), longs(order, 278, 8), longs(order, 279, uint32(len(data))),
		}, more...)...)
	}
	tiled := directoryFile(be, make([]byte, 2*256),
		longs(be, 256, 24), longs(be, 257, 12), shorts(be, 258, 8), shorts(be, 259, 1), shorts(be, 262, 1),
		shorts(be, 277, 1),
		longs(be, 322, 16), longs(be, 323, 16), longs(be, 324, 8, 8+256), longs(be, 325, 256, 256))
	return map[string][]byte{
		"tiff deflate":  deflated.Bytes(),
		"tiff lzw":      grey(le, 5, 8, coded.Bytes()),
		"tiff packbits": grey(be, 32773, 8, runs),
		"tiff fax":      grey(le, faxGroup4, 1, even),
		"tiff 16 bit":   tiffFile(be, 4, 2, ramp[:16], []uint16{16}, 1),
		"tiff palette": tiffFile(le, 2, 2, []byte{0, 1, 1, 0}, []uint16{8}, 3,
			shorts(le, 320, 0, 0xffff, 0, 0x8000, 0, 0x4000)),
		"tiff tiles": tiled,
		"tiff inks":  tiffFile(le, 8, 4, ramp, []uint16{8, 8, 8, 8}, photometricInks),
	}
}
