package artwork

import (
	"bytes"
	"encoding/binary"
	"errors"
	"image"
	"io"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour"
)

func goCMYK(t testing.TB) []byte {
	data, err := os.ReadFile(filepath.Join(goroot(t), "testdata", "video-001.cmyk.jpeg"))
	require.NoError(t, err)
	return data
}

// samples returns a copy of a picture's samples.
func samples(p *Picture) []byte {
	switch m := p.Image.(type) {
	case *image.Gray:
		return slices.Clone(m.Pix)
	case *image.RGBA:
		return slices.Clone(m.Pix)
	case *image.YCbCr:
		return slices.Concat(m.Y, m.Cb, m.Cr)
	}
	return nil
}

// requireSound checks what Picture promises of every picture, however odd its file.
func requireSound(t testing.TB, p *Picture, maxPixels int) {
	t.Helper()
	b := p.Image.Bounds()
	require.Equal(t, image.Point{}, b.Min)
	require.Positive(t, b.Dx())
	require.Positive(t, b.Dy())
	require.LessOrEqual(t, b.Dx()*b.Dy(), maxPixels)
	grey := false
	switch m := p.Image.(type) {
	case *image.Gray:
		grey = true
		require.GreaterOrEqual(t, len(m.Pix), m.PixOffset(b.Max.X-1, b.Max.Y-1)+1)
	case *image.YCbCr:
		require.GreaterOrEqual(t, len(m.Y), m.YOffset(b.Max.X-1, b.Max.Y-1)+1)
		require.GreaterOrEqual(t, min(len(m.Cb), len(m.Cr)), m.COffset(b.Max.X-1, b.Max.Y-1)+1)
	case *image.RGBA:
		require.GreaterOrEqual(t, len(m.Pix), m.PixOffset(b.Max.X-1, b.Max.Y-1)+4)
		require.True(t, m.Opaque())
	default:
		require.Failf(t, "form", "%T", m)
	}
	if p.ICC != nil {
		require.NoError(t, colour.CheckProfile(p.ICC, grey))
	}
	require.Contains(t, uprights[1:], p.Upright)
}

// allocated returns how many bytes f takes from the heap, whether or not they are freed on the way.
func allocated(f func()) int {
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	f()
	runtime.ReadMemStats(&after)
	return int(after.TotalAlloc - before.TotalAlloc)
}

// TestTruncated cuts every kind of file at every length: an error or, where only a trailer is missing, the
// whole picture.
func TestTruncated(t *testing.T) {
	for name, data := range seeds(t) {
		t.Run(name, func(t *testing.T) {
			whole, err := decode(data, Reading{Limits: Default})
			require.NoError(t, err)
			refused := 0
			for n := range len(data) {
				p, err := decodeGuarded(data[:n])
				require.False(t, isPanic(err), "cut to %d bytes: %v", n, err)
				if err != nil {
					refused++
					continue
				}
				requireSound(t, p, DefaultMaxPixels)
				require.Equal(t, samples(whole), samples(p), "cut to %d bytes", n)
			}
			require.Greater(t, refused, len(data)/2)
		})
	}
}

// upTo is the usual limits but for the pixels.
func upTo(pixels int) Limits { return Limits{pixels, DefaultMaxBytes} }

func decodeGuarded(data []byte) (*Picture, error) {
	return guarded(func() (*Picture, error) { return decode(data, Reading{Limits: upTo(1 << 22)}) })
}

func isPanic(err error) bool {
	var p *panicError
	return errors.As(err, &p)
}

