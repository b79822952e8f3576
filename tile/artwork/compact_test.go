package artwork

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// onWhite is the reference for laying a colour on white, in float64: c a + 1 - a for straight samples, c + 1
// - a for the others.
func onWhite(c color.Color) color.RGBA {
	straight := func(v, a, full float64) uint8 { return uint8(math.Round(255 * (v/full*a/full + 1 - a/full))) }
	over := func(v, a, full float64) uint8 { return uint8(math.Round(255 * (v/full + 1 - a/full))) }
	switch c := c.(type) {
	case color.NRGBA:
		a := float64(c.A)
		return color.RGBA{straight(float64(c.R), a, 255), straight(float64(c.G), a, 255), straight(float64(c.B), a, 255), 255}
	case color.NRGBA64:
		a := float64(c.A)
		return color.RGBA{straight(float64(c.R), a, 65535), straight(float64(c.G), a, 65535),
			straight(float64(c.B), a, 65535), 255}
	default:
		r, g, b, a := c.RGBA()
		return color.RGBA{over(float64(r), float64(a), 65535), over(float64(g), float64(a), 65535),
			over(float64(b), float64(a), 65535), 255}
	}
}

// TestPNGSuite compares every picture of Go's PNG suite with the standard decoder's, laid on white in
// float64: no difference at all.
func TestPNGSuite(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(goroot(t), "png", "testdata", "pngsuite", "*.png"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	seen := map[string]int{}
	for _, file := range files {
		t.Run(filepath.Base(file), func(t *testing.T) {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			want, err := png.Decode(bytes.NewReader(data))
			require.NoError(t, err)
			// dither has tests of its own
			p, err := OpenCopy(file, file, Reading{Limits: Default, Rounded: true})
			require.NoError(t, err)
			require.Equal(t, want.Bounds(), p.Image.Bounds())
			w, h, err := ReadSize(file, Default)
			require.NoError(t, err)
			require.Equal(t, want.Bounds().Max, image.Pt(w, h))
			for y := range h {
				for x := range w {
					require.Equal(t, onWhite(want.At(x, y)), color.RGBAModel.Convert(p.Image.At(x, y)), "pixel (%d, %d)", x, y)
				}
			}
			// Names tell the colour type: n0g is grey, n4a grey with alpha (the suite's README.original).
			var form image.Image = &image.RGBA{}
			if name := filepath.Base(file); strings.Contains(name, "n0g") || strings.Contains(name, "n4a") {
				form = &image.Gray{}
			}
			require.IsType(t, form, p.Image)
			seen[fmt.Sprintf("%T", want)]++
		})
	}
	require.GreaterOrEqual(t, len(seen), 6, "the suite should bring all of the decoder's forms: %v", seen)
}

// TestGoJPEGs: planes come out as the standard decoder made them, with their own subsampling; RGB and CMYK
// look as their PNG twins.
func TestGoJPEGs(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(goroot(t), "testdata", "*.jpeg"))
	require.NoError(t, err)
	require.NotEmpty(t, files)
	ratios := map[image.YCbCrSubsampleRatio]bool{}
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			data, err := os.ReadFile(file)
			require.NoError(t, err)
			want, wantErr := jpeg.Decode(bytes.NewReader(data))
			p, err := Open(file, Default)
			require.NoError(t, wantErr) // the one called truncated lacks its last scans, and ends as it should
			require.NoError(t, err)
			require.Equal(t, "jpeg", p.Format)
			switch {
			case strings.Contains(name, "cmyk"):
				require.IsType(t, &image.RGBA{}, p.Image)
				require.Equal(t, []string{warnCMYK}, p.Warnings)
				requireTwin(t, file, p.Image)
			case strings.Contains(name, ".rgb."):
				require.IsType(t, &image.RGBA{}, p.Image)
				require.Empty(t, p.Warnings)
				requireTwin(t, file, p.Image)
			default:
				require.Equal(t, want, p.Image)
				if planes, ok := p.Image.(*image.YCbCr); ok {
					ratios[planes.SubsampleRatio] = true
				}
			}
		})
	}
	require.Len(t, ratios, 6, "every subsampling that Go decodes")
}

