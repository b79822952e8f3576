package artwork

import (
	"errors"
	"fmt"
	"image"
	"io"

	"golang.org/x/image/tiff"
)

// The library reads no CMYK from TIFF files. What photo editors write is read here: four inks of 8 bits,
// interleaved, in strips, uncompressed, LZW or deflate (TIFF 6.0, sections 3, 13, 14 and 16; clauses from
// memory).
const (
	tagWidth           = 256
	tagHeight          = 257
	tagPhotometric     = 262
	tagStripOffsets    = 273
	tagSamplesPerPixel = 277
	tagRowsPerStrip    = 278
	tagPredictor       = 317
	tagTileWidth       = 322

	photometricPalette = 3
	photometricInks    = 5
	predictorNone      = 1
	predictorAcross    = 2
	inks               = 4
)

// inksDirectory is a file's directory when its picture is of inks.
func inksDirectory(src source) (d directory, ok bool) {
	d, err := readDirectory(src)
	return d, err == nil && d.number(tagPhotometric, 0) == photometricInks
}

// tiffConfig is tiff.DecodeConfig with CMYK.
func tiffConfig(r io.Reader) (image.Config, error) {
	section, ok := r.(*io.SectionReader)
	if !ok {
		return tiff.DecodeConfig(r)
	}
	d, ok := inksDirectory(source{section, section.Size()})
	if !ok {
		return tiff.DecodeConfig(r)
	}
	const mostPx = 1 << 30
	w, h := d.number(tagWidth, 0), d.number(tagHeight, 0)
	if w < 0 || h < 0 || w > mostPx || h > mostPx {
		return image.Config{}, fmt.Errorf("a size of %d x %d pixels can't be", w, h)
	}
	return image.Config{Width: int(w), Height: int(h)}, nil
}

// decodeTIFF is tiff.Decode with CMYK, and with less memory for what is read by the row.
func decodeTIFF(data []byte, under ground) (image.Image, error) {
	src := inMemory(data)
	if d, ok := inksDirectory(src); ok {
		return readInksTIFF(d, data)
	}
	d, err := readDirectory(src)
	_, bits, byRow := d.byRow()
	if err != nil || !byRow {
		return tiff.Decode(src.reader())
	}
	config, err := tiff.DecodeConfig(src.reader()) // which looks at all of the header
	if err != nil {
		return nil, err
	}
	if bits == 16 {
		return readTIFF16(d, data, config, under)
	}
	return readTIFF8(d, data, config)
}

func readInksTIFF(d directory, data []byte) (image.Image, error) {
	samples, bits := d.depths()
	if d.number(tagSamplesPerPixel, 1) != inks || samples != inks || bits != 8 || d.number(tagTileWidth, 0) != 0 {
		return nil, errors.New("CMYK is read at 8 bits, in strips, without alpha")
	}
	m := image.NewCMYK(image.Rect(0, 0, int(d.number(tagWidth, 0)), int(d.number(tagHeight, 0))))
	rows, err := newTIFFRows(d, data, m.Rect.Dy())
	if err != nil {
		return nil, err
	}
	for y := range m.Rect.Dy() {
		row := m.Pix[y*m.Stride:][:m.Stride]
		if err := rows.next(row); err != nil {
			return nil, err
		}
		if rows.across {
			addAcross(row, inks)
		}
	}
	return m, nil
}
