package artwork

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"errors"
	"fmt"
	"io"
)

// deflateRatio is the most that deflate can shrink: 258 bytes to two bits (zlib, Technical Details, "Maximum
// Compression Factor").
const deflateRatio = 1032

// inspectPNG walks the chunks (PNG, third edition, 5.3; clauses in this file are recalled from memory). A
// broken chunk ends the walk; the decoder will say what is wrong.
func inspectPNG(src source, h *header) error {
	var size, profile, exif bool
	at := int64(8)
	for range mostBlocks {
		start, err := src.bytes(at, 8)
		if err != nil {
			return nil
		}
		n, body := int64(binary.BigEndian.Uint32(start)), at+8
		switch string(start[4:]) {
		case "IHDR": // 11.2.1
			// A second one is an error to the decoder, but only once it has made room for the first one's pixels.
			if b, err := src.bytes(body, 13); err == nil && !size {
				size = true
				depth, colour := int64(b[8]), b[9]
				h.grey = colour&2 == 0
				channels := map[byte]int64{0: 1, 2: 3, 3: 1, 4: 2, 6: 4}[colour]
				h.decoding = pngDecoding(b[8:], h.pixels())
				h.leastBytes = int64(h.width) * int64(h.height) * channels * depth / 8 / deflateRatio
			}
		case "iCCP": // 11.3.2.3
			if !profile {
				profile = true
				if h.icc, err = inflateProfile(src.part(body, n)); err != nil {
					h.dropProfile(err)
				}
			}
		case "eXIf": // 11.3.4.5
			if !exif {
				exif = true
				h.turn = exifUpright(src.part(body, n))
			}
		case "IEND":
			return nil
		}
		at = body + n + 4 // the check sum follows
	}
	return errEndlessBlocks
}

// pngDecoding is the bytes that decoding so many pixels takes, by the rest of an IHDR chunk, from the depth on.
func pngDecoding(ihdr []byte, px int64) int64 {
	const palette, alpha, colours = 1, 4, 2
	depth, colour, interlaced := ihdr[0], ihdr[1], ihdr[4] != 0
	grey, clear := colour&colours == 0, colour&alpha != 0
	switch {
	case readByRow(ihdr) && grey:
		return px
	case readByRow(ihdr):
		return 4 * px
	}
	bytes := px * 4 // a pixel of colour, or of grey that is laid on white
	if grey && !clear {
		bytes = px
	}
	switch {
	case colour&palette != 0:
		bytes += px // the indexes beside the colours
	case grey && clear:
		bytes += px // what is laid on white, beside the grey that is taken from it
	}
	if depth == 16 {
		bytes *= 2
	}
	if interlaced {
		bytes += bytes / 2 // the last pass, which has every other row, beside the whole
	}
	return bytes
}

// inflateProfile returns the profile of an iCCP chunk: a name, a zero, the method (0), then zlib's data.
func inflateProfile(chunk source) ([]byte, error) {
	start, err := chunk.bytes(0, min(chunk.size, 81)) // the name has 79 letters at most
	if err != nil {
		return nil, err
	}
	zero := bytes.IndexByte(start, 0)
	if zero < 0 || zero+1 >= len(start) || start[zero+1] != 0 {
		return nil, errors.New("its chunk doesn't say how it is stored")
	}
	z, err := zlib.NewReader(chunk.part(int64(zero)+2, chunk.size).reader())
	if err != nil {
		return nil, fmt.Errorf("it can't be unpacked (%w)", err)
	}
	profile, err := io.ReadAll(io.LimitReader(z, maxICCBytes+1))
	if err != nil {
		return nil, fmt.Errorf("it can't be unpacked (%w)", err)
	}
	if len(profile) > maxICCBytes {
		return nil, errICCTooLong
	}
	return profile, nil
}
