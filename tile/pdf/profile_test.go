package pdf

import (
	"bytes"
	"image"
	"image/color"
	"testing"

	"dropsheet/tile/colour"
	"dropsheet/tile/pdf/pdftest"
)

// An outside colour engine, the one in PDFium, turns our sRGB into its own: every grey and the corners of the
// cube must stay.
func TestColoursThroughPDFium(t *testing.T) {
	const levels = 256
	ramp, rgbRamp := image.NewGray(image.Rect(0, 0, levels, 1)), image.NewRGBA(image.Rect(0, 0, levels, 1))
	for v := range levels {
		ramp.SetGray(v, 0, color.Gray{byte(v)})
		rgbRamp.SetRGBA(v, 0, color.RGBA{byte(v), byte(v), byte(v), 255})
	}
	corners := image.NewRGBA(image.Rect(0, 0, 8, 1))
	for i := range 8 {
		corners.SetRGBA(i, 0, color.RGBA{byte(i & 1 * 255), byte(i >> 1 & 1 * 255), byte(i >> 2 & 1 * 255), 255})
	}
	pictures := []image.Image{ramp, rgbRamp, corners}
	d := New("colours")
	for _, img := range pictures {
		d.AddPage(float64(img.Bounds().Dx()), 5)
		d.Place(rect(0, 0, float64(img.Bounds().Dx()), 5))
	}
	doc := pdftest.Open(t, streamed(t, d, func(id PictureID) (Picture, error) { return EncodeFlate(pictures[id-1]) }))
	for i, img := range pictures {
		drawn := doc.Render(i+1, tenPerMM)
		for x := range img.Bounds().Dx() {
			want := color.RGBAModel.Convert(img.At(x, 0)).(color.RGBA)
			requireNear(t, want, drawn.RGBAAt(10*x+5, 25), 1, "picture %d, pixel %d", i, x)
		}
	}
}

// A profile that isn't sRGB must change the colours, or the test above would pass with no profile at all.
func TestAnotherProfileChangesColours(t *testing.T) {
	swapped := bytes.Clone(colour.SRGBProfile(false))
	r, g := bytes.Index(swapped, []byte("rXYZ")), bytes.Index(swapped, []byte("gXYZ"))
	copy(swapped[r:], "gXYZ")
	copy(swapped[g:], "rXYZ")
	d := New("swapped")
	d.AddPage(10, 10)
	d.Place(rect(0, 0, 10, 10))
	doc := pdftest.Open(t, streamed(t, d, func(PictureID) (Picture, error) {
		p, err := EncodeFlate(fill(image.NewRGBA(image.Rect(0, 0, 4, 4)), color.RGBA{255, 0, 0, 255}))
		p.Profile = swapped
		return p, err
	}))
	requireNear(t, color.RGBA{0, 255, 0, 255}, doc.Render(1, tenPerMM).RGBAAt(50, 50), 2,
		"red under a profile with red and green swapped")
}
