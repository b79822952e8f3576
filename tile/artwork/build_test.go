package artwork

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/draw"
	"image/gif"
	"image/jpeg"
	"image/png"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/bmp"
	"golang.org/x/image/tiff"
)

// patches is the picture that most tests store: six patches of patchPx pixels a side, as in testdata.
var patches = [2][3]color.RGBA{
	{{255, 255, 255, 255}, {0, 0, 0, 255}, {128, 128, 128, 255}},
	{{200, 40, 40, 255}, {30, 140, 60, 255}, {40, 60, 190, 255}},
}

const patchPx = 16

func patchPicture() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, 3*patchPx, 2*patchPx))
	for y := range m.Rect.Max.Y {
		for x := range m.Rect.Max.X {
			m.SetRGBA(x, y, patches[y/patchPx][x/patchPx])
		}
	}
	return m
}

func encodeJPEG(t testing.TB, m image.Image, quality int) []byte {
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, m, &jpeg.Options{Quality: quality}))
	return b.Bytes()
}

func encodePNG(t testing.TB, m image.Image) []byte {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	return b.Bytes()
}

func encodeBMP(t testing.TB, m image.Image) []byte {
	var b bytes.Buffer
	require.NoError(t, bmp.Encode(&b, m))
	return b.Bytes()
}

// encodeTIFF stores a picture in one strip.
func encodeTIFF(t testing.TB, m image.Image, compression tiff.CompressionType) []byte {
	var b bytes.Buffer
	require.NoError(t, tiff.Encode(&b, m, &tiff.Options{Compression: compression, Predictor: true}))
	return b.Bytes()
}

// bmpV4 builds a BMP of 32 bits with the later header, in which the fourth byte is opacity. Pixels are B, G, R, A.
func bmpV4(w, h int, pixels []byte) []byte {
	b := make([]byte, 14+108)
	copy(b, "BM")
	le := binary.LittleEndian
	le.PutUint32(b[10:], uint32(len(b)))
	le.PutUint32(b[14:], 108)
	le.PutUint32(b[18:], uint32(w))
	le.PutUint32(b[22:], uint32(h))
	le.PutUint16(b[26:], 1)
	le.PutUint16(b[28:], 32)
	return append(b, pixels...)
}

func encodeGIF(t testing.TB, frames ...*image.Paletted) []byte {
	var b bytes.Buffer
	g := &gif.GIF{Image: frames, Delay: make([]int, len(frames))}
	require.NoError(t, gif.EncodeAll(&b, g))
	return b.Bytes()
}

// paletted returns the patches in a palette of their own, laid with their corner at (left, top).
func paletted(left, top int) *image.Paletted {
	var p color.Palette
	for _, row := range patches {
		for _, c := range row {
			p = append(p, c)
		}
	}
	src := patchPicture()
	m := image.NewPaletted(src.Rect.Add(image.Pt(left, top)), p)
	draw.Draw(m, m.Rect, src, image.Point{}, draw.Src)
	return m
}

// withSegments puts JPEG segments after the start of image.
func withSegments(file []byte, segments ...[]byte) []byte {
	return slices.Concat(file[:2], slices.Concat(segments...), file[2:])
}

func segment(marker byte, body ...[]byte) []byte {
	b := slices.Concat(body...)
	return slices.Concat([]byte{0xff, marker}, binary.BigEndian.AppendUint16(nil, uint16(len(b)+2)), b)
}

// withChunk puts a PNG chunk after the header chunk.
func withChunk(file []byte, name string, body []byte) []byte {
	const afterIHDR = 8 + 8 + 13 + 4
	return slices.Concat(file[:afterIHDR], pngChunk(name, body), file[afterIHDR:])
}

func pngChunk(name string, body []byte) []byte {
	b := binary.BigEndian.AppendUint32(nil, uint32(len(body)))
	b = slices.Concat(b, []byte(name), body)
	return binary.BigEndian.AppendUint32(b, crc32.ChecksumIEEE(b[4:]))
}

func iccpBody(profile []byte) []byte {
	var b bytes.Buffer
	b.WriteString("a profile\x00\x00")
	z := zlib.NewWriter(&b)
	z.Write(profile)
	z.Close()
	return b.Bytes()
}

