package artwork

import (
	"bytes"
	"encoding/binary"
	"image"
	"image/color"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// webpOf puts one chunk of coded picture in a WebP file.
func webpOf(kind string, body []byte) []byte {
	return withRIFF([]byte("RIFF\x00\x00\x00\x00WEBP"), riffChunk(kind, body))
}

// losslessOf is a VP8L chunk's body for w x h pixels with nothing behind: a mark, then 14 bits for each side
// less one (RFC 9649, 3.4; clauses in this file are recalled from memory).
func losslessOf(w, h int) []byte {
	return append(binary.LittleEndian.AppendUint32([]byte{0x2f}, uint32(w-1)|uint32(h-1)<<14), make([]byte, 8)...)
}

// lossyOf is a VP8 chunk's body for w x h pixels with nothing behind: a key frame's tag, a mark, 14 bits for
// each side (RFC 6386, 9.1).
func lossyOf(w, h int) []byte {
	b := []byte{0x10, 0x02, 0, 0x9d, 0x01, 0x2a}
	b = binary.LittleEndian.AppendUint16(b, uint16(w))
	return append(binary.LittleEndian.AppendUint16(b, uint16(h)), make([]byte, 40)...)
}

// TestBombsInsideTheBound: headers that claim no more pixels than are allowed, in files that can't hold them,
// are refused before memory is taken for the pixels.
func TestBombsInsideTheBound(t *testing.T) {
	const side = 20_000 // 400 megapixels
	le, be := binary.LittleEndian, binary.BigEndian
	tiffOf := func(w, h int, compression, photometric uint16, bits ...uint16) []byte {
		return directoryFile(le, []byte{0xff, 0xff, 0xff, 0xff},
			longs(le, 256, uint32(w)), longs(le, 257, uint32(h)), shorts(le, 258, bits...), shorts(le, 259, compression),
			shorts(le, 262, photometric),
			longs(le, 273, 8), shorts(le, 277, uint16(len(bits))), longs(le, 278, uint32(h)), longs(le, 279, 4))
	}
	ihdr := func(colour byte) []byte {
		sides := be.AppendUint32(be.AppendUint32(nil, side), side)
		return pngChunk("IHDR", append(sides, 16, colour, 0, 0, 0))
	}
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"tiff of an unknown compression": {tiffOf(side, side, 99, 2, 16, 16, 16),
			"compression, number 99, is not read"},
		"tiff of inks of an unknown one": {tiffOf(side, side, 99, photometricInks, 8, 8, 8, 8),
			"compression, number 99, is not read"},
		"tiff of jpeg":          {tiffOf(side, side, 7, 2, 8, 8, 8), "a TIFF compressed as JPEG, which is not read"},
		"tiff, a fax in colour": {tiffOf(side, side, faxGroup4, 2, 16, 16, 16), "packed as a fax"},
		"tiff, a fax of inks": {tiffOf(side, side, faxGroup3, photometricInks, 8, 8, 8, 8),
			"packed as a fax"},
		"tiff, a fax of one endless row":     {tiffOf(side*side, 1, faxGroup4, 1, 1), "packed as a fax"},
		"tiff, a fax of nothing":             {tiffOf(side, side, faxGroup4, 1, 1), "cut short, or its header is false"},
		"tiff without compression, marked 0": {tiffOf(side, side, 0, 2, 16, 16, 16), "cut short, or its header is false"},
		"png that takes its header back": {slices.Concat([]byte("\x89PNG\r\n\x1a\n"), ihdr(6),
			pngChunk("IDAT", []byte("x\x9c")), ihdr(5), pngChunk("IEND", nil)), "cut short, or its header is false"},
		"webp, lossless, 268 megapixels": {webpOf("VP8L", losslessOf(1<<14, 1<<14)),
			"even colour, or its header is false"},
		"webp, lossy, 268 megapixels": {webpOf("VP8 ", lossyOf(1<<14-1, 1<<14-1)),
			"even colour, or its header is false"},
		"webp, small canvas, large picture": {withRIFF(webpOf("VP8X", make([]byte, 10)),
			riffChunk("VP8L", losslessOf(1<<14, 1<<14))), "webp: invalid format"},
		"jpeg of four inks, progressive":       {progressiveOf(side, side), "cut short, or its header is false"},
		"gif whose frame is beyond its screen": {giantFrame(t), "larger than its screen"},
	} {
		t.Run(name, func(t *testing.T) {
			path := saved(t, c.data)
			var err error
			took := allocated(func() { _, err = Open(path, Default) })
			requireClear(t, err, path, c.want)
			require.Less(t, took, 1<<20, "bytes taken from the heap")
			_, err = decode(c.data, Reading{Limits: Default})
			require.ErrorContains(t, err, c.want)
		})
	}
}

