package jobtest

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// WriteInks writes a TIFF of one colour in cyan, magenta, yellow and black, 255 for all of an ink, with a profile if
// there is one (TIFF 6.0, sections 2 and 16; ICC.1:2010, annex B; recalled from memory).
func WriteInks(t testing.TB, profile []byte, wide, high int, inks [4]uint8) (path string) {
	t.Helper()
	const short, long, undefined = 3, 4, 7
	le := binary.LittleEndian
	var pixels []byte
	for range wide * high {
		pixels = append(pixels, inks[:]...)
	}
	data := append([]byte("II\x2a\x00\x00\x00\x00\x00"), pixels...)
	bitsAt := len(data)
	data = append(data, 8, 0, 8, 0, 8, 0, 8, 0)
	profileAt := len(data)
	data = append(data, profile...)
	data = append(data, make([]byte, len(data)%2)...)
	le.PutUint32(data[4:], uint32(len(data)))
	fields := [][4]int{{256, long, 1, wide}, {257, long, 1, high}, {258, short, 4, bitsAt}, {259, short, 1, 1},
		{262, short, 1, 5}, {273, long, 1, 8}, {277, short, 1, 4}, {278, long, 1, high}, {279, long, 1, len(pixels)}}
	if profile != nil {
		fields = append(fields, [4]int{34675, undefined, len(profile), profileAt})
	}
	data = le.AppendUint16(data, uint16(len(fields)))
	for _, f := range fields {
		data = le.AppendUint16(le.AppendUint16(data, uint16(f[0])), uint16(f[1]))
		data = le.AppendUint32(le.AppendUint32(data, uint32(f[2])), uint32(f[3]))
	}
	data = append(data, 0, 0, 0, 0)
	path = filepath.Join(t.TempDir(), "inks.tif")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}
