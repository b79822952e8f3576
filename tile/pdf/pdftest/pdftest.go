// Package pdftest lets tests see a PDF file through an outside reader, PDFium: its pages, boxes, drawing and text.
//
// Pages are numbered from 1. Boxes are in points in PDF user space: origin at the page's bottom-left corner,
// x right, y up (ISO 32000-1, 8.3.2.3, recalled from memory). Rendered pictures have their origin at the
// top-left corner of the page's crop box, y down. Only tests may import it: it brings the whole reader along.
package pdftest

import (
	"context"
	"image"
	"sync"
	"testing"

	"github.com/klippa-app/go-pdfium/references"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"

	"dropsheet/tile/pdfium"
)

// Doc is an open PDF file. Each method ends the test if PDFium can't do what it asks.
type Doc struct {
	t   testing.TB
	ref references.FPDF_DOCUMENT
}

// Open reads a whole PDF file and closes it when the test ends.
func Open(t testing.TB, data []byte) *Doc {
	t.Helper()
	pdf, giveBack := lend(t)
	defer giveBack()
	opened, err := pdf.OpenDocument(&requests.OpenDocument{File: &data})
	require.NoError(t, err, "pdfium can't open the file")
	t.Cleanup(func() {
		pdf, giveBack := lend(t)
		defer giveBack()
		_, err := pdf.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: opened.Document})
		require.NoError(t, err)
	})
	return &Doc{t: t, ref: opened.Document}
}

// PageCount returns the number of pages.
func (d *Doc) PageCount() int {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	count, err := pdf.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: d.ref})
	require.NoError(d.t, err)
	return count.PageCount
}

// PageSizePoints returns the width and height of a page as shown, in points.
func (d *Doc) PageSizePoints(page int) (widthPt, heightPt float64) {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	size, err := pdf.GetPageSize(&requests.GetPageSize{Page: d.page(page)})
	require.NoError(d.t, err)
	return size.Width, size.Height
}

// Render draws a page on white at so many pixels to the inch.
func (d *Doc) Render(page, dpi int) *image.RGBA {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	drawn, err := pdf.RenderPageInDPI(&requests.RenderPageInDPI{Page: d.page(page), DPI: dpi})
	require.NoError(d.t, err)
	defer drawn.Cleanup()
	own := image.NewRGBA(drawn.Result.RenderedImage.Bounds())
	copy(own.Pix, drawn.Result.RenderedImage.(*image.RGBA).Pix) // PDFium takes its own pixels back
	return own
}

// Text returns the text of a page in the order in which it was drawn.
func (d *Doc) Text(page int) string {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	text, err := pdf.GetPageText(&requests.GetPageText{Page: d.page(page)})
	require.NoError(d.t, err)
	return text.Text
}

// Title returns the title that a viewer shows, or "" if there is none.
func (d *Doc) Title() string {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	meta, err := pdf.FPDF_GetMetaText(&requests.FPDF_GetMetaText{Document: d.ref, Tag: "Title"})
	require.NoError(d.t, err)
	return meta.Value
}

func (d *Doc) page(number int) requests.Page {
	return requests.Page{ByIndex: &requests.PageByIndex{Document: d.ref, Index: number - 1}}
}

// lend lends PDFium to one test at a time. It locks its calls itself, but not the return of a picture's
// memory (Cleanup of what RenderPageInDPI gives), and two calls at once spoil all of its memory.
func lend(t testing.TB) (pdf *pdfium.Engine, giveBack func()) {
	t.Helper()
	pdf, err := reader()
	require.NoError(t, err, "pdfium can't start")
	busy.Lock()
	return pdf, busy.Unlock
}

var busy sync.Mutex

// reader starts the one PDFium of this test binary, and it is never stopped.
var reader = sync.OnceValues(func() (*pdfium.Engine, error) {
	return pdfium.Start(context.Background(), compiledFolder, pdfium.Bounds{})
})

// compiledFolder is asked for before a test can change the environment.
var compiledFolder = pdfium.CompiledFolder("dropsheet-tests")