// giant returns a file of each kind whose header claims w x h pixels and which holds next to none.
func giant(t testing.TB, w, h int) map[string][]byte {
	be, le := binary.BigEndian, binary.LittleEndian
	ihdr := slices.Concat(be.AppendUint32(nil, uint32(w)), be.AppendUint32(nil, uint32(h)), []byte{8, 6, 0, 0, 0})
	jpegFile := encodeJPEG(t, patchPicture(), 80)
	sof := bytes.Index(jpegFile, []byte{0xff, 0xc0})
	be.PutUint16(jpegFile[sof+5:], uint16(h))
	be.PutUint16(jpegFile[sof+7:], uint16(w))
	gifFile := encodeGIF(t, paletted(0, 0))
	frame := bytes.Index(gifFile, []byte{',', 0, 0, 0, 0, 48})
	for _, at := range []int{6, frame + 5} {
		le.PutUint16(gifFile[at:], uint16(w))
		le.PutUint16(gifFile[at+2:], uint16(h))
	}
	bmpFile := encodeBMP(t, patchPicture())
	le.PutUint32(bmpFile[18:], uint32(w))
	le.PutUint32(bmpFile[22:], uint32(h))
	return map[string][]byte{
		"jpeg": jpegFile,
		"png": slices.Concat([]byte("\x89PNG\r\n\x1a\n"), pngChunk("IHDR", ihdr), pngChunk("IDAT", []byte("x\x9c")),
			pngChunk("IEND", nil)),
		"gif":  gifFile,
		"bmp":  bmpFile,
		"tiff": tiffFile(le, w, h, []byte("abc"), []uint16{8, 8, 8}, 2),
	}
}

// TestBombs: a header that claims too much is refused before memory is taken.
func TestBombs(t *testing.T) {
	webp := fixture(t, "patches-lossless.webp")
	wide := slices.Clone(webp)
	vp8l := bytes.Index(wide, []byte("VP8L"))
	require.Positive(t, vp8l)
	copy(wide[24:], []byte{0xff, 0x3f, 0, 0xff, 0x3f, 0}) // the container's canvas, 16384 x 16384
	liar := slices.Clone(webp)
	binary.LittleEndian.PutUint32(liar[4:], 1<<31)
	binary.LittleEndian.PutUint32(liar[vp8l+4:], 1<<30)

	type bomb struct {
		data      []byte
		maxPixels int
		want      string
	}
	cases := map[string]bomb{
		"webp canvas":       {wide, 1e6, "more than the 1000000 allowed"},
		"webp chunk length": {liar, DefaultMaxPixels, "cut short"},
	}
	for name, data := range giant(t, 50_000, 50_000) {
		cases[name+", 2500 megapixels"] = bomb{data, DefaultMaxPixels,
			"50000 x 50000 pixels are more than the 500000000 allowed\nhint: scale the picture down"}
	}
	for name, data := range giant(t, 20_000, 20_000) {
		cases[name+", 400 megapixels"] = bomb{data, DefaultMaxPixels, "cut short, or its header is false: 20000 x 20000"}
	}
	for name, c := range cases {
		t.Run(name, func(t *testing.T) {
			path := saved(t, c.data)
			var err error
			took := allocated(func() { _, err = Open(path, upTo(c.maxPixels)) })
			requireClear(t, err, path, c.want)
			require.Less(t, took, 1<<20, "bytes taken from the heap")
			_, err = decode(c.data, Reading{Limits: upTo(c.maxPixels)})
			require.ErrorContains(t, err, c.want)
		})
	}
}

// TestLeastBytes: the bound on a file's length refuses no honest file, however well its picture packs.
func TestLeastBytes(t *testing.T) {
	blank := image.NewGray(image.Rect(0, 0, 4000, 4000))
	blankPalette := image.NewPaletted(blank.Rect, paletted(0, 0).Palette)
	for name, data := range map[string][]byte{
		"jpeg": encodeJPEG(t, blank, 1), "png": encodePNG(t, blank), "gif": encodeGIF(t, blankPalette),
		"bmp": encodeBMP(t, blank),
	} {
		t.Run(name, func(t *testing.T) {
			h, err := readHeader(inMemory(data), Default)
			require.NoError(t, err)
			require.Positive(t, h.leastBytes)
			t.Logf("%d bytes, bound %d", len(data), h.leastBytes)
			_, err = decode(data, Reading{Limits: Default})
			require.NoError(t, err)
		})
	}
}