func progressiveOf(w, h uint16) []byte {
	frame := binary.BigEndian.AppendUint16([]byte{8}, h)
	frame = append(binary.BigEndian.AppendUint16(frame, w), 4, 1, 0x11, 0, 2, 0x11, 0, 3, 0x11, 0, 4, 0x11, 0)
	return slices.Concat([]byte{0xff, 0xd8}, segment(0xc2, frame), segment(0xda, []byte{1, 1, 0, 0, 0, 0}),
		[]byte{0xff, 0xd9})
}

// giantFrame is a GIF of a small screen whose frame is 65535 pixels a side.
func giantFrame(t testing.TB) []byte {
	data := encodeGIF(t, paletted(0, 0))
	frame := bytes.Index(data, []byte{',', 0, 0, 0, 0, 48})
	copy(data[frame+5:], []byte{0xff, 0xff, 0xff, 0xff})
	return data
}

// TestMaxPixels: the bound is the caller's, up and down, and holds for the header.
func TestMaxPixels(t *testing.T) {
	path := saved(t, encodePNG(t, image.NewGray(image.Rect(0, 0, 100, 50))))
	for maxPixels, ok := range map[int]bool{1: false, 4999: false, 5000: true, DefaultMaxPixels: true, 1 << 62: true} {
		_, err := Open(path, upTo(maxPixels))
		_, _, sizeErr := ReadSize(path, upTo(maxPixels))
		if ok {
			require.NoError(t, err)
			require.NoError(t, sizeErr)
			continue
		}
		requireClear(t, err, path, "100 x 50 pixels are more than the")
		var tooMany *TooManyPixelsError
		require.ErrorAs(t, err, &tooMany)
		require.Equal(t, TooManyPixelsError{100, 50, maxPixels}, *tooMany)
		require.Equal(t, err.Error(), sizeErr.Error())
	}
	// A giant is let through to its bytes when that many pixels are asked for, and fails there for want of them.
	for name, data := range giant(t, 50_000, 50_000) {
		giantPath := saved(t, data)
		_, _, err := ReadSize(giantPath, Limits{3e9, 1e12})
		requireClear(t, err, giantPath, "cut short, or its header is false: 50000 x 50000")
		require.NotContains(t, err.Error(), "more than", name)
	}
}

// TestLongFiles: a file that is longer than its pixels can need is refused for its length alone, and one of
// endless empty blocks is not walked to its end.
func TestLongFiles(t *testing.T) {
	path := filepath.Join(t.TempDir(), "picture")
	require.NoError(t, os.WriteFile(path, encodePNG(t, patchPicture()), 0o600))
	require.NoError(t, os.Truncate(path, 100<<20)) // a hole: no disk is taken
	_, _, err := ReadSize(path, upTo(1e6))
	requireClear(t, err, path, "the file has 104857600 bytes, more than 1000000 pixels can need")

	const many = mostBlocks + 1
	gray := encodePNG(t, greyPicture())
	const afterIHDR = 8 + 8 + 13 + 4
	gifFile := encodeGIF(t, paletted(0, 0))
	frame := bytes.Index(gifFile, []byte{',', 0, 0, 0, 0, 48})
	for name, data := range map[string][]byte{
		"png":  slices.Concat(gray[:afterIHDR], make([]byte, 12*many), gray[afterIHDR:]),
		"webp": withRIFF(fixture(t, "patches-lossy-alpha.webp"), make([]byte, 8*many)),
		"gif, one extension": slices.Concat(gifFile[:frame], []byte{'!', 0xfe}, bytes.Repeat([]byte{1, 0}, many), []byte{0},
			gifFile[frame:]),
		"gif, many": slices.Concat(gifFile[:frame], bytes.Repeat([]byte{'!', 0xfe, 0}, many), gifFile[frame:]),
	} {
		_, err := readHeader(inMemory(data), Default)
		require.ErrorIs(t, err, errEndlessBlocks, name)
	}
}