// withRIFF puts chunks at the end of a WebP file.
func withRIFF(file []byte, chunks ...[]byte) []byte {
	out := slices.Concat(file, slices.Concat(chunks...))
	binary.LittleEndian.PutUint32(out[4:], uint32(len(out)-8))
	return out
}

func riffChunk(name string, body []byte) []byte {
	b := binary.LittleEndian.AppendUint32([]byte(name), uint32(len(body)))
	b = append(b, body...)
	if len(body)%2 == 1 {
		b = append(b, 0)
	}
	return b
}

// field is one field of a TIFF directory: values already in the file's byte order.
type field struct {
	tag, kind uint16
	count     int
	values    []byte
}

func shorts(order binary.AppendByteOrder, tag uint16, values ...uint16) field {
	f := field{tag: tag, kind: 3, count: len(values)}
	for _, v := range values {
		f.values = order.AppendUint16(f.values, v)
	}
	return f
}

func longs(order binary.AppendByteOrder, tag uint16, values ...uint32) field {
	f := field{tag: tag, kind: 4, count: len(values)}
	for _, v := range values {
		f.values = order.AppendUint32(f.values, v)
	}
	return f
}

// byteOrder is what a TIFF file is written in.
type byteOrder interface {
	binary.ByteOrder
	binary.AppendByteOrder
}

// directoryFile builds a TIFF file, or an EXIF block: header, pixels, long values, directory.
func directoryFile(order byteOrder, pixels []byte, fields ...field) []byte {
	start := "MM\x00\x2a"
	if order == byteOrder(binary.LittleEndian) {
		start = "II\x2a\x00"
	}
	out := slices.Concat([]byte(start), make([]byte, 4), pixels)
	fields = slices.Clone(fields)
	slices.SortFunc(fields, func(a, b field) int { return int(a.tag) - int(b.tag) })
	table := order.AppendUint16(nil, uint16(len(fields)))
	for _, f := range fields {
		value := f.values
		if len(value) > 4 {
			value = order.AppendUint32(nil, uint32(len(out)))
			out = append(out, f.values...)
		}
		table = order.AppendUint16(table, f.tag)
		table = order.AppendUint16(table, f.kind)
		table = order.AppendUint32(table, uint32(f.count))
		table = append(table, append(slices.Clone(value), make([]byte, 4-len(value))...)...)
	}
	order.PutUint32(out[4:], uint32(len(out)))
	return slices.Concat(out, table, make([]byte, 4))
}

// tiffFile builds an uncompressed TIFF file of one strip; further fields go in its directory.
func tiffFile(order byteOrder, w, h int, pixels []byte, bits []uint16, photometric uint16, more ...field) []byte {
	return directoryFile(order, pixels, append([]field{
		longs(order, 256, uint32(w)), longs(order, 257, uint32(h)), shorts(order, 258, bits...), shorts(order, 259, 1),
		shorts(order, 262, photometric), longs(order, 273, 8), shorts(order, 277, uint16(len(bits))),
		longs(order, 278, uint32(h)), longs(order, 279, uint32(len(pixels))),
	}, more...)...)
}

// rgbTIFF stores an opaque picture as RGB of 8 bits.
func rgbTIFF(order byteOrder, m *image.RGBA, more ...field) []byte {
	var pixels []byte
	for y := range m.Rect.Dy() {
		for x := range m.Rect.Dx() {
			pixels = append(pixels, m.Pix[y*m.Stride+4*x:][:3]...)
		}
	}
	return tiffFile(order, m.Rect.Dx(), m.Rect.Dy(), pixels, []uint16{8, 8, 8}, 2, more...)
}

func exifBlock(order byteOrder, orientation uint16) []byte {
	return directoryFile(order, nil, shorts(order, tagOrientation, orientation))
}

func fixture(t testing.TB, name string) []byte {
	b, err := os.ReadFile(filepath.Join("testdata", name))
	require.NoError(t, err)
	return b
}

var askGoroot = sync.OnceValues(func() (string, error) {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	return filepath.Join(strings.TrimSpace(string(out)), "src", "image"), err
})

// goroot returns the folder of Go's own test pictures.
func goroot(t testing.TB) string {
	folder, err := askGoroot()
	require.NoError(t, err)
	return folder
}

