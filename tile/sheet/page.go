package sheet

import (
	"image"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
	"dropsheet/tile/raster"
)

// Label is what every sheet of a job says of the job.
type Label struct {
	Job  string // the job's name, UTF-8
	Code string // the job's check code
	Of   int    // sheets in the whole job
}

// addPage starts the sheet's page, keeps the place for its picture and draws its marks. It returns the grid
// pixels to put there.
func addPage(d *pdf.Document, p layout.Plan, grid raster.Grid, s layout.Sheet, l Label) image.Rectangle {
	page, picture := p.Backdrop.Page(), p.PictureOnBoard()
	d.AddPage(page.WidthMM, page.HeightMM)
	printed := p.Backdrop.Printed(s)
	bleed := s.OnItsPage(printed)
	correction := p.Backdrop.Correction()
	d.SetBoxes(pdf.Rect(correction.Drawn(s.OnItsPage(p.Backdrop.Kept(s)))), pdf.Rect(correction.Drawn(bleed)))
	canvas := d.Canvas()
	if !correction.None() {
		// All of it is drawn at scale 1 and stretched as a whole, so that picture, marks and check rule agree.
		canvas.TransformBegin()
		defer canvas.TransformEnd()
		canvas.TransformScale(100*correction.X, 100*correction.Y, correction.About.XMM, correction.About.YMM)
	}

	// Whole pixels cover a little more than is printed: they go where they belong, and the page clips the rest away.
	pixels := raster.Even(grid.Pixels(picture, printed))
	canvas.ClipRect(bleed.XMM, bleed.YMM, bleed.WidthMM, bleed.HeightMM, false)
	d.Place(pdf.Rect(s.OnItsPage(grid.OnBoard(picture, pixels))))
	canvas.ClipEnd()

	Marks(canvas, p, s, l)
	return pixels
}