// requireTwin compares a picture with the PNG of the same name: 2 levels on average, for the PNG was made by
// another program.
func requireTwin(t *testing.T, file string, m image.Image) {
	f, err := os.Open(strings.TrimSuffix(file, ".jpeg") + ".png")
	require.NoError(t, err)
	defer f.Close()
	twin, err := png.Decode(f)
	require.NoError(t, err)
	require.Equal(t, twin.Bounds(), m.Bounds())
	var off float64
	b := m.Bounds()
	for y := range b.Max.Y {
		for x := range b.Max.X {
			r0, g0, b0, _ := twin.At(x, y).RGBA()
			r1, g1, b1, _ := m.At(x, y).RGBA()
			off += math.Abs(float64(r0)-float64(r1)) + math.Abs(float64(g0)-float64(g1)) + math.Abs(float64(b0)-float64(b1))
		}
	}
	off /= 3 * 257 * float64(b.Dx()*b.Dy())
	require.Less(t, off, 2.0)
	t.Logf("%s: %.2f levels off on average", filepath.Base(file), off)
}

// TestPlainCMYK: without Adobe's marker, which the decoder insists on, the same picture comes out, as it does
// from vips and ImageMagick.
func TestPlainCMYK(t *testing.T) {
	data := goCMYK(t)
	at := bytes.Index(data, []byte("\xff\xee\x00\x0eAdobe"))
	require.Positive(t, at)
	require.Zero(t, data[at+15], "transform 0: the four components are the inks themselves")
	want, err := decode(data, Reading{Limits: Default})
	require.NoError(t, err)
	plain := slices.Concat(data[:at], data[at+16:])
	_, err = jpeg.Decode(bytes.NewReader(plain))
	require.ErrorContains(t, err, "Adobe")
	got, err := decode(plain, Reading{Limits: Default})
	require.NoError(t, err)
	require.Equal(t, want.Image, got.Image)
	require.Equal(t, []string{warnUnmarkedInks, warnCMYK}, got.Warnings)
}

// same fails unless two samples are equal. It is for loops so long that require.Equal would take most of their time.
func same(t *testing.T, want, got uint8, what string, args ...any) {
	if want != got {
		t.Fatalf(what+" = %d, want %d", append(args, got, want)...)
	}
}

// TestLayOnWhite8 checks every sample at every opacity against float64.
func TestLayOnWhite8(t *testing.T) {
	for a := range 256 {
		for c := range 256 {
			same(t, onWhite(color.NRGBA{R: uint8(c), A: uint8(a)}).R, straight8(uint8(c), uint8(a), 255),
				"straight8(%d, %d)", c, a)
			want := uint8(255) // what a sample above its opacity comes to
			if c <= a {
				want = uint8(c + 255 - a)
			}
			same(t, want, premultiplied8(uint8(c), uint8(a), 255), "premultiplied8(%d, %d)", c, a)
		}
	}
}

func TestLayOnWhite16(t *testing.T) {
	const seed = 16
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, seed))
	for range 200_000 {
		c, a := uint16(r.Uint32()), uint16(r.Uint32())
		same(t, onWhite(color.NRGBA64{R: c, A: a}).R, straight16(c, a, 255, halfThreshold), "straight16(%d, %d)", c, a)
		c = min(c, a)
		same(t, onWhite(color.RGBA64{R: c, A: a}).R, premultiplied16(c, a, 255, halfThreshold),
			"premultiplied16(%d, %d)", c, a)
	}
	for v := range 65536 {
		same(t, uint8(math.Round(float64(v)/257)), narrow16(uint16(v), halfThreshold), "narrow16(%d)", v)
	}
}

