package artwork

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"io"

	"golang.org/x/image/tiff/lzw"
)

// The library unpacks a strip, which may be the whole picture, into memory that grows as it goes, and takes eight bytes
// a pixel of colour for 16 bits a sample. What is stored in strips, uncompressed, LZW or deflate, is read here row by
// row, that of 16 bits brought to 8 as it comes (TIFF 6.0, sections 3, 4, 6, 13, 14 and 18; clauses from memory).

const (
	photometricWhiteIsZero = 0
	photometricBlackIsZero = 1
	photometricColour      = 2
)

// byRow is the samples of a pixel, 1, 3 or 4, and the bits of each, 8 or 16, of a picture that is read here, else
// false.
func (d directory) byRow() (samples, bits int, ok bool) {
	samples, bits = d.depths()
	if bits != 8 && bits != 16 || d.number(tagTileWidth, 0) != 0 {
		return 0, 0, false
	}
	switch d.number(tagCompression, 1) {
	case 0, 1, 5, 8, 32946: // some writers mean 1 by 0
	default:
		return 0, 0, false
	}
	switch d.number(tagPhotometric, photometricWhiteIsZero) {
	case photometricWhiteIsZero, photometricBlackIsZero:
		ok = samples == 1
	case photometricColour:
		ok = samples == 3 || samples == 4
	}
	return samples, bits, ok
}

// depths counts a pixel's samples and tells the bits of each, 0 where they differ.
func (d directory) depths() (samples, bits int) {
	d.numbers(tagBitsPerSample, func(v int64) bool {
		if samples == 0 {
			bits = int(v)
		} else if int64(bits) != v {
			bits = 0
		}
		samples++
		return samples < 16 // the library looks at no more
	})
	return samples, bits
}

// whiteIsZero tells whether samples count from white to black.
func (d directory) whiteIsZero() bool {
	return d.number(tagPhotometric, photometricWhiteIsZero) == photometricWhiteIsZero
}

// readTIFF8 reads a picture of 8 bits a sample of which byRow is true, and whose header the library has looked at.
func readTIFF8(d directory, data []byte, config image.Config) (image.Image, error) {
	samples, _, _ := d.byRow()
	rows, err := newTIFFRows(d, data, config.Height)
	if err != nil {
		return nil, err
	}
	bounds := image.Rect(0, 0, config.Width, config.Height)
	var m image.Image
	var pix []byte
	switch {
	case samples == 1:
		grey := image.NewGray(bounds)
		m, pix = grey, grey.Pix
	case config.ColorModel == color.NRGBAModel:
		straight := image.NewNRGBA(bounds)
		m, pix = straight, straight.Pix
	default:
		rgb := image.NewRGBA(bounds)
		m, pix = rgb, rgb.Pix
	}
	stride, row, flip := len(pix)/config.Height, make([]byte, samples*config.Width), d.whiteIsZero()
	for y := range config.Height {
		if err := rows.next(row); err != nil {
			return nil, err
		}
		if rows.across {
			addAcross(row, samples)
		}
		out := pix[y*stride:][:stride]
		switch {
		case samples == 3:
			for x := range config.Width {
				from, to := row[3*x:][:3], out[4*x:][:4]
				to[0], to[1], to[2], to[3] = from[0], from[1], from[2], 255
			}
		case flip:
			for x, v := range row {
				out[x] = 255 - v
			}
		default:
			copy(out, row)
		}
	}
	return m, nil
}

// addAcross undoes the predictor of a row of 8 bits a sample.
func addAcross(row []byte, samples int) {
	for i := samples; i < len(row); i++ {
		row[i] += row[i-samples]
	}
}

// readTIFF16 reads one of 16 bits a sample likewise. The library's model tells whether colours are multiplied by their
// alpha.
func readTIFF16(d directory, data []byte, config image.Config, under ground) (image.Image, error) {
	samples, _, _ := d.byRow()
	rows, err := newTIFFRows(d, data, config.Height)
	if err != nil {
		return nil, err
	}
	deep := deepRow{
		samples: make([]uint16, samples*config.Width), each: samples, order: d.order, across: rows.across,
		lay: straight16, under: under,
	}
	if config.ColorModel == color.RGBA64Model {
		deep.lay = premultiplied16
	}
	if d.whiteIsZero() {
		deep.flip = 0xffff
	}
	var out laid
	var pix []byte
	if bounds := image.Rect(0, 0, config.Width, config.Height); samples == 1 {
		m := image.NewGray(bounds)
		out.Image, pix = m, m.Pix
	} else {
		m := image.NewRGBA(bounds)
		out.Image, pix = m, m.Pix
	}
	row, stride := make([]byte, 2*samples*config.Width), len(pix)/config.Height
	for y := range config.Height {
		if err := rows.next(row); err != nil {
			return nil, err
		}
		deep.take(row)
		if deep.narrow(pix[y*stride:][:stride], y) {
			out.transparent = true
		}
	}
	return out, nil
}

