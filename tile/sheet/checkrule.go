package sheet

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// The check rule, in mm.
const (
	checkRuleMM   = 100.0
	checkStepMM   = 10.0
	leastCheckMM  = 50.0 // a shorter one can not tell two parts in a thousand by eye
	checkInsetMM  = 3.0  // from a cut, clear of its cut mark
	checkTickMM   = 1.2
	checkEndMM    = 2.4
	checkLineInMM = 0.6 // from the bleed to the rule's line
)

var checkStyle = pdf.Sans(6)

// CheckRuleMM is the length of a sheet's check rule: 100 mm or, on a sheet too small for that, as many whole
// centimetres as fit beside the cell and its laps, and 0 on one too small for five.
func CheckRuleMM(p layout.Plan, s layout.Sheet) float64 {
	from, to := checkRoom(p, s)
	length := min(checkRuleMM, math.Floor((to-from)/checkStepMM)*checkStepMM)
	if length < leastCheckMM {
		return 0
	}
	return length
}

// checkRoom is where on the board, from y to y, a rule may stand beside a sheet.
func checkRoom(p layout.Plan, s layout.Sheet) (fromMM, toMM float64) {
	kept := p.Backdrop.Kept(s)
	fromMM, toMM = kept.YMM+lapEndMM, kept.BottomMM()-lapEndMM
	_, top, _, bottom := p.Backdrop.Cut(s)
	if top {
		fromMM = kept.YMM + checkInsetMM
	}
	if bottom {
		toMM = kept.BottomMM() - checkInsetMM
	}
	return fromMM, toMM
}

// drawCheckRule draws a ruler in the strip beside the cell, to be held against a real one.
func drawCheckRule(d *pdf.Document, p layout.Plan, s layout.Sheet) {
	length := CheckRuleMM(p, s)
	if length == 0 {
		return
	}
	cell := s.OnItsPage(s.Cell)
	out, bleed := -1.0, cell.XMM-layout.BleedMM
	if left, _, _, _ := p.Backdrop.Cut(s); !left {
		out, bleed = 1, cell.RightMM()+layout.BleedMM
	}
	line := bleed + out*checkLineInMM
	from, _ := checkRoom(p, s)
	top := cell.YMM + from - s.Cell.YMM

	lines := []pdf.Line{along(true, line, top, top+length)}
	for mm := 0.0; mm <= length; mm += checkStepMM {
		tick := checkTickMM
		if mm == 0 || mm == length || mm == length/2 {
			tick = checkEndMM
		}
		lines = append(lines, along(false, top+mm, line, line+out*tick))
	}
	rule(d, lines...)

	// Its length stands between the ticks' ends and the strip's edge, in the middle of the first half, turned
	// to read upwards.
	text := fmt.Sprintf("%g mm", length)
	clear := checkLineInMM + checkTickMM
	x := bleed + out*(clear+(stripClearMM-clear)/2) + checkStyle.CapMM()/2
	y := top + length/4 + checkStyle.Width(text)/2
	d.PutUpward(checkStyle, x, y, text)
}
