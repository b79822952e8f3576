package sheet

import (
	"fmt"

	"github.com/jung-kurt/gofpdf"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Sizes in the strip, in mm unless they say points.
const (
	labelNamePt  = 8.0
	labelTextPt  = 6.5
	capHeight    = 0.72 // of Helvetica, as a share of its size (Adobe Font Metrics, Core 14: CapHeight 718)
	labelInsetMM = 3.0  // from the cell's corner, clear of its cut mark
	labelGapMM   = 2.5
	arrowWideMM  = 1.8
	arrowHighMM  = 2.2
)

// strip is the part of a cut side that marks may use: beyond the bleed, within StripMM.
const stripClearMM = layout.StripMM - layout.BleedMM

// drawLabel writes the sheet's name, its place in the pasting order, which way is up, and the job's check
// code and name into the strip above the cell, or below it when that is the side that is cut. What does not
// fit a small sheet is left out from the end.
func drawLabel(c *gofpdf.Fpdf, p layout.Plan, s layout.Sheet, l Label) {
	cell := s.OnItsPage(s.Cell)
	middle := cell.YMM - layout.BleedMM - stripClearMM/2
	if _, top, _, _ := p.Backdrop.Cut(s); !top {
		middle = cell.BottomMM() + layout.BleedMM + stripClearMM/2
	}
	x, end := cell.XMM+labelInsetMM, cell.RightMM()-labelInsetMM

	c.SetTextColor(0, 0, 0)
	write := func(text, weight string, sizePt float64) bool {
		text, _ = pdf.Printed(text)
		font := pdf.Font{Family: "Helvetica", Weight: weight}.For(text)
		font.Use(c, sizePt)
		text = font.Encode(text)
		width := c.GetStringWidth(text)
		if x+width > end {
			return false
		}
		_, sizeMM := c.GetFontSize()
		c.Text(x, middle+capHeight*sizeMM/2, text)
		x += width + labelGapMM
		return true
	}
	write(s.Name, "B", labelNamePt)
	write(fmt.Sprintf("%d of %d", s.Page, l.Of), "", labelTextPt)
	if x+arrowWideMM <= end {
		c.SetFillColor(0, 0, 0)
		c.Polygon([]gofpdf.PointType{
			{X: x, Y: middle + arrowHighMM/2}, {X: x + arrowWideMM, Y: middle + arrowHighMM/2},
			{X: x + arrowWideMM/2, Y: middle - arrowHighMM/2},
		}, "F")
		x += arrowWideMM + 0.8
		write("board up", "", labelTextPt)
	}
	if write("check "+l.Code, "", labelTextPt) {
		write(l.Job, "", labelTextPt)
	}
}