// TestForms stores single pixels in every sample form and compares with figures worked by hand.
func TestForms(t *testing.T) {
	le, be := binary.LittleEndian, binary.BigEndian
	nrgba := image.NewNRGBA(image.Rect(0, 0, 1, 1))
	copy(nrgba.Pix, []uint8{200, 100, 0, 128})
	nrgba64 := image.NewNRGBA64(nrgba.Rect)
	nrgba64.SetNRGBA64(0, 0, color.NRGBA64{0xffff, 0x8000, 0, 0x8000})
	clearPalette := color.Palette{color.NRGBA{200, 100, 0, 128}, color.White}
	cases := []struct {
		name string
		data []byte
		want color.Color // color.Gray or color.RGBA
		warn []string
	}{
		{"tiff grey 8", tiffFile(le, 1, 1, []byte{77}, []uint16{8}, 1), color.Gray{77}, nil},
		{"tiff grey 8, white is zero", tiffFile(le, 1, 1, []byte{77}, []uint16{8}, 0), color.Gray{178}, nil},
		// 32767 / 257 = 127.498, 32768 / 257 = 127.502
		{"tiff grey 16 below half", tiffFile(le, 1, 1, []byte{0xff, 0x7f}, []uint16{16}, 1), color.Gray{127}, nil},
		{"tiff grey 16 above half", tiffFile(be, 1, 1, []byte{0x80, 0x00}, []uint16{16}, 1), color.Gray{128}, nil},
		{"tiff rgb 16", tiffFile(be, 1, 1, []byte{0x7f, 0xff, 0x80, 0x00, 0xff, 0xff}, []uint16{16, 16, 16}, 2),
			color.RGBA{127, 128, 255, 255}, nil},
		// (200 x 128 + 255 x 127) / 255 = 227.4, (100 x 128 + 255 x 127) / 255 = 177.2, 127
		{"tiff straight alpha", tiffFile(le, 1, 1, []byte{200, 100, 0, 128}, []uint16{8, 8, 8, 8}, 2, shorts(le, 338, 2)),
			color.RGBA{227, 177, 127, 255}, []string{warnTransparent}},
		// 100 + 127, 50 + 127, 127; a sample above its opacity is held
		{"tiff premultiplied alpha", tiffFile(le, 1, 1, []byte{100, 50, 0, 128}, []uint16{8, 8, 8, 8}, 2,
			shorts(le, 338, 1)), color.RGBA{227, 177, 127, 255}, []string{warnTransparent}},
		{"tiff premultiplied above alpha", tiffFile(le, 1, 1, []byte{200, 50, 0, 128}, []uint16{8, 8, 8, 8}, 2,
			shorts(le, 338, 1)), color.RGBA{255, 177, 127, 255}, []string{warnTransparent}},
		{"tiff opaque alpha", tiffFile(le, 1, 1, []byte{200, 50, 0, 255}, []uint16{8, 8, 8, 8}, 2, shorts(le, 338, 2)),
			color.RGBA{200, 50, 0, 255}, nil},
		{"tiff palette", tiffFile(le, 1, 1, []byte{1}, []uint16{8}, 3, shorts(le, 320, 0, 0xc8c8, 0, 0x6464, 0, 0x0101)),
			color.RGBA{200, 100, 1, 255}, nil},
		{"png straight alpha", encodePNG(t, nrgba), color.RGBA{227, 177, 127, 255}, []string{warnTransparent}},
		// a = 32768/65535 = 0.500008: 255; 255 (0.500008^2 + 1 - 0.500008) = 191.25; 127.498
		{"png straight alpha 16", encodePNG(t, nrgba64), color.RGBA{255, 191, 127, 255}, []string{warnTransparent}},
		{"png clear palette", encodePNG(t, image.NewPaletted(nrgba.Rect, clearPalette)), color.RGBA{227, 177, 127, 255},
			[]string{warnTransparent}},
		{"gif clear", encodeGIF(t, image.NewPaletted(nrgba.Rect, color.Palette{color.Transparent, color.Black})),
			color.RGBA{255, 255, 255, 255}, []string{warnTransparent}},
		{"bmp 24", encodeBMP(t, &image.RGBA{Pix: []uint8{200, 100, 0, 255}, Stride: 4, Rect: nrgba.Rect}),
			color.RGBA{200, 100, 0, 255}, nil},
		{"bmp 32, the old header has no alpha", encodeBMP(t, nrgba), color.RGBA{200, 100, 0, 255}, nil},
		{"bmp 32, straight alpha", bmpV4(1, 1, []byte{0, 100, 200, 128}), color.RGBA{227, 177, 127, 255},
			[]string{warnTransparent}},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			p, err := decode(c.data, Reading{Limits: Default, Rounded: true})
			require.NoError(t, err)
			require.Equal(t, c.want, p.Image.At(0, 0))
			require.Equal(t, c.warn, p.Warnings)
			require.Equal(t, image.Rect(0, 0, 1, 1), p.Image.Bounds())
		})
	}
}

