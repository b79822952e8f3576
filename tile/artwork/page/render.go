package page

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/color"

	"github.com/klippa-app/go-pdfium/enums"
	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
)

// bandPx is how many pixels are drawn at a time: PDFium's own memory, which grows with them, is never given back while
// the file is open.
const bandPx = 8 << 20

// Render draws a page on an opaque ground, filling widthPx x heightPx pixels. The same bytes give the same pixels.
func (f *File) Render(page, widthPx, heightPx int, ground color.RGBA) (*image.RGBA, error) {
	if page < 1 || page > f.pages {
		return nil, fmt.Errorf("there is no page %d\nhint: take 1 to %d", page, f.pages)
	}
	out := image.NewRGBA(image.Rect(0, 0, widthPx, heightPx))
	rows := max(1, min(heightPx, bandPx/widthPx))
	_, err := guarded(func() (struct{}, error) { return struct{}{}, f.renderBands(page, out, rows, ground) })
	if err != nil {
		return nil, f.why(err)
	}
	return out, nil
}

// BareGround tells whether a page shows any of the ground that it is drawn on, by drawing it small on two.
func (f *File) BareGround(page int) (bool, error) {
	const sidePx = 256
	white, err := f.Render(page, sidePx, sidePx, color.RGBA{0xff, 0xff, 0xff, 0xff})
	if err != nil {
		return false, err
	}
	black, err := f.Render(page, sidePx, sidePx, color.RGBA{A: 0xff})
	return err == nil && !bytes.Equal(white.Pix, black.Pix), err
}

// renderBands draws a page so many rows at a time.
func (f *File) renderBands(page int, out *image.RGBA, rows int, ground color.RGBA) error {
	width, height := out.Bounds().Dx(), out.Bounds().Dy()
	made, err := f.engine.FPDFBitmap_Create(&requests.FPDFBitmap_Create{Width: width, Height: rows, Alpha: 0})
	if err != nil {
		return err
	}
	defer f.engine.FPDFBitmap_Destroy(&requests.FPDFBitmap_Destroy{Bitmap: made.Bitmap})
	loaded, err := f.engine.FPDF_LoadPage(&requests.FPDF_LoadPage{Document: f.ref, Index: page - 1})
	if err != nil {
		return err
	}
	defer f.engine.FPDF_ClosePage(&requests.FPDF_ClosePage{Page: loaded.Page})
	for top := 0; top < height; top += rows {
		if err := f.renderBand(loaded.Page, made.Bitmap, out, top, min(rows, height-top), ground); err != nil {
			return err
		}
	}
	return nil
}

// renderBand draws the page's rows from top on into a bitmap, and copies them out of it.
func (f *File) renderBand(page references.FPDF_PAGE, band references.FPDF_BITMAP, out *image.RGBA,
	top, rows int, ground color.RGBA) error {
	width, height := out.Bounds().Dx(), out.Bounds().Dy()
	if _, err := f.engine.FPDFBitmap_FillRect(&requests.FPDFBitmap_FillRect{Bitmap: band, Width: width, Height: rows,
		Color: filled(ground)}); err != nil {
		return err
	}
	// Without the flag for annotations none is drawn, nor any field of a form.
	if _, err := f.engine.FPDF_RenderPageBitmap(&requests.FPDF_RenderPageBitmap{Bitmap: band,
		Page: requests.Page{ByReference: &page}, StartY: -top, SizeX: width, SizeY: height,
		Flags: enums.FPDF_RENDER_FLAG_REVERSE_BYTE_ORDER}); err != nil {
		return err
	}
	buffer, err := f.engine.FPDFBitmap_GetBuffer(&requests.FPDFBitmap_GetBuffer{Bitmap: band})
	if err != nil {
		return err
	}
	pixels := out.Pix[top*out.Stride:][:rows*out.Stride]
	if len(buffer.Buffer) < len(pixels) {
		return errors.New("its pixels are not there")
	}
	copy(pixels, buffer.Buffer)
	for i := 3; i < len(pixels); i += 4 {
		pixels[i] = 0xff // a bitmap without alpha leaves that byte as it was
	}
	return nil
}

// filled is a colour as PDFium fills with it: alpha, red, green, blue from the highest byte on. Filling knows nothing
// of the flag that has pages drawn in the order of Go's pictures, so red and blue change places.
func filled(c color.RGBA) uint64 {
	return uint64(c.A)<<24 | uint64(c.B)<<16 | uint64(c.G)<<8 | uint64(c.R)
}
