package artwork

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// inspectGIF finds the first frame, which is all that is decoded: it may be smaller than the screen that the
// file begins with (GIF89a, sections 18 and 20), and only its pixels are worth printing. A broken block ends
// the walk; the decoder will say what is wrong.
func inspectGIF(src source, h *header) error {
	start, err := src.bytes(0, 13)
	if err != nil {
		return undecodable(err)
	}
	at := int64(13)
	if flags := start[10]; flags&0x80 != 0 { // a colour table follows
		at += 3 << (flags&7 + 1)
	}
	inside := false // an extension, whose blocks end with an empty one
	for range mostBlocks {
		block, err := src.bytes(at, 1)
		if err != nil {
			return undecodable(err)
		}
		switch {
		case inside:
			at += 1 + int64(block[0])
			inside = block[0] != 0
		case block[0] == '!': // an extension: its label follows
			at += 2
			inside = true
		case block[0] == ',':
			frame, err := src.bytes(at, 10)
			if err != nil {
				return undecodable(err)
			}
			return h.takeFrame(int(binary.LittleEndian.Uint16(frame[5:])), int(binary.LittleEndian.Uint16(frame[7:])))
		default:
			return errors.New("it holds no frame\nhint: open it in a picture editor and save it anew")
		}
	}
	return errEndlessBlocks
}

// takeFrame takes a GIF's frame of w x ht pixels for its picture.
func (h *header) takeFrame(w, ht int) error {
	if w > h.width || ht > h.height {
		return errors.New("its first frame is larger than its screen\nhint: open it in a picture editor and save it anew")
	}
	if w < h.width || ht < h.height {
		h.warnings = append(h.warnings, fmt.Sprintf("only the first frame is taken: %d x %d pixels of %d x %d", w, ht,
			h.width, h.height))
	}
	h.width, h.height = w, ht
	h.decoding = (1 + 4) * h.pixels() // indexes and colours
	h.leastBytes = int64(w) * int64(ht) / lzwRatio
	return nil
}
