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

// addPage starts the sheet's page, keeps the place for its picture and draws its marks, of each of its copies. It
// returns the grid pixels to put there.
func addPage(d *pdf.Document, p layout.Plan, grid raster.Grid, s layout.Sheet, l Label) image.Rectangle {
	page, picture := p.Backdrop.Page(), p.PictureOnBoard()
	d.AddPage(page.WidthMM, page.HeightMM)
	on, correction := p.Backdrop.OnPage(s), p.Backdrop.Correction()
	switch {
	case p.Backdrop.Uncut: // all of the paper stays
		whole := layout.Rect{WidthMM: page.WidthMM, HeightMM: page.HeightMM}
		d.SetBoxes(whole, whole)
	case p.Backdrop.Copies <= 1: // else the page is cut in many places
		d.SetBoxes(correction.Drawn(on.Kept), correction.Drawn(on.Printed))
	}
	if !correction.None() {
		// All of it is drawn at scale 1 and stretched as a whole, so that picture, marks and check rule agree.
		d.Scale(correction.X, correction.Y, correction.About)
	}

	// Whole blocks cover more than is printed: they go where they belong, and the page clips the rest away. So two
	// sheets show the same to the last level where they overlap.
	pixels := pdf.WholeBlocks(grid.Pixels(picture, p.Backdrop.Printed(s)))
	for _, copied := range p.Backdrop.OnSheet(s) {
		on := p.Backdrop.OnPage(copied)
		d.Clipped(on.Printed, func() { d.Place(on.FromBoard(grid.OnBoard(picture, pixels))) })
		Marks(d, p, copied, l)
	}
	return pixels
}