// seeds is one small file of every kind that is read, by name: what the hostile tests cut and the fuzzer starts from.
func seeds(t testing.TB) map[string][]byte {
	m := patchPicture()
	grey := image.NewGray(m.Rect)
	draw.Draw(grey, grey.Rect, m, image.Point{}, draw.Src)
	clear := image.NewNRGBA64(image.Rect(0, 0, 5, 3))
	for i := range clear.Pix {
		clear.Pix[i] = byte(i * 37)
	}
	strip := func(order byteOrder) []byte { return rgbTIFF(order, m.SubImage(image.Rect(0, 0, 48, 4)).(*image.RGBA)) }
	progressive, err := os.ReadFile(filepath.Join(goroot(t), "testdata", "video-005.gray.q50.2x2.progressive.jpeg"))
	require.NoError(t, err)
	all := tiffSeeds(t)
	maps.Copy(all, map[string][]byte{
		"jpeg": withSegments(encodeJPEG(t, m, 80),
			segment(0xe1, []byte(exifSignature), exifBlock(binary.BigEndian, 6)),
			segment(0xe2, []byte(iccSignature), []byte{1, 1}, testProfile("RGB ", "mntr"))),
		"jpeg grey":        encodeJPEG(t, grey, 80),
		"jpeg progressive": progressive,
		"png": withChunk(withChunk(encodePNG(t, m), "eXIf", exifBlock(binary.LittleEndian, 8)), "iCCP",
			iccpBody(testProfile("RGB ", "mntr"))),
		"png grey":      encodePNG(t, grey),
		"png 16 alpha":  encodePNG(t, clear),
		"png palette":   encodePNG(t, paletted(0, 0)),
		"tiff II":       strip(binary.LittleEndian),
		"tiff MM":       strip(binary.BigEndian),
		"gif":           encodeGIF(t, paletted(0, 0)),
		"webp lossy":    fixture(t, "patches-lossy.webp"),
		"webp lossless": fixture(t, "patches-lossless.webp"),
		"webp alpha":    fixture(t, "patches-lossy-alpha.webp"),
		"bmp":           encodeBMP(t, m.SubImage(image.Rect(0, 0, 48, 4))),
		"bmp palette":   encodeBMP(t, paletted(0, 0)),
	})
	return all
}

// testProfile builds the smallest profile that passes: a header and one tag.
func testProfile(space, class string) []byte {
	const size = 128 + 4 + 12 + 8
	p := make([]byte, size)
	binary.BigEndian.PutUint32(p, size)
	p[8] = 2
	copy(p[12:], class)
	copy(p[16:], space)
	copy(p[20:], "XYZ ")
	copy(p[36:], "acsp")
	binary.BigEndian.PutUint32(p[128:], 1)
	copy(p[132:], "desc")
	binary.BigEndian.PutUint32(p[136:], 144)
	binary.BigEndian.PutUint32(p[140:], 8)
	return p
}

// saved writes a file and returns its path.
func saved(t testing.TB, data []byte) string {
	path := filepath.Join(t.TempDir(), "picture")
	require.NoError(t, os.WriteFile(path, data, 0o600))
	return path
}

// upright returns the pixel (x, y) of the upright picture.
func upright(p *Picture, x, y int) color.RGBA {
	b := p.Image.Bounds()
	sx, sy := p.Upright.Source(x, y, b.Dx(), b.Dy())
	r, g, bl, a := p.Image.At(sx, sy).RGBA()
	return color.RGBA{uint8(r >> 8), uint8(g >> 8), uint8(bl >> 8), uint8(a >> 8)}
}

// requireNear fails unless a colour's samples lie within tolerance of what they should be.
func requireNear(t testing.TB, want, got color.RGBA, tolerance int, what string, args ...any) {
	t.Helper()
	for _, d := range []int{int(want.R) - int(got.R), int(want.G) - int(got.G), int(want.B) - int(got.B),
		int(want.A) - int(got.A)} {
		if d < -tolerance || d > tolerance {
			require.Failf(t, "colours differ", "%v, want %v within %d: "+what, append([]any{got, want, tolerance}, args...)...)
		}
	}
}
