package artwork

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Whatever a file's name says: its first bytes tell.
func TestWhatIsNotReadIsNamed(t *testing.T) {
	for _, c := range []struct{ name, start, says string }{
		{"a phone's HEIC", "\x00\x00\x00\x24ftypheic\x00\x00\x00\x00",
			"an HEIC picture, which is not read\nhint: save it as JPEG"},
		{"HEIF by its general brand", "\x00\x00\x00\x18ftypmif1", "an HEIC or AVIF picture"},
		{"AVIF", "\x00\x00\x00\x20ftypavif", "an AVIF picture, which is not read\n" +
			"hint: save it as JPEG, or as TIFF with its"},
		{"a raw file", "\x00\x00\x00\x18ftypcrx ", "develop it"},
		{"another raw file", "FUJIFILMCCD-RAW 0201", "develop it"},
		{"a film", "\x00\x00\x00\x20ftypisom", "save one frame of it"},
		{"JPEG XL, bare", "\xff\x0a\x00", "a JPEG XL picture"},
		{"JPEG XL in its box", "\x00\x00\x00\x0cJXL \r\n\x87\n", "a JPEG XL picture"},
		{"JPEG 2000", "\x00\x00\x00\x0cjP  \r\n\x87\n", "a JPEG 2000 picture"},
		{"PSD", "8BPS\x00\x01", "save a flat copy"},
		{"BigTIFF", "II\x2b\x00\x08\x00", "a BigTIFF picture, which is not read\nhint: save it as a TIFF of the usual kind"},
		{"BigTIFF, the other way round", "MM\x00\x2b\x00\x08", "a BigTIFF picture"},
		{"SVG", "<svg xmlns='http://www.w3.org/2000/svg'/>", "an SVG drawing, which is not read\nhint: save it as PDF"},
		{"SVG after a declaration", "\xef\xbb\xbf<?xml version='1.0'?>\n<!-- a chart -->\n<svg>", "an SVG drawing"},
		{"a page of the web", "<html><body>", "not a picture of a known format\nhint: save it as JPEG"},
		{"PostScript", "%!PS-Adobe-3.0", "save it as PDF"},
		{"an archive", "PK\x03\x04", "unpack it"},
		{"text", "harbour at dusk", "not a picture of a known format"},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "harbour.jpg")
			require.NoError(t, os.WriteFile(path, []byte(c.start+strings.Repeat("\x00", 40)), 0o600))
			_, err := Open(path, Default)
			require.ErrorContains(t, err, c.says)
			_, _, err = ReadSize(path, Default)
			require.ErrorContains(t, err, c.says)
		})
	}
}
