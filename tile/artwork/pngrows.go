package artwork

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"io"
)

// The library takes eight bytes a pixel for PNG files of 16 bits a sample, whatever they hold. Those that are not
// interlaced are read here row by row, each brought to 8 bits as it comes (PNG, third edition, clauses from memory).

// pngStart is the signature and the chunk IHDR, with which a file starts (11.2.1).
const pngStart = 8 + 8 + 13 + 4

// readByRow tells whether the rest of an IHDR chunk, from the depth on, is of a picture that is read here.
func readByRow(ihdr []byte) bool { return ihdr[0] == 16 && ihdr[4] == 0 }

// laid is a picture of 8 bits that was laid on a colour where it was transparent.
type laid struct {
	image.Image // *image.Gray or *image.RGBA, opaque
	transparent bool
}

// Opaque tells whether nothing had to be laid on a colour.
func (m laid) Opaque() bool { return !m.transparent }

// only is the picture, of one channel if it was stored as grey and nothing coloured showed through.
func (m laid) only(grey bool) image.Image {
	if rgb, ok := m.Image.(*image.RGBA); ok && grey && !m.transparent {
		return firstChannel(rgb)
	}
	return m.Image
}

func decodePNG(data []byte, under ground) (image.Image, error) {
	if len(data) < pngStart || !readByRow(data[24:29]) {
		return png.Decode(inMemory(data).reader())
	}
	config, err := png.DecodeConfig(inMemory(data).reader()) // which looks at all of the header
	if err != nil {
		return nil, err
	}
	rows := pngRows{chunks: pngChunks{data[pngStart:]}, colour: data[25], under: under}
	rows.channels = map[byte]int{0: 1, 2: 3, 4: 2, 6: 4}[rows.colour]
	m, err := rows.read(config.Width, config.Height)
	if errors.Is(err, io.EOF) {
		err = io.ErrUnexpectedEOF
	}
	return m, err
}

// pngChunks is what is left of a file.
type pngChunks struct{ rest []byte }

// next is the next chunk (5.3), whose check sum is looked at.
func (c *pngChunks) next() (kind string, body []byte, err error) {
	if len(c.rest) < 12 {
		return "", nil, io.ErrUnexpectedEOF
	}
	n := uint64(binary.BigEndian.Uint32(c.rest))
	if n > uint64(len(c.rest)-12) {
		return "", nil, io.ErrUnexpectedEOF
	}
	whole, sum := c.rest[4:8+n], binary.BigEndian.Uint32(c.rest[8+n:])
	if crc32.ChecksumIEEE(whole) != sum {
		return "", nil, errors.New("PNG: a check sum is wrong")
	}
	c.rest = c.rest[12+n:]
	return string(whole[:4]), whole[4:], nil
}

// pngRows reads a picture of 16 bits a sample.
type pngRows struct {
	chunks   pngChunks
	body     []byte // of the IDAT chunk that is being read
	colour   byte
	channels int
	clear    []byte // the sample that stands for what is transparent, of pictures without alpha; nil for none
	under    ground // what that lies on
}

