package artwork

import (
	"errors"
	"fmt"
	"math"
)

// TIFF tags: TIFF 6.0, part 1 and section 15; 34675 is ICC.1:2010, Annex B. Clauses and pages in this file
// are recalled from memory.
const (
	tagNewSubfileType  = 254
	tagBitsPerSample   = 258
	tagCompression     = 259
	tagStripByteCounts = 279
	tagPlanar          = 284
	tagTileLength      = 323
	tagTileByteCounts  = 325
	tagICC             = 34675
)

// unpackRatio gives the most bytes that one stored byte can unpack to, by compression (TIFF 6.0, sections 9
// to 13). Fax codes are not here: a row of any width may take one bit.
var unpackRatio = map[int64]int64{
	0:     1, // some writers mean 1
	1:     1,
	5:     lzwRatio,
	8:     deflateRatio,
	32773: 64, // PackBits: 128 bytes to two
	32946: deflateRatio,
}

// lzwRatio is the most that LZW with codes of 12 bits can shrink: a code stands for a string shorter than the table,
// 4096 bytes to 12 bits. Shorter codes have shorter tables and do worse. It holds for TIFF and GIF.
const lzwRatio = 4096 * 8 / 12

func inspectTIFF(src source, h *header) error {
	d, err := readDirectory(src)
	if err != nil {
		return undecodable(err)
	}
	h.turn = d.upright()
	if d.number(tagNewSubfileType, 0)&1 != 0 { // TIFF 6.0, page 36. Raw camera files look like this.
		return errors.New("the first picture in this TIFF file is only a preview\n" +
			"hint: develop or export it as JPEG, PNG or a " +
			"plain TIFF")
	}
	if profile, _, err := d.field(tagICC); err == nil {
		h.takeProfile(profile)
	} else if err != errNoField {
		h.dropProfile(err)
	}
	var stored int64
	counts := func(v int64) bool {
		stored += v
		return true
	}
	d.numbers(tagStripByteCounts, counts)
	d.numbers(tagTileByteCounts, counts)
	// Strips that all point at the same bytes would keep the decoder busy far longer than the file's length allows for.
	// Some writers share the bytes of empty tiles, so twice the file is still taken as honest.
	if stored > 2*src.size {
		return fmt.Errorf("its strips claim %d bytes and the file has %d\nhint: open it in a picture editor and save it anew",
			stored, src.size)
	}
	var bits int64
	d.numbers(tagBitsPerSample, func(v int64) bool {
		bits += v
		return bits < 1<<16
	})
	bits = min(max(bits, 1), 64)
	compression := d.number(tagCompression, 1)
	h.decoding = tiffDecoding(d, h.pixels(), int64(h.width), bits)
	ratio, known := unpackRatio[compression]
	switch {
	case known:
		h.leastBytes = int64(h.width) * int64(h.height) * bits / 8 / ratio
	case compression == faxGroup3 || compression == faxGroup4:
		// The decoder would find out only when it has made room for the pixels.
		if bits != 1 || h.width > faxMostPx {
			return fmt.Errorf("it is packed as a fax, which holds black and white of at most %d pixels across\n"+
				"hint: save it with "+
				"LZW or deflate", faxMostPx)
		}
		h.leastBytes = int64(h.height) / 8 // a row takes a bit or more
	default:
		return fmt.Errorf("its compression, number %d, is not read\nhint: save it uncompressed, or with LZW or deflate",
			compression)
	}
	return nil
}

// tiffDecoding is the bytes that decoding so many pixels of so many bits takes: the picture, and a row where it is read
// by the row, else the longest strip or tile.
func tiffDecoding(d directory, px, width, bits int64) int64 {
	if samples, _, ok := d.byRow(); ok {
		each := int64(1)
		if samples > 1 {
			each = 4
		}
		return each*px + 2*width*bits/8
	}
	samples := max(d.number(tagSamplesPerPixel, 1), 1)
	each := int64(1)
	switch {
	case d.number(tagPhotometric, 0) == photometricInks:
		return inks*px + width*bits/8
	case samples > 1:
		each = 4
	case d.number(tagPhotometric, 0) == photometricPalette:
		each = 1 + 4 // indexes and colours
	}
	if bits/samples > 8 {
		each *= 2
	}
	height := px / max(width, 1)
	strip := min(max(d.number(tagRowsPerStrip, math.MaxInt32), 1), height) * width
	if across := d.number(tagTileWidth, 0); across > 0 {
		strip = min(min(across, px)*min(d.number(tagTileLength, 1), px), px)
	}
	if d.number(tagCompression, 1) > 1 {
		strip *= packedGrowth
	}
	return each*px + strip*bits/8
}

// packedGrowth is how many times its length the library takes for a strip that it unpacks, in memory that is taken anew
// as it grows: measured, 3.3.
const packedGrowth = 4

// Fax compression (TIFF 6.0, section 11).
const (
	faxGroup3 = 3
	faxGroup4 = 4
	faxMostPx = 1 << 16 // wider than any scanner's row; one row of any width would take a bit
)