func TestRefused(t *testing.T) {
	le := binary.LittleEndian
	m := patchPicture()
	scan := segment(0xda, []byte{1, 1, 0, 0, 0, 0})
	progressive := slices.Concat([]byte{0xff, 0xd8}, segment(0xc2, []byte{8, 0, 8, 0, 8, 1, 1, 0x11, 0}),
		bytes.Repeat(scan, maxScans+1), []byte{0xff, 0xd9})
	animated := slices.Clone(fixture(t, "patches-lossy.webp"))
	animated[20] |= 2
	smallScreen := encodeGIF(t, paletted(0, 0))
	le.PutUint16(smallScreen[6:], 40)
	// Sixteen strips of two rows, all at the same place.
	many := func(tag uint16, v uint32) field { return longs(le, tag, slices.Repeat([]uint32{v}, 16)...) }
	shared := directoryFile(le, make([]byte, 2000),
		longs(le, 256, 48), longs(le, 257, 32), shorts(le, 258, 8, 8, 8), shorts(le, 259, 8), shorts(le, 262, 2),
		many(273, 8), shorts(le, 277, 3), longs(le, 278, 2), many(279, 1900))
	for name, c := range map[string]struct {
		data []byte
		want string
	}{
		"jpeg of endless scans":       {progressive, "more than 500 scans"},
		"jpeg of no size":             {giant(t, 0, 0)["jpeg"], "0 x 0 pixels: there is nothing to print"},
		"webp animation":              {animated, "animation\nhint: save one frame"},
		"gif frame beyond the screen": {smallScreen, "larger than its screen"},
		"gif without a frame":         {[]byte("GIF89a\x01\x00\x01\x00\x00\x00\x00;"), "holds no frame"},
		"tiff preview, as raw files":  {rgbTIFF(le, m, longs(le, tagNewSubfileType, 1)), "only a preview"},
		"tiff by planes":              {rgbTIFF(le, m, shorts(le, tagPlanar, 2)), "stores each colour apart"},
		"tiff of shared strips":       {shared, "strips claim 30400 bytes"},
		"tiff of an unknown space": {tiffFile(le, 1, 1, []byte{1, 2, 3, 4}, []uint16{8, 8, 8, 8}, 9),
			"can't be decoded (tiff: unsupported"},
		"png with a broken check sum": {breakAt(encodePNG(t, m), 30),
			"can't be decoded (png: invalid format: invalid checksum"},
		"png whose pixels don't reach": {withoutRows(t), "not enough pixel data"},
	} {
		t.Run(name, func(t *testing.T) {
			path := saved(t, c.data)
			_, err := Open(path, Default)
			requireClear(t, err, path, c.want)
		})
	}
}

func breakAt(data []byte, at int) []byte {
	data[at] ^= 0xff
	return data
}

// withoutRows is a PNG that says it is one row higher than its data.
func withoutRows(t testing.TB) []byte {
	data := encodePNG(t, patchPicture())
	ihdr := slices.Clone(data[16:29])
	binary.BigEndian.PutUint32(ihdr[4:], 33)
	return slices.Concat(data[:8], pngChunk("IHDR", ihdr), data[33:])
}

// TestDecoderPanic: a decoder's panic, and a decoder that makes another size than its header's, come out as errors.
func TestDecoderPanic(t *testing.T) {
	kept := formats
	t.Cleanup(func() { formats = kept })
	path := saved(t, []byte("FAKE picture"))
	for name, c := range map[string]struct {
		decode func([]byte) (image.Image, error)
		want   string
	}{
		"panics": {func([]byte) (image.Image, error) { panic("index out of range") },
			"makes its decoder fail (index out of range)"},
		"nil pointer": {func([]byte) (image.Image, error) {
			var m *image.RGBA
			return m.SubImage(image.Rect(0, 0, m.Rect.Dx(), 1)), nil
		}, "nil pointer"},
		"other size": {func([]byte) (image.Image, error) { return image.NewGray(image.Rect(0, 0, 9, 9)), nil },
			"says 3 x 2 pixels and its data hold 9 x 9"},
		"unknown form": {func([]byte) (image.Image, error) { return image.NewAlpha(image.Rect(0, 0, 3, 2)), nil },
			"no use for a *image.Alpha"},
	} {
		t.Run(name, func(t *testing.T) {
			formats = append(slices.Clone(kept), format{
				name: "fake", magic: "FAKE", decode: apart(c.decode),
				config:  func(io.Reader) (image.Config, error) { return image.Config{Width: 3, Height: 2}, nil },
				inspect: func(source, *header) error { return nil },
			})
			_, err := Open(path, Default)
			requireClear(t, err, path, c.want)
		})
	}
}