// read reads the whole picture.
func (r *pngRows) read(width, height int) (image.Image, error) {
	for kind := ""; kind != "IDAT"; {
		var err error
		if kind, r.body, err = r.chunks.next(); err != nil {
			return nil, err
		}
		if kind == "tRNS" && r.colour&4 == 0 { // 11.3.1.1
			if len(r.body) != 2*r.channels {
				return nil, errors.New("PNG: what is transparent can't be told")
			}
			r.clear = r.body
		}
	}
	unpacked, err := zlib.NewReader(r)
	if err != nil {
		return nil, err
	}
	grey := r.colour&2 == 0 && !(coloured(r.under.RGBA) && (r.colour&4 != 0 || r.clear != nil))
	var out laid
	var pix []byte
	if grey {
		m := image.NewGray(image.Rect(0, 0, width, height))
		out.Image, pix = m, m.Pix
	} else {
		m := image.NewRGBA(image.Rect(0, 0, width, height))
		out.Image, pix = m, m.Pix
	}
	stride := len(pix) / height
	row, above := make([]byte, 1+2*r.channels*width), make([]byte, 1+2*r.channels*width)
	for y := range height {
		if _, err := io.ReadFull(unpacked, row); err != nil {
			return nil, err
		}
		if err := unfilter(row, above, 2*r.channels); err != nil {
			return nil, err
		}
		if r.narrow(pix[y*stride:][:stride], row[1:], grey, y) {
			out.transparent = true
		}
		row, above = above, row
	}
	if n, err := unpacked.Read(make([]byte, 1)); n > 0 || !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("PNG: its data go on past its rows, or their check sum is wrong (%w)", err)
	}
	for kind := ""; kind != "IEND"; {
		if kind, _, err = r.chunks.next(); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// Read reads the data of the IDAT chunks, which follow each other (11.2.3).
func (r *pngRows) Read(p []byte) (int, error) {
	for len(r.body) == 0 {
		before := r.chunks
		kind, body, err := r.chunks.next()
		if err != nil {
			return 0, err
		}
		if kind != "IDAT" {
			r.chunks = before
			return 0, io.ErrUnexpectedEOF
		}
		r.body = body
	}
	n := copy(p, r.body)
	r.body = r.body[n:]
	return n, nil
}

// unfilter undoes a row's filter (9.2); row and above begin with the filter's type, and n bytes make a pixel.
func unfilter(row, above []byte, n int) error {
	kind := row[0]
	row, above = row[1:], above[1:]
	switch kind {
	case 0:
	case 1: // Sub
		for i := n; i < len(row); i++ {
			row[i] += row[i-n]
		}
	case 2: // Up
		for i, v := range above {
			row[i] += v
		}
	case 3: // Average
		for i := range row {
			left := 0
			if i >= n {
				left = int(row[i-n])
			}
			row[i] += uint8((left + int(above[i])) / 2)
		}
	case 4: // Paeth
		for i := range row {
			var left, corner int
			if i >= n {
				left, corner = int(row[i-n]), int(above[i-n])
			}
			row[i] += paeth(left, int(above[i]), corner)
		}
	default:
		return fmt.Errorf("PNG: filter %d is unknown", kind)
	}
	return nil
}

// paeth is which of the three is nearest to left + up - corner, in this order where it is a draw (9.4).
func paeth(left, up, corner int) uint8 {
	fromLeft, fromUp := abs(up-corner), abs(left-corner)
	fromCorner := abs(left + up - 2*corner)
	switch {
	case fromLeft <= fromUp && fromLeft <= fromCorner:
		return uint8(left)
	case fromUp <= fromCorner:
		return uint8(up)
	}
	return uint8(corner)
}

func abs(v int) int { return max(v, -v) }

// narrow brings a row to 8 bits, on what lies under it, and tells whether any of it was transparent.
func (r *pngRows) narrow(out, row []byte, grey bool, y int) (transparent bool) {
	colours, step := r.channels-int(r.colour&4)/4, 4
	if grey {
		step = 1
	}
	under := [3]uint8{r.under.R, r.under.G, r.under.B}
	for x := range len(out) / step {
		from := row[2*r.channels*x:][:2*r.channels]
		alpha := uint16(65535)
		switch {
		case r.colour&4 != 0:
			alpha = binary.BigEndian.Uint16(from[2*colours:])
		case r.clear != nil && bytes.Equal(from, r.clear):
			alpha = 0
		}
		transparent = transparent || alpha != 65535
		to, add := out[step*x:][:step], r.under.threshold(x, y)
		for k := range min(3, step) {
			to[k] = straight16(binary.BigEndian.Uint16(from[2*min(k, colours-1):]), alpha, under[k], add)
		}
		if !grey {
			to[3] = 255
		}
	}
	return transparent
}
