package sheet

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// The check rule, in mm.
const (
	longestMM     = 100.0
	checkStepMM   = 10.0
	leastCheckMM  = 50.0 // a shorter one can not tell two parts in a thousand by eye
	checkInsetMM  = 3.0  // from a cut, clear of its cut mark
	checkTickMM   = 1.2
	checkEndMM    = 2.4
	checkLineInMM = 0.6 // from the bleed to the rule's line
)

var checkStyle = pdf.Sans(6)

// CheckRuleMM is the length of a sheet's check rule: 100 mm or, on a sheet too small for that, as many whole
// centimetres as fit beside the cell and its laps, and 0 on one too small for five and on one that is not cut, whose
// print is measured itself.
func CheckRuleMM(p layout.Plan, s layout.Sheet) float64 {
	if p.Backdrop.Uncut {
		return 0
	}
	return checkRuleMM(p.Backdrop.OnPage(s))
}

// CheckSheet is the sheet to print and measure before the others: the first of those with the longest check rule.
func CheckSheet(p layout.Plan) layout.Sheet {
	best, longest := p.Sheets[0], -1.0
	for _, s := range p.Sheets {
		if mm := CheckRuleMM(p, s); mm > longest {
			best, longest = s, mm
		}
	}
	return best
}

// MarkedEnds tells whether both ends of a sheet's cell are marked in a strip, across and down, or seen since it is not
// cut.
func MarkedEnds(p layout.Plan, s layout.Sheet) (across, down bool) {
	if p.Backdrop.Uncut {
		return true, true
	}
	on := p.Backdrop.OnPage(s)
	left, top, right, bottom := Bare(p, s)
	besideRule := func(y float64, cut bool) bool { return !cut && besideCheckRule(on, y, checkSide(on)) }
	return !left && !right,
		!top && !bottom && !besideRule(on.Cell.YMM, on.CutTop) && !besideRule(on.Cell.BottomMM(), on.CutBottom)
}

func checkRuleMM(on layout.SheetPage) float64 {
	from, to := checkRoom(on)
	length := min(longestMM, math.Floor((to-from)/checkStepMM)*checkStepMM)
	if length < leastCheckMM {
		return 0
	}
	return length
}

// checkRoom is from where to where down the page a rule may stand beside a sheet.
func checkRoom(on layout.SheetPage) (fromMM, toMM float64) {
	fromMM, toMM = on.Kept.YMM+lapEndMM, on.Kept.BottomMM()-lapEndMM
	if on.CutTop {
		fromMM = on.Kept.YMM + checkInsetMM
	}
	if on.CutBottom {
		toMM = on.Kept.BottomMM() - checkInsetMM
	}
	return fromMM, toMM
}

// checkSide is the side of the cell that the rule stands on: -1 for the left, 1 for the right.
func checkSide(on layout.SheetPage) float64 {
	if on.CutLeft {
		return -1
	}
	return 1
}

// besideCheckRule tells whether a mark in the strip on that side, so far down the page, would touch the rule.
func besideCheckRule(on layout.SheetPage, yMM, out float64) bool {
	const apartMM = 2.0
	from, _ := checkRoom(on)
	length := checkRuleMM(on)
	return length > 0 && out == checkSide(on) && yMM > from-apartMM && yMM < from+length+apartMM
}

// drawCheckRule draws a ruler in the strip beside the cell, to be held against a real one.
func drawCheckRule(d *pdf.Document, on layout.SheetPage) {
	length := checkRuleMM(on)
	if length == 0 {
		return
	}
	out, bleed := checkSide(on), on.Cell.XMM-layout.BleedMM
	if out > 0 {
		bleed = on.Cell.RightMM() + layout.BleedMM
	}
	line := bleed + out*checkLineInMM
	top, _ := checkRoom(on)

	lines := []pdf.Line{along(true, line, top, top+length)}
	for mm := 0.0; mm <= length; mm += checkStepMM {
		tick := checkTickMM
		if mm == 0 || mm == length || mm == length/2 {
			tick = min(checkEndMM, stripClearMM(on)-checkLineInMM)
		}
		lines = append(lines, along(false, top+mm, line, line+out*tick))
	}
	drawKeylined(d, lines...)

	// Its length stands between the ticks' ends and the strip's edge, in the middle of the first half, turned
	// to read upwards; in a narrow strip between two ticks.
	text := fmt.Sprintf("%g mm", length)
	clear, middle := checkLineInMM+checkTickMM, length/4
	if stripClearMM(on)-clear < checkStyle.CapMM() {
		clear, middle = checkLineInMM, checkStepMM*(math.Floor(length/4/checkStepMM)+0.5)
	}
	x := bleed + out*(clear+(stripClearMM(on)-clear)/2) + checkStyle.CapMM()/2
	y := top + middle + checkStyle.Width(text)/2
	d.PutUpward(checkStyle, x, y, text)
}