// TestWebP compares with the colours that were stored. Lossy WebP keeps them in video's range: taken for full
// range, white would be 235.
func TestWebP(t *testing.T) {
	opacity := func(x int) color.NRGBA64 { // the clear fixture's right column has opacity 102
		if x == 2 {
			return color.NRGBA64{A: 102 * 257}
		}
		return color.NRGBA64{A: 65535}
	}
	cases := []struct {
		file string
		form image.Image
		// 3 levels: the encoder's and the decoder's rounding, each 8 bits in YCbCr.
		tolerance int
		clear     bool
		warn      []string
	}{
		{"patches-lossy.webp", &image.YCbCr{}, 3, false, nil},
		{"patches-lossless.webp", &image.RGBA{}, 0, false, nil},
		{"patches-lossy-alpha.webp", &image.RGBA{}, 3, true, []string{warnTransparent}},
	}
	for _, c := range cases {
		t.Run(c.file, func(t *testing.T) {
			p, err := decode(fixture(t, c.file), Reading{Limits: Default})
			require.NoError(t, err)
			require.Equal(t, "webp", p.Format)
			require.IsType(t, c.form, p.Image)
			require.Equal(t, c.warn, p.Warnings)
			for row, colours := range patches {
				for column, want := range colours {
					if c.clear {
						s := opacity(column)
						s.R, s.G, s.B = uint16(want.R)*257, uint16(want.G)*257, uint16(want.B)*257
						want = onWhite(s)
					}
					requireNear(t, want, upright(p, column*patchPx+8, row*patchPx+8), c.tolerance, "patch R%dC%d", row+1, column+1)
				}
			}
		})
	}
}

// TestWidenRange checks every sample against the formula in float64.
func TestWidenRange(t *testing.T) {
	m := &image.YCbCr{Y: make([]uint8, 256), Cb: make([]uint8, 256), Cr: make([]uint8, 256)}
	for i := range 256 {
		m.Y[i], m.Cb[i], m.Cr[i] = uint8(i), uint8(i), uint8(i)
	}
	widenRange(m)
	hold := func(v float64) uint8 { return uint8(math.Round(min(max(v, 0), 255))) }
	for i := range 256 {
		v := float64(i)
		require.Equal(t, hold((v-16)*255/219), m.Y[i], "luma %d", i)
		// Half levels, which only chroma has, are rounded up here: math.Floor(v + 0.5).
		require.Equal(t, hold(math.Floor(128+(v-128)*255/224+0.5)), m.Cb[i], "chroma %d", i)
		require.Equal(t, m.Cb[i], m.Cr[i])
	}
}

// TestGIFFrame: only the first frame is taken, moved to the origin.
func TestGIFFrame(t *testing.T) {
	second := paletted(0, 0)
	clear := encodeGIF(t, paletted(0, 0), second)
	p, err := decode(clear, Reading{Limits: Default})
	require.NoError(t, err)
	require.Empty(t, p.Warnings)
	require.Equal(t, patchPicture().Pix, p.Image.(*image.RGBA).Pix)

	offset := encodeGIF(t, paletted(7, 5))
	p, err = decode(offset, Reading{Limits: Default})
	require.NoError(t, err)
	require.Equal(t, []string{"only the first frame is taken: 48 x 32 pixels of 55 x 37"}, p.Warnings)
	require.Equal(t, image.Rect(0, 0, 48, 32), p.Image.Bounds())
	require.Equal(t, patchPicture().Pix, p.Image.(*image.RGBA).Pix)
	w, h, err := ReadSize(saved(t, offset), Default)
	require.NoError(t, err)
	require.Equal(t, image.Pt(48, 32), image.Pt(w, h))
}

