package pdf

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/png"
	"time"
	"unicode/utf16"

	"github.com/jung-kurt/gofpdf"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Document is a PDF file that is being drawn, a page at a time, in page millimetres. The first error sticks:
// later calls do nothing, and Stream returns it. A document is for one goroutine; several documents may be
// drawn and streamed at once.
type Document struct {
	canvas   *gofpdf.Fpdf // none of one that is only gone through
	dashMM   []float64    // the current dashes
	scaled   bool         // the current page is
	pictures int
	boxes    map[int]pageBoxes // by page number, from 1
	streamed bool
}

// PictureID names a placed picture: 1 for the first, and so on in the order of the calls to Place.
type PictureID int

// Page sizes that every reader takes, in points (ISO 32000-1, table C.1; clauses in this file are recalled
// from memory).
const (
	minPagePt = 3
	maxPagePt = 14400
)

// unusedPage is the default page size. No sheet has it, so that gofpdf gives each page a media box of its own.
var unusedPage = gofpdf.SizeType{Wd: 2, Ht: 2}

// fixedDate stands where gofpdf would write the time of day, so that the same job gives the same bytes.
var fixedDate = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// New starts a document without pages. The title may hold any text; the empty title is left out.
func New(title string) *Document {
	canvas := gofpdf.NewCustom(&gofpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: unusedPage})
	canvas.SetCompression(true)
	canvas.SetCatalogSort(true)
	canvas.SetCreationDate(fixedDate)
	canvas.SetModificationDate(fixedDate)
	canvas.SetMargins(0, 0, 0)
	canvas.SetAutoPageBreak(false, 0)
	canvas.SetTitle(textString(title), false)
	canvas.SetCreator("dropsheet", false)
	return &Document{canvas: canvas, boxes: map[int]pageBoxes{}}
}

// Undrawn starts a document that is only gone through, to see where on its pages things come to lie: nothing is drawn,
// and it can't be streamed. That takes a fraction of the time.
func Undrawn() *Document { return &Document{} }

// IsUndrawn tells whether the document is only gone through.
func (d *Document) IsUndrawn() bool { return d.canvas == nil }

// Err returns the first error, gofpdf's own among them, or nil.
func (d *Document) Err() error {
	if d.IsUndrawn() {
		return nil
	}
	return d.canvas.Error()
}

// AddPage starts a page of any size that readers take, about 1.1 to 5080 mm a side. Width and height are never swapped.
func (d *Document) AddPage(widthMM, heightMM float64) {
	if d.IsUndrawn() {
		return
	}
	for _, sideMM := range []float64{widthMM, heightMM} {
		pt := units.MMToPoints(sideMM)
		if !(pt >= minPagePt && pt <= maxPagePt) { // written so that NaN fails
			d.fail("a page of %g x %g mm can't be made: each side must be %.1f to %.0f mm",
				widthMM, heightMM, units.PointsToMM(minPagePt), units.PointsToMM(maxPagePt))
			return
		}
	}
	d.endScale()
	d.canvas.AddPageFormat("P", gofpdf.SizeType{Wd: widthMM, Ht: heightMM})
}

// SetBoxes says where the current page is cut (trim) and how far its drawing runs past the cut (bleed), ISO
// 32000-1, 14.11.2. The trim must lie in the bleed and the bleed on the page. A page without boxes is cut at
// its edges.
func (d *Document) SetBoxes(trim, bleed layout.Rect) {
	if !d.onPage("boxes") {
		return
	}
	widthMM, heightMM := d.canvas.GetPageSize()
	page := layout.Rect{WidthMM: widthMM, HeightMM: heightMM}
	switch {
	case !sound(trim) || !sound(bleed):
		d.fail("trim box %s and bleed box %s: both need a size above zero", told(trim), told(bleed))
	case !holds(page, bleed):
		d.fail("bleed box %s lies outside its page of %g x %g mm", told(bleed), widthMM, heightMM)
	case !holds(bleed, trim):
		d.fail("trim box %s lies outside its bleed box %s", told(trim), told(bleed))
	default:
		d.boxes[d.canvas.PageNo()] = pageBoxes{trim: trim, bleed: bleed, pageHeightMM: heightMM}
	}
}

// Place keeps a place on the current page for a picture that Stream will ask for. It may run past the page.
// It goes with the drawing's scales and clips. After an error it returns 0.
func (d *Document) Place(at layout.Rect) PictureID {
	if !d.onPage("a picture") {
		return 0
	}
	if !sound(at) {
		d.fail("a picture can't be placed at %s: it needs a size above zero", told(at))
		return 0
	}
	at = layout.Rounded(at)
	d.pictures++
	name := fmt.Sprintf("picture %d", d.pictures)
	options := gofpdf.ImageOptions{ImageType: "png", AllowNegativePosition: true}
	d.canvas.RegisterImageOptionsReader(name, options, bytes.NewReader(stub(d.pictures)))
	d.canvas.ImageOptions(name, at.XMM, at.YMM, at.WidthMM, at.HeightMM, false, options, 0, "")
	if d.Err() != nil {
		return 0
	}
	return PictureID(d.pictures)
}

// stub is a PNG file whose width in pixels no other stub has: gofpdf merges equal pictures, writes those of equal width
// in random order, and the width is all that shows in the file whose stub an object is.
func stub(widthPx int) []byte {
	var file bytes.Buffer
	// Writing to memory can't fail, and the width is above zero; if either were wrong, gofpdf would refuse the file.
	_ = png.Encode(&file, image.NewGray(image.Rect(0, 0, widthPx, 1)))
	return file.Bytes()
}

// finish ends the drawing and returns the file that gofpdf made of it.
func (d *Document) finish() ([]byte, error) {
	if d.streamed {
		return nil, errors.New("the document was streamed before\nhint: make a new one for another file")
	}
	d.streamed = true
	if d.IsUndrawn() {
		return nil, errors.New("the document was only gone through: draw one to stream it")
	}
	d.endScale()
	if d.Err() == nil && d.canvas.PageCount() == 0 {
		d.fail("the document has no pages: add one first")
	}
	var file bytes.Buffer
	if err := d.canvas.Output(&file); err != nil {
		return nil, fmt.Errorf("drawing the pages: %w", err)
	}
	return file.Bytes(), nil
}

// onPage tells whether something can be drawn.
func (d *Document) onPage(what string) bool {
	if d.IsUndrawn() {
		return false
	}
	if d.Err() == nil && d.canvas.PageNo() == 0 {
		d.fail("%s can't be set before the first page: add a page", what)
	}
	return d.Err() == nil
}

func (d *Document) fail(format string, args ...any) { d.canvas.SetErrorf(format, args...) }

// textString encodes text as UTF-16BE after a byte order mark (ISO 32000-1, 7.9.2.2).
// gofpdf's own conversion breaks on text outside the basic plane and panics on invalid UTF-8.
func textString(text string) string {
	if text == "" {
		return ""
	}
	encoded := []byte{0xFE, 0xFF}
	for _, unit := range utf16.Encode([]rune(text)) {
		encoded = append(encoded, byte(unit>>8), byte(unit))
	}
	return string(encoded)
}
