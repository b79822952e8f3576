package pdftest

import (
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/stretchr/testify/require"
)

// Box is a rectangle in points, y up.
type Box struct {
	LeftPt, BottomPt, RightPt, TopPt float64
}

// Boxes are the boundaries of a page (ISO 32000-1, 14.11.2; clauses in this file are recalled from memory).
type Boxes struct {
	Media, Crop, Bleed, Trim Box
}

// PageBoxes reads the boxes from the page's own dictionary. One that is absent has the default of ISO
// 32000-1, table 30: the crop box is the media box, the others are the crop box. The media box must be in the
// page itself, not inherited.
func (d *Doc) PageBoxes(page int) Boxes {
	d.t.Helper()
	pdf, giveBack := lend(d.t)
	defer giveBack()
	at := d.page(page)

	media, err := pdf.FPDFPage_GetMediaBox(&requests.FPDFPage_GetMediaBox{Page: at})
	require.NoError(d.t, err, "page %d has no media box of its own", page)
	boxes := Boxes{Media: box(media.Left, media.Bottom, media.Right, media.Top)}

	// PDFium's only error from here on is that the box is absent.
	boxes.Crop = boxes.Media
	if crop, err := pdf.FPDFPage_GetCropBox(&requests.FPDFPage_GetCropBox{Page: at}); err == nil {
		boxes.Crop = box(crop.Left, crop.Bottom, crop.Right, crop.Top)
	}
	boxes.Bleed, boxes.Trim = boxes.Crop, boxes.Crop
	if bleed, err := pdf.FPDFPage_GetBleedBox(&requests.FPDFPage_GetBleedBox{Page: at}); err == nil {
		boxes.Bleed = box(bleed.Left, bleed.Bottom, bleed.Right, bleed.Top)
	}
	if trim, err := pdf.FPDFPage_GetTrimBox(&requests.FPDFPage_GetTrimBox{Page: at}); err == nil {
		boxes.Trim = box(trim.Left, trim.Bottom, trim.Right, trim.Top)
	}
	return boxes
}

func box(left, bottom, right, top float32) Box {
	return Box{LeftPt: float64(left), BottomPt: float64(bottom), RightPt: float64(right), TopPt: float64(top)}
}