// Transparent parts lie on the background that was asked for, in every form that a decoder makes, worked out in
// float64: c a + w (1 - a) for straight samples. Opaque artwork shows none of it.
func TestTransparentOnABackground(t *testing.T) {
	under := color.RGBA{32, 48, 64, 255}
	straight := color.NRGBA{200, 100, 0, 128}
	one := image.Rect(0, 0, 1, 1)
	nrgba, nrgba64 := image.NewNRGBA(one), image.NewNRGBA64(one)
	nrgba.SetNRGBA(0, 0, straight)
	nrgba64.SetNRGBA64(0, 0, color.NRGBA64{200 * 257, 100 * 257, 0, 128 * 257})
	premultiplied := image.NewRGBA(one)
	premultiplied.SetRGBA(0, 0, color.RGBA{100, 50, 0, 128})
	premultiplied64 := image.NewRGBA64(one)
	premultiplied64.SetRGBA64(0, 0, color.RGBA64{100 * 257, 50 * 257, 0, 128 * 257})
	planes := image.NewNYCbCrA(one, image.YCbCrSubsampleRatio444)
	planes.Y[0], planes.Cb[0], planes.Cr[0] = color.RGBToYCbCr(200, 100, 0)
	planes.A[0] = 128
	// 200 * 128/255 + 32 * 127/255 = 116.3; 100 * 128/255 + 48 * 127/255 = 74.1; 64 * 127/255 = 31.9
	want, wantPremultiplied := color.RGBA{116, 74, 32, 255}, color.RGBA{116, 74, 32, 255} // 100 + 15.9; 50 + 23.9
	for _, c := range []struct {
		name      string
		m         image.Image
		want      color.RGBA
		tolerance int
	}{
		{"straight", nrgba, want, 0}, {"straight of 16 bits", nrgba64, want, 0}, {"planes", planes, want, 1},
		{"palette", image.NewPaletted(one, color.Palette{straight}), want, 0},
		{"premultiplied", premultiplied, wantPremultiplied, 0},
		{"premultiplied of 16 bits", premultiplied64, wantPremultiplied, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			m, transparent, err := compact(c.m, false, ground{under, true}, nil)
			require.NoError(t, err)
			require.True(t, transparent)
			requireNear(t, c.want, m.(*image.RGBA).RGBAAt(0, 0), c.tolerance, c.name)
		})
	}

	clear := image.NewNRGBA(one)
	p, err := decode(encodePNG(t, clear), Reading{Limits: Default, Under: under})
	require.NoError(t, err)
	require.True(t, p.Transparent)
	require.Equal(t, under, p.Image.At(0, 0))
	require.Equal(t, []string{"transparent parts are laid on the background, #203040"}, p.Warnings)
	opaque, err := decode(encodePNG(t, image.NewGray(one)), Reading{Limits: Default, Under: under})
	require.NoError(t, err)
	require.False(t, opaque.Transparent)
	require.Equal(t, color.Gray{}, opaque.Image.At(0, 0))
	require.Empty(t, opaque.Warnings)
}

// Grey artwork stays grey on a grey background, and takes on the colour of any other.
func TestGreyOnABackground(t *testing.T) {
	file := filepath.Join(goroot(t), "png", "testdata", "pngsuite", "basn4a08.png")
	for _, c := range []struct {
		under color.RGBA
		grey  bool
	}{{color.RGBA{}, true}, {color.RGBA{40, 40, 40, 255}, true}, {color.RGBA{32, 48, 64, 255}, false}} {
		p, err := OpenCopy(file, file, Reading{Limits: Default, Under: c.under})
		require.NoError(t, err)
		require.True(t, p.Transparent)
		require.Equal(t, c.grey, isGrey(p.Image), "%v", c.under)
	}
}
