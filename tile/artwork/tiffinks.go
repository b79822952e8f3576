package artwork

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"image"
	"io"

	"golang.org/x/image/tiff"
	"golang.org/x/image/tiff/lzw"
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

// decodeTIFF is tiff.Decode with CMYK. Data from LZW and deflate are bounded by the picture, whatever the file says.
func decodeTIFF(data []byte) (image.Image, error) {
	src := inMemory(data)
	d, ok := inksDirectory(src)
	if !ok {
		return tiff.Decode(src.reader())
	}
	bits := 0
	d.numbers(tagBitsPerSample, func(v int64) bool {
		if v == 8 {
			bits++
		}
		return bits < inks
	})
	if d.number(tagSamplesPerPixel, 1) != inks || bits != inks || d.number(tagTileWidth, 0) != 0 {
		return nil, errors.New("CMYK is read at 8 bits, in strips, without alpha")
	}
	m := image.NewCMYK(image.Rect(0, 0, int(d.number(tagWidth, 0)), int(d.number(tagHeight, 0))))
	predictor := d.number(tagPredictor, predictorNone)
	if predictor != predictorNone && predictor != predictorAcross {
		return nil, fmt.Errorf("predictor %d is unknown", predictor)
	}
	if err := d.strips(data, m); err != nil {
		return nil, err
	}
	if predictor == predictorAcross {
		for y := range m.Rect.Dy() {
			row := m.Pix[y*m.Stride:][:m.Stride]
			for i := inks; i < len(row); i++ {
				row[i] += row[i-inks]
			}
		}
	}
	return m, nil
}

// strips unpacks the strips, top to bottom, into the picture's rows.
func (d directory) strips(data []byte, m *image.CMYK) error {
	var offsets, counts []int64
	most := m.Rect.Dy() // a strip has a row at least
	collect := func(into *[]int64) func(int64) bool {
		return func(v int64) bool {
			*into = append(*into, v)
			return len(*into) < most
		}
	}
	d.numbers(tagStripOffsets, collect(&offsets))
	d.numbers(tagStripByteCounts, collect(&counts))
	rows := int(max(1, min(d.number(tagRowsPerStrip, int64(most)), int64(most))))
	rest := m.Pix
	for i := range min(len(offsets), len(counts)) {
		if len(rest) == 0 {
			break
		}
		packed, err := inMemory(data).bytes(offsets[i], counts[i])
		if err != nil {
			return err
		}
		var r io.Reader = bytes.NewReader(packed)
		switch c := d.number(tagCompression, 1); c {
		case 1:
		case 5:
			r = lzw.NewReader(r, lzw.MSB, 8)
		case 8, 32946:
			if r, err = zlib.NewReader(r); err != nil {
				return err
			}
		default:
			return fmt.Errorf("compression %d of CMYK is not read", c)
		}
		n := min(rows*m.Stride, len(rest))
		if _, err := io.ReadFull(r, rest[:n]); err != nil {
			return err
		}
		rest = rest[n:]
	}
	if len(rest) > 0 {
		return io.ErrUnexpectedEOF
	}
	return nil
}
