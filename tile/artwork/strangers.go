package artwork

import (
	"bytes"
	"errors"
	"fmt"
)

// stranger is a kind of file that people take for a picture and that is not read.
type stranger struct {
	magic string // its first bytes; ? stands for any byte
	what  string
	do    string // what to do about it
}

// What to do about files that are not read.
const (
	asJPEG    = "save it as JPEG, or as TIFF with its colour profile"
	developed = "develop it, and save it as JPEG, or as TIFF with its colour profile"
	asPDF     = "save it as PDF, or as PNG"
	oneFrame  = "save one frame of it as JPEG or PNG"
)

// strangers are told by their first bytes, as their specifications give them: ISO/IEC 14496-12, 4.3 for those with
// ftyp, ISO 23008-12 (HEIF), ISO/IEC 18181-2 (JPEG XL), ISO/IEC 15444-1 (JPEG 2000), the others as their makers
// describe them. All are recalled from memory.
var strangers = []stranger{
	{"????ftyphei?", "an HEIC picture", asJPEG},
	{"????ftyphev?", "an HEIC picture", asJPEG},
	{"????ftypmif1", "an HEIC or AVIF picture", asJPEG},
	{"????ftypmsf1", "an HEIC or AVIF picture", asJPEG},
	{"????ftypavi?", "an AVIF picture", asJPEG},
	{"????ftypcrx ", "a raw camera file (CR3)", developed},
	{"????ftyp", "a film", oneFrame},
	{"\x1a\x45\xdf\xa3", "a film", oneFrame},
	{"RIFF????AVI ", "a film", oneFrame},
	{"\xff\x0a", "a JPEG XL picture", asJPEG},
	{"\x00\x00\x00\x0cJXL ", "a JPEG XL picture", asJPEG},
	{"\x00\x00\x00\x0cjP  ", "a JPEG 2000 picture", asJPEG},
	{"\xff\x4f\xff\x51", "a JPEG 2000 picture", asJPEG},
	{"8BPS", "a PSD file with layers", "save a flat copy as JPEG, PNG or TIFF"},
	{"gimp xcf", "an XCF file with layers", "export it as JPEG, PNG or TIFF"},
	{"II\x2b\x00", "a BigTIFF picture", "save it as a TIFF of the usual kind, or as PNG"},
	{"MM\x00\x2b", "a BigTIFF picture", "save it as a TIFF of the usual kind, or as PNG"},
	{"FUJIFILMCCD-RAW", "a raw camera file", developed},
	{"FOVb", "a raw camera file", developed},
	{"IIRO", "a raw camera file", developed},
	{"IIRS", "a raw camera file", developed},
	{"MMOR", "a raw camera file", developed},
	{"IIU\x00", "a raw camera file", developed},
	{"\x76\x2f\x31\x01", "an OpenEXR picture", "save it as PNG or TIFF of 16 bits"},
	{"#?RADIANCE", "a Radiance HDR picture", "save it as PNG or TIFF of 16 bits"},
	{"%!PS", "a PostScript file", asPDF},
	{"\xc5\xd0\xd3\xc6", "a PostScript file", asPDF},
	{"PK\x03\x04", "a ZIP archive", "unpack it, and name the picture in it"},
}

// svgWithin is how far into a file its first tag is looked for, past comments and declarations.
const svgWithin = 1 << 10

// strange says what a file is that no decoder here takes, and what to do about it.
func strange(src source) error {
	start, err := src.bytes(0, min(src.size, svgWithin))
	if err != nil {
		return pathError(err)
	}
	for _, s := range strangers {
		if matches(start, s.magic) {
			return fmt.Errorf("this is %s, which is not read\nhint: %s", s.what, s.do)
		}
	}
	text := bytes.TrimLeft(bytes.TrimPrefix(start, []byte("\xef\xbb\xbf")), " \t\r\n")
	if bytes.HasPrefix(text, []byte("<")) && bytes.Contains(text, []byte("<svg")) {
		return errors.New("this is an SVG drawing, which is not read\nhint: " + asPDF)
	}
	return errors.New("this is not a picture of a known format\nhint: save it as JPEG, PNG, TIFF, BMP, GIF, WebP or PDF")
}
