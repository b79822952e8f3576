package artwork

import (
	"bytes"
	"encoding/binary"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestKindsThatAreNotRead: a file of a format that is read says which kind of it is not, and what to do, from its
// header alone and decoded.
func TestKindsThatAreNotRead(t *testing.T) {
	framed := func(marker, bits byte) []byte {
		data := encodeJPEG(t, patchPicture(), 80)
		frame := bytes.Index(data, []byte{0xff, 0xc0})
		require.Positive(t, frame)
		data[frame+1], data[frame+4] = marker, bits
		return data
	}
	le := binary.LittleEndian
	tiffOf := func(compression uint16) []byte {
		return directoryFile(le, []byte{0xff, 0xff, 0xff, 0xff}, longs(le, 256, 8), longs(le, 257, 8),
			shorts(le, 258, 8, 8, 8), shorts(le, tagCompression, compression), shorts(le, 262, 6), longs(le, 273, 8),
			shorts(le, 277, 3), longs(le, 278, 8), longs(le, 279, 4))
	}
	for name, c := range map[string]struct {
		data []byte
		says string
	}{
		"arithmetic, sequential":  {framed(0xc9, 8), "an arithmetic-coded JPEG, which is not read\nhint: save it anew"},
		"arithmetic, progressive": {framed(0xca, 8), "an arithmetic-coded JPEG"},
		"arithmetic, lossless":    {framed(0xcb, 8), "a lossless JPEG"},
		"lossless":                {framed(0xc3, 8), "a lossless JPEG, which is not read\nhint: save it anew"},
		"hierarchical":            {framed(0xc5, 8), "a hierarchical JPEG"},
		"twelve bits":             {framed(0xc1, 12), "a JPEG of 12 bits a sample, which is not read\nhint: save it anew"},
		"TIFF by planes": {rgbTIFF(le, patchPicture(), shorts(le, tagPlanar, 2)),
			"stores each colour apart (planar, per channel)"},
		"TIFF of JPEG":              {tiffOf(7), "a TIFF compressed as JPEG, which is not read\nhint: save"},
		"TIFF of JPEG, the old way": {tiffOf(6), "a TIFF compressed as JPEG"},
	} {
		t.Run(name, func(t *testing.T) {
			_, err := readHeader(inMemory(c.data), Default)
			require.ErrorContains(t, err, c.says)
			_, err = decodeGuarded(c.data)
			require.ErrorContains(t, err, c.says)
		})
	}
	for _, marker := range []byte{0xc0, 0xc1, 0xc2} {
		require.NoError(t, refuseJPEG(inMemory(framed(marker, 8))))
	}
}
