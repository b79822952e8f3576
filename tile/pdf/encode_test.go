package pdf

import (
	"bytes"
	"encoding/binary"
	"hash/crc32"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// noise is a window on random pixels, so that its rows are longer than its width and its origin isn't 0, 0.
func noise(seed uint64) *image.RGBA {
	rng := rand.New(rand.NewPCG(seed, 0))
	whole := image.NewRGBA(image.Rect(-5, -3, 90, 70))
	for i := range whole.Pix {
		whole.Pix[i] = byte(rng.Uint32())
		if i%4 == 3 {
			whole.Pix[i] = 255
		}
	}
	x, y := rng.IntN(10), rng.IntN(10)
	return whole.SubImage(image.Rect(x, y, x+1+rng.IntN(70), y+1+rng.IntN(50))).(*image.RGBA)
}

// asPNG wraps a Flate picture as a PNG file, whose pixel data has the same form (ISO/IEC 15948, 5.3 and 11.2,
// recalled from memory), for an outside decoder.
func asPNG(p Picture) []byte {
	be := binary.BigEndian
	chunk := func(kind string, data []byte) []byte {
		out := append(be.AppendUint32(nil, uint32(len(data))), kind...)
		out = append(out, data...)
		return be.AppendUint32(out, crc32.ChecksumIEEE(out[4:]))
	}
	colourType := byte(2)
	if p.Gray {
		colourType = 0
	}
	header := be.AppendUint32(be.AppendUint32(nil, uint32(p.WidthPx)), uint32(p.HeightPx))
	header = append(header, 8, colourType, 0, 0, 0)
	return bytes.Join([][]byte{[]byte("\x89PNG\r\n\x1a\n"), chunk("IHDR", header), chunk("IDAT", p.Data),
		chunk("IEND", nil)}, nil)
}

func TestFlateKeepsEveryPixel(t *testing.T) {
	for seed := range uint64(50) {
		rgb := noise(seed)
		for _, img := range []image.Image{rgb, toGray(rgb), toYCbCr(rgb)} {
			p, err := EncodeFlate(img)
			require.NoError(t, err)
			_, gray := img.(*image.Gray)
			require.Equal(t, gray, p.Gray)
			require.Equal(t, Flate, p.Filter)
			got, err := png.Decode(bytes.NewReader(asPNG(p)))
			require.NoError(t, err, "seed %d, %T", seed, img)
			b := img.Bounds()
			require.Equal(t, b.Size(), got.Bounds().Size())
			for y := range b.Dy() {
				for x := range b.Dx() {
					want := color.RGBAModel.Convert(img.At(b.Min.X+x, b.Min.Y+y))
					require.Equal(t, want, color.RGBAModel.Convert(got.At(x, y)), "seed %d, %T, pixel %d, %d", seed, img, x, y)
				}
			}
		}
	}
}

func TestJPEGIsWhatItSays(t *testing.T) {
	tests := []struct {
		name string
		img  image.Image
		gray bool
	}{
		{"RGB", quarters(), false},
		{"YCbCr", toYCbCr(quarters()), false},
		{"grey", toGray(quarters()), true},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			p, err := EncodeJPEG(test.img, 95, image.YCbCrSubsampleRatio420)
			require.NoError(t, err)
			require.Equal(t, []any{160, 96, test.gray, DCT}, []any{p.WidthPx, p.HeightPx, p.Gray, p.Filter})
			got, err := jpeg.Decode(bytes.NewReader(p.Data))
			require.NoError(t, err)
			require.Equal(t, image.Pt(160, 96), got.Bounds().Size())
			_, gray := got.(*image.Gray)
			require.Equal(t, test.gray, gray)
			worse, err := EncodeJPEG(noise(1), 10, image.YCbCrSubsampleRatio420)
			require.NoError(t, err)
			better, err := EncodeJPEG(noise(1), 90, image.YCbCrSubsampleRatio420)
			require.NoError(t, err)
			require.Less(t, len(worse.Data), len(better.Data), "quality must matter")
		})
	}
}

func TestEncodersRefuse(t *testing.T) {
	small := image.NewGray(image.Rect(0, 0, 1, 1))
	tests := []struct {
		name    string
		img     image.Image
		quality int
		want    string
	}{
		{"another type", image.NewNRGBA(image.Rect(0, 0, 1, 1)), 90, "*image.NRGBA"},
		{"no picture", nil, 90, "<nil>"},
		{"no pixels", image.NewRGBA(image.Rect(0, 0, 0, 5)), 90, "0 x 5"},
		{"quality 0", small, 0, "quality 0"},
		{"quality 101", small, 101, "quality 101"},
		{"wider than JPEG goes", image.NewGray(image.Rect(0, 0, 65536, 1)), 90, "65536 x 1"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			_, err := EncodeJPEG(test.img, test.quality, image.YCbCrSubsampleRatio420)
			require.ErrorContains(t, err, test.want)
		})
	}
	for _, test := range tests[:3] {
		t.Run("Flate, "+test.name, func(t *testing.T) {
			_, err := EncodeFlate(test.img)
			require.ErrorContains(t, err, test.want)
		})
	}
}

func TestWholeBlocks(t *testing.T) {
	for _, c := range [][2]image.Rectangle{
		{image.Rect(0, 0, 16, 32), image.Rect(0, 0, 16, 32)},
		{image.Rect(1, 15, 17, 33), image.Rect(0, 0, 32, 48)},
		{image.Rect(-1, -16, 1, -15), image.Rect(-16, -16, 16, 0)},
		{image.Rect(-17, -33, -16, -32), image.Rect(-32, -48, -16, -32)},
	} {
		require.Equal(t, c[1], WholeBlocks(c[0]), "%v", c[0])
	}
}
