package sheet

import (
	"fmt"
	"math"

	"github.com/jung-kurt/gofpdf"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// The check rule, in mm.
const (
	checkRuleMM   = 100.0
	checkStepMM   = 10.0
	checkInsetMM  = 3.0 // from the cell's corner, clear of its cut mark
	checkTextMM   = 2.0 // from the rule's end to its words
	checkTickMM   = 1.2
	checkEndMM    = 2.4
	checkTextPt   = 6.0
	checkLineInMM = 0.6 // from the bleed to the rule's line
	// checkWordsEm is the width of "100 mm" as a share of its size (Adobe Font Metrics, Core 14, Helvetica: three digits of 556, a space
	// of 278, two m of 833).
	checkWordsEm = 3.612
)

// CheckRuleMM is the length of a sheet's check rule: 100 mm or, on a sheet too small for that, as many whole centimetres as fit beside
// its length in words, and 0 on one too small for those.
func CheckRuleMM(s layout.Sheet) float64 {
	wordsMM := checkTextMM + checkWordsEm*units.PointsToMM(checkTextPt)
	return max(0, min(checkRuleMM, math.Floor((s.Cell.HeightMM-2*checkInsetMM-wordsMM)/checkStepMM)*checkStepMM))
}

// drawCheckRule draws a ruler in the strip beside the cell, to be held against a real one.
func drawCheckRule(c *gofpdf.Fpdf, p layout.Plan, s layout.Sheet) {
	length := CheckRuleMM(s)
	if length == 0 {
		return
	}
	cell := s.OnItsPage(s.Cell)
	out, line := -1.0, cell.XMM-layout.BleedMM-checkLineInMM
	if left, _, _, _ := p.Backdrop.Cut(s); !left {
		out, line = 1, cell.RightMM()+layout.BleedMM+checkLineInMM
	}
	c.SetFont("Helvetica", "", checkTextPt)
	c.SetTextColor(0, 0, 0)
	top := cell.YMM + checkInsetMM

	strokes := []stroke{{line, top, line, top + length}}
	for mm := 0.0; mm <= length; mm += checkStepMM {
		tick := checkTickMM
		if mm == 0 || mm == length || mm == length/2 {
			tick = checkEndMM
		}
		strokes = append(strokes, stroke{line, top + mm, line + out*tick, top + mm})
	}
	rule(c, strokes...)

	text := fmt.Sprintf("%g mm", length)
	width := c.GetStringWidth(text)
	_, sizeMM := c.GetFontSize()
	// Turned to read upwards, its letters' middle on the middle of the strip.
	x, y := cell.XMM-layout.BleedMM-stripClearMM/2, top+length+checkTextMM+width
	if out > 0 {
		x = cell.RightMM() + layout.BleedMM + stripClearMM/2
	}
	x += capHeight * sizeMM / 2
	c.TransformBegin()
	c.TransformRotate(90, x, y)
	c.Text(x, y, text)
	c.TransformEnd()
}