// deepRow is a row of 16 bits a sample.
type deepRow struct {
	samples []uint16
	each    int // samples of a pixel
	order   binary.ByteOrder
	across  bool   // each sample is stored as what it differs by from the one to its left
	flip    uint16 // 0xffff where 0 is white
	lay     func(c, a uint16, under uint8, add threshold) uint8
	under   ground
}

// take takes a row as it is stored.
func (r *deepRow) take(row []byte) {
	if r.order == binary.ByteOrder(binary.LittleEndian) {
		for i := range r.samples {
			r.samples[i] = binary.LittleEndian.Uint16(row[2*i:])
		}
	} else {
		for i := range r.samples {
			r.samples[i] = binary.BigEndian.Uint16(row[2*i:])
		}
	}
	if r.across {
		for i := r.each; i < len(r.samples); i++ {
			r.samples[i] += r.samples[i-r.each]
		}
	}
}

// narrow brings the row to 8 bits, on what lies under it, and tells whether any of it was transparent.
func (r *deepRow) narrow(out []byte, y int) (transparent bool) {
	if r.each == 1 {
		for x, v := range r.samples {
			out[x] = narrow16(v^r.flip, r.under.threshold(x, y))
		}
		return false
	}
	for x := range len(out) / 4 {
		from, to, alpha := r.samples[r.each*x:][:r.each], out[4*x:][:4], uint16(0xffff)
		if r.each == 4 {
			alpha = from[3]
		}
		transparent = transparent || alpha != 0xffff
		add := r.under.threshold(x, y)
		to[0], to[1] = r.lay(from[0], alpha, r.under.R, add), r.lay(from[1], alpha, r.under.G, add)
		to[2], to[3] = r.lay(from[2], alpha, r.under.B, add), 255
	}
	return transparent
}

// tiffRows unpacks a picture's rows from its strips, top to bottom.
type tiffRows struct {
	data            []byte
	compression     int64
	across          bool // the predictor of section 14 was used, which is not undone here
	offsets, counts []int64
	perStrip, left  int // rows of a strip, and those not yet read of the one that is being read
	strip           io.Reader
}

func newTIFFRows(d directory, data []byte, height int) (*tiffRows, error) {
	r := &tiffRows{data: data, compression: d.number(tagCompression, 1), perStrip: height}
	switch p := d.number(tagPredictor, predictorNone); p {
	case predictorNone:
	case predictorAcross:
		r.across = true
	default:
		return nil, fmt.Errorf("predictor %d is unknown", p)
	}
	if rows := d.number(tagRowsPerStrip, 0); rows > 0 && rows < int64(height) {
		r.perStrip = int(rows)
	}
	strips := (height + r.perStrip - 1) / r.perStrip
	collect := func(into *[]int64) func(int64) bool {
		return func(v int64) bool {
			*into = append(*into, v)
			return len(*into) < strips
		}
	}
	d.numbers(tagStripOffsets, collect(&r.offsets))
	d.numbers(tagStripByteCounts, collect(&r.counts))
	if len(r.offsets) < strips || len(r.counts) < strips {
		return nil, io.ErrUnexpectedEOF
	}
	return r, nil
}

// next reads the next row, which is as long as a row is.
func (r *tiffRows) next(row []byte) error {
	if r.left == 0 {
		if err := r.open(); err != nil {
			return err
		}
		r.left = r.perStrip
	}
	r.left--
	_, err := io.ReadFull(r.strip, row)
	return err
}

// open begins the next strip. Data from LZW and deflate are bounded by the rows asked for, whatever the file says.
func (r *tiffRows) open() (err error) {
	if len(r.offsets) == 0 {
		return io.ErrUnexpectedEOF
	}
	from, n, size := r.offsets[0], r.counts[0], int64(len(r.data))
	if from < 0 || n < 0 || from > size || n > size-from {
		return io.ErrUnexpectedEOF
	}
	r.offsets, r.counts = r.offsets[1:], r.counts[1:]
	packed := bytes.NewReader(r.data[from : from+n])
	switch r.compression {
	case 0, 1:
		r.strip = packed
	case 5:
		r.strip = lzw.NewReader(packed, lzw.MSB, 8)
	case 8, 32946:
		if again, ok := r.strip.(zlib.Resetter); ok {
			return again.Reset(packed, nil)
		}
		r.strip, err = zlib.NewReader(packed)
	default:
		err = fmt.Errorf("compression %d is not read by the row", r.compression)
	}
	return err
}
