package artwork

import (
	"image"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/image/tiff"
)

// bigJPEG is a picture of 24 megapixels with soft detail, 4:2:0.
func bigJPEG(t testing.TB) []byte {
	m := image.NewYCbCr(image.Rect(0, 0, 6000, 4000), image.YCbCrSubsampleRatio420)
	for y := range 4000 {
		for x := range 6000 {
			m.Y[y*m.YStride+x] = uint8(x/16 + y/24 + x*y>>12&15)
		}
	}
	for i := range m.Cb {
		m.Cb[i], m.Cr[i] = uint8(i>>11), uint8(i>>4)
	}
	return encodeJPEG(t, m, 90)
}

// TestMemory bounds all that is ever taken from the heap, which bounds the peak: the file, what the decoder makes, and
// the result where it is of another length.
func TestMemory(t *testing.T) {
	const side = 2000
	square := image.Rect(0, 0, side, side)
	clear := image.NewNRGBA(square)
	clear64 := image.NewNRGBA64(square)
	for i := range clear.Pix {
		clear.Pix[i] = uint8(i >> 8)
	}
	const slack = 1 << 20 // decoders' buffers
	for name, c := range map[string]struct {
		data []byte
		want int // bytes beside the file
	}{
		"jpeg, 24 megapixels, 4:2:0": {bigJPEG(t), 36_000_000 * 102 / 100}, // rows and columns are padded to whole blocks
		"png with alpha, in place":   {encodePNG(t, clear), 4 * side * side},
		"png with alpha, 16 bit":     {encodePNG(t, clear64), 8 * side * side},
		"png grey, 16 bit":           {encodePNG(t, image.NewGray16(square)), 2 * side * side},
		"png palette": {encodePNG(t, image.NewPaletted(square, paletted(0, 0).Palette)),
			(1 + 4) * side * side},
		"tiff, 8 bit, one strip":  {encodeTIFF(t, clear, tiff.Deflate), 4 * side * side},
		"tiff, 16 bit, one strip": {encodeTIFF(t, clear64, tiff.Deflate), 4 * side * side},
		"bmp":                     {encodeBMP(t, image.NewRGBA(square)), 4 * side * side},
	} {
		t.Run(name, func(t *testing.T) {
			path := saved(t, c.data)
			var err error
			took := allocated(func() { _, err = Open(path, Default) })
			require.NoError(t, err)
			t.Logf("file %.1f MB, taken %.1f MB", float64(len(c.data))/1e6, float64(took)/1e6)
			require.Less(t, took, len(c.data)+c.want+slack)

			took = allocated(func() { _, _, err = ReadSize(path, Default) })
			require.NoError(t, err)
			require.Less(t, took, slack, "for the size alone")
		})
	}
}

func BenchmarkOpenJPEG24MP(b *testing.B) {
	path := saved(b, bigJPEG(b))
	b.SetBytes(24_000_000) // MB/s are megapixels a second
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Open(path, Default); err != nil {
			b.Fatal(err)
		}
	}
}
