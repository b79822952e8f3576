package texture

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/tile/artwork"
	"dropsheet/tile/colour/icctest"

	"github.com/stretchr/testify/require"
)

// flat is a picture of one colour.
func flat(w, h int, c color.RGBA) *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, w, h))
	for i := 0; i < len(m.Pix); i += 4 {
		copy(m.Pix[i:], []uint8{c.R, c.G, c.B, 255})
	}
	return m
}

// What an outside colour engine makes of them, by "transicc -t1 -n -s -i FILE.icc -o '*sRGB'" of lcms 2.14,
// each channel rounded. A picture of one colour has it in every level of the stack, in the artwork itself
// too, and in every copy.
func TestOwnColoursInEveryLevel(t *testing.T) {
	for _, c := range []struct {
		name      string
		space     icctest.Space
		own, want color.RGBA
	}{
		{"Adobe RGB, skin", icctest.AdobeRGB, color.RGBA{200, 120, 100, 255}, color.RGBA{224, 121, 99, 255}},
		{"Adobe RGB, leaf", icctest.AdobeRGB, color.RGBA{110, 150, 90, 255}, color.RGBA{87, 151, 86, 255}},
		{"Adobe RGB, night", icctest.AdobeRGB, color.RGBA{40, 50, 45, 255}, color.RGBA{30, 46, 41, 255}},
		{"Adobe RGB, a green that sRGB can't show", icctest.AdobeRGB, color.RGBA{30, 200, 60, 255},
			color.RGBA{0, 201, 37, 255}},
		{"Display P3, sea", icctest.DisplayP3, color.RGBA{90, 110, 170, 255}, color.RGBA{85, 111, 175, 255}},
		{"Display P3, white", icctest.DisplayP3, color.RGBA{255, 255, 255, 255}, color.RGBA{255, 255, 255, 255}},
		{"ProPhoto, grey", icctest.ProPhoto, color.RGBA{128, 128, 128, 255}, color.RGBA{146, 146, 146, 255}},
	} {
		t.Run(c.name, func(t *testing.T) {
			tex := New(&artwork.Picture{Image: flat(37, 20, c.own), ICC: c.space.Profile()})
			for _, spanPx := range []float64{0, 1.9, 2.5, 4, 9, 100} {
				requireNear(t, c.want, tex.At(0.3, 0.6, spanPx).SRGB(), "averaged over %v", spanPx)
			}
			for _, side := range []int{1, 4, 19} {
				requireNear(t, c.want, tex.Reduced(side).RGBAAt(0, 0), "reduced to %d", side)
			}
			requireNear(t, c.want, tex.FromArtwork(c.own).SRGB(), "by itself")
			requireNear(t, c.want, New(&artwork.Picture{Image: flat(1, 1, c.own), ICC: c.space.Profile()}).Reduced(1).RGBAAt(0,
				0), "an artwork of one pixel")
		})
	}
}

// requireNear allows a level: the table of encodings is that coarse.
func requireNear(t *testing.T, want, got color.RGBA, words string, args ...any) {
	t.Helper()
	for i, v := range []uint8{got.R, got.G, got.B} {
		require.InDelta(t, float64([]uint8{want.R, want.G, want.B}[i]), float64(v), 1, append([]any{words}, args...)...)
	}
}

// Grey levels under a plain power of 1.8: 200 is 64.57 % of the light by the engine above, which is sRGB's 210.
func TestOwnGrey(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 20, 30))
	for i := range m.Pix {
		m.Pix[i] = 200
	}
	tex := New(&artwork.Picture{Image: m, ICC: icctest.Grey(icctest.Gamma(461))})
	for _, spanPx := range []float64{1, 3, 50} {
		requireNear(t, color.RGBA{210, 210, 210, 255}, tex.At(0.5, 0.5, spanPx).SRGB(), "averaged over %v", spanPx)
	}
	require.Equal(t, 1, tex.halves[0].channels)
}

// Half black and half white is half the light, whatever the curve: IEC 61966-2-1 encodes 0.5 as 187.5 of 255.
func TestOwnMeansAreOfLight(t *testing.T) {
	m := flat(64, 64, color.RGBA{})
	for i := range 64 * 64 {
		if (i%64+i/64)%2 == 0 {
			copy(m.Pix[4*i:], []uint8{255, 255, 255})
		}
	}
	tex := New(&artwork.Picture{Image: m, ICC: icctest.ProPhoto.Profile()})
	require.InDelta(t, 187.5, float64(tex.At(0.5, 0.5, 16).SRGB().R), 1)
	require.InDelta(t, 187.5, float64(tex.At(0.5, 0.5, 1).SRGB().G), 1, "between four pixels of the artwork")
}

// A profile of sRGB's, or none that can be followed, changes nothing, to the bit.
func TestSRGBByItsProfileIsTheSame(t *testing.T) {
	tables := icctest.Profile("RGB ", 2, icctest.Tag{Name: "A2B0", Data: make([]byte, 40)})
	plain := New(&artwork.Picture{Image: quarters(61, 40)})
	for name, profile := range map[string][]byte{"sRGB": icctest.SRGB.Profile(), "tables": tables,
		"nonsense": []byte("nonsense")} {
		tex := New(&artwork.Picture{Image: quarters(61, 40), ICC: profile})
		require.Equal(t, stack(plain), stack(tex), name)
		for i := range 200 {
			u, v, spanPx := math.Mod(float64(i)*0.618, 1), math.Mod(float64(i)*0.414, 1), float64(i%9)
			require.Equal(t, plain.At(u, v, spanPx), tex.At(u, v, spanPx), name)
		}
	}
	require.NotEqual(t, stack(plain),
		stack(New(&artwork.Picture{Image: quarters(61, 40), ICC: icctest.AdobeRGB.Profile()})))
}

// stack is all levels of a texture but the artwork.
func stack(t *Texture) []level {
	t.half(1)
	return t.halves
}

// Stored as planes, it has the same colours.
func TestOwnColoursOfPlanes(t *testing.T) {
	const level = 150
	m := image.NewYCbCr(image.Rect(0, 0, 16, 16), image.YCbCrSubsampleRatio420)
	for i := range m.Y {
		m.Y[i] = level
	}
	for i := range m.Cb {
		m.Cb[i], m.Cr[i] = 110, 150
	}
	r, g, b := color.YCbCrToRGB(level, 110, 150)
	planes := New(&artwork.Picture{Image: m, ICC: icctest.AdobeRGB.Profile()})
	rgb := New(&artwork.Picture{Image: flat(16, 16, color.RGBA{r, g, b, 255}), ICC: icctest.AdobeRGB.Profile()})
	require.Equal(t, stack(rgb), stack(planes))
	require.Equal(t, rgb.At(0.4, 0.4, 1), planes.At(0.4, 0.4, 1))
}
