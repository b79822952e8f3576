package pdf_test

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/jpeg"
	"image/png"
	"math/bits"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// jpegFile stores a picture with its profile, if any, in chunks of at most so many bytes, the last first
// (ICC.1:2010, annex B.4; recalled from memory).
func jpegFile(t *testing.T, m image.Image, profile []byte, chunkBytes int) []byte {
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, m, &jpeg.Options{Quality: 100}))
	file := b.Bytes()
	chunks := slices.Collect(slices.Chunk(profile, chunkBytes))
	var segments []byte
	for i, chunk := range slices.Backward(chunks) {
		body := append([]byte("ICC_PROFILE\x00"), byte(i+1), byte(len(chunks)))
		body = append(body, chunk...)
		segments = append(segments, 0xff, 0xe2)
		segments = binary.BigEndian.AppendUint16(segments, uint16(len(body)+2))
		segments = append(segments, body...)
	}
	return slices.Concat(file[:2], segments, file[2:])
}

// pngFile stores a picture with an iCCP chunk after the header (PNG, third edition, 11.3.2.3; recalled from memory).
func pngFile(t *testing.T, m image.Image, profile []byte) []byte {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	file := b.Bytes()
	if profile == nil {
		return file
	}
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	_, err := z.Write(profile)
	require.NoError(t, err)
	require.NoError(t, z.Close())
	body := append([]byte("iCCPharbour\x00\x00"), packed.Bytes()...)
	chunk := append(binary.BigEndian.AppendUint32(nil, uint32(len(body)-4)), body...)
	chunk = binary.BigEndian.AppendUint32(chunk, crc32.ChecksumIEEE(body))
	const afterHeader = 8 + 8 + 13 + 4
	return slices.Concat(file[:afterHeader], chunk, file[afterHeader:])
}

// tiffFile stores a picture uncompressed in one strip (TIFF 6.0, sections 2 to 6; tag 34675 is the profile:
// ICC.1:2010, annex B.5; recalled from memory).
func tiffFile(m image.Image, profile []byte) []byte {
	pixels, photometric := samples(m), uint32(2)
	channels := uint32(len(pixels) / (m.Bounds().Dx() * m.Bounds().Dy()))
	if channels == 1 {
		photometric = 1
	}
	le := binary.LittleEndian
	out := slices.Concat([]byte("II\x2a\x00\x00\x00\x00\x00"), pixels)
	depths, at := uint32(8), uint32(len(out))
	if channels == 3 { // too long to stand in the entry
		depths = at
		out = append(out, 8, 0, 8, 0, 8, 0)
	}
	profileAt := uint32(len(out))
	out = append(out, profile...)
	out = append(out, make([]byte, len(out)&1)...) // a directory begins at a word
	le.PutUint32(out[4:], uint32(len(out)))
	const short, long, undefined = 3, 4, 7
	entries := [][4]uint32{
		{256, long, 1, uint32(m.Bounds().Dx())}, {257, long, 1, uint32(m.Bounds().Dy())}, {258, short, channels, depths},
		{259, short, 1, 1},
		{262, short, 1, photometric}, {273, long, 1, 8}, {277, short, 1, channels}, {278, long, 1, uint32(m.Bounds().Dy())},
		{279, long, 1, uint32(len(pixels))},
	}
	if profile != nil {
		entries = append(entries, [4]uint32{34675, undefined, uint32(len(profile)), profileAt})
	}
	out = le.AppendUint16(out, uint16(len(entries)))
	for _, e := range entries {
		out = le.AppendUint16(le.AppendUint16(out, uint16(e[0])), uint16(e[1]))
		out = le.AppendUint32(le.AppendUint32(out, e[2]), e[3])
	}
	return le.AppendUint32(out, 0)
}

// samples are the grey or RGB levels of a picture, row by row.
func samples(m image.Image) (levels []byte) {
	if grey, ok := m.(*image.Gray); ok {
		return grey.Pix
	}
	for pixel := range slices.Chunk(m.(*image.RGBA).Pix, 4) {
		levels = append(levels, pixel[:3]...)
	}
	return levels
}

// webpFile stores an RGB picture without loss and without packing: every sample is a code of eight bits
// (RFC 9649, 2.7 and 3; recalled from memory).
func webpFile(m *image.RGBA, profile []byte) []byte {
	var w bitWriter
	w.write(0x2f, 8)
	w.write(m.Rect.Dx()-1, 14)
	w.write(m.Rect.Dy()-1, 14)
	w.write(0, 1+3+1+1+1) // no alpha, version 0; no transform, no colour cache, one set of codes
	for code := range 4 { // green, red, blue, alpha
		w.write(0, 1)    // not a simple code
		w.write(12-4, 4) // lengths for the lengths, in the order 17 18 0 1 2 3 4 5 16 6 7 8: only 8 has one
		w.write(0, 11*3)
		w.write(1, 3)
		if code == 0 { // green has 24 symbols more, which have none
			w.write(1, 1)
			w.write(3, 3)
			w.write(256-2, 8)
		} else {
			w.write(0, 1)
		}
	}
	w.write(1, 1) // distances: a simple code of one symbol, 0
	w.write(0, 1+1+1)
	for pixel := range slices.Chunk(m.Pix, 4) {
		for _, v := range []byte{pixel[1], pixel[0], pixel[2], pixel[3]} {
			w.write(int(bits.Reverse8(v)), 8)
		}
	}
	chunk := func(name string, body []byte) []byte {
		b := binary.LittleEndian.AppendUint32([]byte(name), uint32(len(body)))
		return append(append(b, body...), make([]byte, len(body)&1)...)
	}
	const hasProfile = 0x20
	body := []byte("WEBP")
	if profile != nil {
		head := []byte{hasProfile, 0, 0, 0, byte(m.Rect.Dx() - 1), 0, 0, byte(m.Rect.Dy() - 1), 0, 0}
		body = slices.Concat(body, chunk("VP8X", head), chunk("ICCP", profile))
	}
	return chunk("RIFF", append(body, chunk("VP8L", w.bytes())...))
}

// bitWriter packs numbers, lowest bit first.
type bitWriter struct{ bits []byte }

func (w *bitWriter) write(v, n int) {
	for i := range n {
		w.bits = append(w.bits, byte(v>>i&1))
	}
}

func (w *bitWriter) bytes() []byte {
	out := make([]byte, (len(w.bits)+7)/8)
	for i, bit := range w.bits {
		out[i/8] |= bit << (i % 8)
	}
	return out
}
