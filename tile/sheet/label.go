package sheet

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Sizes in the strip, in mm.
const (
	labelInsetMM = 3.0 // from the cell's corner, clear of its cut mark
	labelGapMM   = 2.5
	arrowWideMM  = 1.8
	arrowHighMM  = 2.2
)

var (
	labelName = pdf.Sans(8).Bold()
	labelText = pdf.Sans(6.5)
)

// stripClearMM is the part of a cut side that marks may use: beyond the bleed, within StripMM.
const stripClearMM = layout.StripMM - layout.BleedMM

// drawLabel writes the sheet's name, its place in the pasting order, which way is up, and the job's check
// code and name into the strip above the cell, or below it when that is the side that is cut. What does not
// fit a small sheet is left out from the end.
func drawLabel(d *pdf.Document, on layout.SheetPage, s layout.Sheet, l Label) {
	cell := on.Cell
	middle := cell.YMM - layout.BleedMM - stripClearMM/2
	if !on.CutTop {
		middle = cell.BottomMM() + layout.BleedMM + stripClearMM/2
	}
	x, end := cell.XMM+labelInsetMM, cell.RightMM()-labelInsetMM

	write := func(style pdf.Style, text string) bool {
		text, _ = pdf.Printed(text)
		to, whole := d.PutWhole(style, x, middle+style.CapMM()/2, end, text)
		if whole {
			x = to + labelGapMM
		}
		return whole
	}
	write(labelName, s.Name)
	write(labelText, fmt.Sprintf("%d of %d", s.Page, l.Of))
	if x+arrowWideMM <= end {
		d.Polygon(pdf.Grey(0), pdf.Pen{},
			layout.Point{XMM: x, YMM: middle + arrowHighMM/2},
			layout.Point{XMM: x + arrowWideMM, YMM: middle + arrowHighMM/2},
			layout.Point{XMM: x + arrowWideMM/2, YMM: middle - arrowHighMM/2})
		x += arrowWideMM + 0.8
		write(labelText, "board up")
	}
	if write(labelText, "check "+l.Code) {
		write(labelText, l.Job)
	}
}
