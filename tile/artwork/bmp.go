package artwork

import "encoding/binary"

// inspectBMP finds the file's least length: rows are not compressed (the decoder takes no others) and fill
// whole four bytes (Microsoft, "Bitmap Storage" and BITMAPINFOHEADER).
func inspectBMP(src source, h *header) error {
	b, err := src.bytes(28, 2)
	if err != nil {
		return undecodable(err)
	}
	bits := int64(binary.LittleEndian.Uint16(b))
	h.leastBytes = (int64(h.width)*bits + 31) / 32 * 4 * int64(h.height)
	h.decoding = 4 * h.pixels()
	if bits <= 8 {
		h.decoding += h.pixels() // the indexes beside the colours
	}
	return nil
}