// TestColourBeyondThePalette: pixels of a colour that the palette has not. A well-known imaging library
// crashes in its scan of such a TIFF file (CVE-2023-36308). Here it is an error where the decoder says so,
// and black otherwise.
func TestColourBeyondThePalette(t *testing.T) {
	le := binary.LittleEndian
	short := make([]uint16, 3*65) // the crash was at colour 70 of 65
	tiffFile8 := tiffFile(le, 2, 1, []byte{3, 70}, []uint16{8}, 3, shorts(le, 320, short...))
	_, err := decodeGuarded(tiffFile8)
	require.ErrorContains(t, err, "can't be decoded (tiff: invalid format: invalid color index")

	black := color.RGBA{0, 0, 0, 255}
	four := image.NewPaletted(image.Rect(0, 0, 4, 1), color.Palette{color.White, color.White, color.White, color.Gray{9}})
	copy(four.Pix, []uint8{0, 1, 2, 3})
	full := encodePNG(t, four)
	at := bytes.Index(full, []byte("PLTE"))
	p, err := decodeGuarded(slices.Concat(full[:at-4], pngChunk("PLTE", full[at+4:at+4+9]), full[at+4+12+4:]))
	require.NoError(t, err)
	requireSound(t, p, 4)
	require.Equal(t, color.RGBA{255, 255, 255, 255}, upright(p, 2, 0))
	require.Equal(t, black, upright(p, 3, 0))

	// Should a decoder let one through, as the TIFF decoder did when the crash was found.
	m := image.NewPaletted(image.Rect(0, 0, 2, 1), make(color.Palette, 65))
	for i := range m.Palette {
		m.Palette[i] = color.White
	}
	copy(m.Pix, []uint8{64, 70})
	compacted, _, err := compact(m, false, Reading{}.ground(), nil)
	require.NoError(t, err)
	require.Equal(t, color.RGBA{255, 255, 255, 255}, compacted.At(0, 0))
	require.Equal(t, black, compacted.At(1, 0))
}

// TestDecoderCrash: LZW data that never clears its table makes the TIFF decoder crash after 65,000 codes
// (golang/go issue 11386, open with golang.org/x/image v0.47.0). It comes out as an error, for the library's
// pictures and for those of inks, which are read here.
func TestDecoderCrash(t *testing.T) {
	const seed, codes = 3, 66_000
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	var coded []byte
	bits, held, width, next := uint64(0), 0, 9, 257
	for range codes {
		bits, held = bits<<width|uint64(r.IntN(256)), held+width // a byte as itself
		for ; held >= 8; held -= 8 {
			coded = append(coded, byte(bits>>(held-8)))
		}
		next++
		if next+1 >= 1<<width && width < 12 { // TIFF widens its codes one early (TIFF 6.0, section 13)
			width++
		}
	}
	le := binary.LittleEndian
	for name, samples := range map[string][]uint16{"grey": {8}, "inks": {8, 8, 8, 8}} {
		photometric := map[string]uint16{"grey": 1, "inks": photometricInks}[name]
		path := saved(t, directoryFile(le, coded,
			longs(le, 256, 400), longs(le, 257, 400), shorts(le, 258, samples...), shorts(le, 259, 5),
			shorts(le, 262, photometric),
			longs(le, 273, 8), shorts(le, 277, uint16(len(samples))), longs(le, 278, 400), longs(le, 279, uint32(len(coded)))))
		w, h, err := ReadSize(path, Default)
		require.NoError(t, err, name)
		require.Equal(t, image.Pt(400, 400), image.Pt(w, h))
		p, err := Open(path, Default)
		requireClear(t, err, path, "open it in a picture editor and save it anew")
		require.Nil(t, p)
	}
}
