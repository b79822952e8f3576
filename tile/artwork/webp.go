package artwork

import (
	"encoding/binary"
	"errors"
	"fmt"
	"image"
	"io"

	"golang.org/x/image/webp"
)

// inspectWebP walks the chunks of the RIFF container (RFC 9649, 2.3 to 2.7; clauses in this file are recalled
// from memory).
func inspectWebP(src source, h *header) error {
	start, err := src.bytes(0, 12)
	if err != nil {
		return undecodable(err)
	}
	end := 8 + int64(binary.LittleEndian.Uint32(start[4:]))
	if end > src.size { // the decoder would make room for what the file only claims to have
		return undecodable(fmt.Errorf("%w: it says that it has %d bytes and has %d", io.ErrUnexpectedEOF, end, src.size))
	}
	profile, alpha := false, false
	at := int64(12)
	for blocks := 0; at+8 <= end; blocks++ {
		if blocks == mostBlocks {
			return errEndlessBlocks
		}
		chunk, err := src.bytes(at, 8)
		if err != nil {
			return undecodable(err)
		}
		n := int64(binary.LittleEndian.Uint32(chunk[4:]))
		body := src.part(at+8, min(n, end-at-8))
		switch string(chunk[:4]) {
		case "VP8X":
			if flags, err := body.bytes(0, 1); err == nil && flags[0]&2 != 0 {
				return errors.New("this WebP file is an animation\nhint: save one frame of it as a picture")
			}
		case "VP8L":
			h.decoding = (4 + 4) * h.pixels() // its own pixels, beside those of a transform
		case "VP8 ":
			h.decoding = 3 * h.pixels() / 2
		case "ALPH":
			alpha = true
		case "ICCP":
			if !profile { // only the first one counts: RFC 9649, 2.7.1.4
				profile = true
				h.takeProfile(body)
			}
		case "EXIF":
			h.turn = exifUpright(body)
		}
		at += 8 + n + n&1
	}
	if alpha {
		h.decoding += (1 + 4) * h.pixels() // beside it what is laid on white
	}
	return nil
}

func decodeWebP(data []byte) (image.Image, error) {
	m, err := webp.Decode(inMemory(data).reader())
	if err != nil {
		return nil, err
	}
	switch m := m.(type) {
	case *image.YCbCr:
		widenRange(m)
	case *image.NYCbCrA:
		widenRange(&m.YCbCr)
	}
	return m, nil
}

// widenRange changes planes from the range of video, where luma is 16 to 235 and chroma 16 to 240, to the
// full range that image.YCbCr stands for: Y = 255/219 (y - 16), C = 128 + 255/224 (c - 128). Lossy WebP is
// stored in the former (RFC 6386, 9.2, BT.601; written out in libwebp's src/dsp/yuv.h) and its decoder leaves
// it so (golang/go issue 40173).
func widenRange(m *image.YCbCr) {
	var luma, chroma [256]uint8
	for i := range 256 {
		luma[i] = scaleRounded(i-16, 219, 0)
		chroma[i] = scaleRounded(i-128, 224, 128)
	}
	for i, v := range m.Y {
		m.Y[i] = luma[v]
	}
	for _, plane := range [][]uint8{m.Cb, m.Cr} {
		for i, v := range plane {
			plane[i] = chroma[v]
		}
	}
}

// scaleRounded returns base + 255 v / span, rounded and held within 0 to 255.
func scaleRounded(v, span, base int) uint8 {
	scaled := (2*255*v+span+1024*span)/(2*span) - 512 // 1024 keeps the dividend positive, for division cuts toward zero
	return uint8(min(max(base+scaled, 0), 255))
}
