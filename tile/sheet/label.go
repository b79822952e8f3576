package sheet

import (
	"fmt"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Sizes in the strip, in mm.
const (
	labelInsetMM = 3.0 // from the cell's corner, clear of its cut mark
	labelGapMM   = 2.5
	arrowWideMM  = 1.8
	arrowHighMM  = 2.2
	arrowGapMM   = 0.8
)

var (
	labelName = pdf.Sans(8).Bold()
	labelText = pdf.Sans(6.5)
)

// stripClearMM is the part of a cut side that marks may use: beyond the bleed, within the strip.
func stripClearMM(on layout.SheetPage) float64 { return on.StripMM - layout.BleedMM }

// piece is a part of a label.
type piece struct {
	style pdf.Style
	text  string  // empty for the arrow
	gapMM float64 // behind it
}

// widthMM is how wide it is, without the gap behind it.
func (p piece) widthMM() float64 {
	if p.text == "" {
		return arrowWideMM
	}
	return p.style.Width(p.text)
}

// label is what a sheet's label says, from left to right: the sheet's name, its place in the pasting order, which way
// is up, the job's check code and its name. What does not fit between the cell's cut marks is left out from the end;
// but before the check code goes, the words that explain the arrow do.
func label(on layout.SheetPage, s layout.Sheet, l Label) []piece {
	printed := func(text string) string {
		text, _ = pdf.Printed(text)
		return text
	}
	before := []piece{{labelName, s.Name, labelGapMM}, {labelText, fmt.Sprintf("%d of %d", s.Page, l.Of), labelGapMM}}
	wordy := []piece{{gapMM: arrowGapMM}, {labelText, "board up", labelGapMM}}
	after := []piece{{labelText, printed("check " + l.Code), labelGapMM}}
	if name := printed(l.Job); name != "" {
		after = append(after, piece{labelText, name, labelGapMM})
	}
	roomMM := on.Cell.WidthMM - 2*labelInsetMM
	full := fitting(slices.Concat(before, wordy, after), roomMM)
	if !slices.Contains(full, after[0]) {
		short := fitting(slices.Concat(before, []piece{{gapMM: labelGapMM}}, after), roomMM)
		if slices.Contains(short, after[0]) {
			return short
		}
	}
	return full
}

// fitting is as many pieces of a label, from its beginning on, as have room.
func fitting(all []piece, roomMM float64) []piece {
	at := 0.0
	for i, p := range all {
		if at+p.widthMM() > roomMM {
			return all[:i]
		}
		at += p.widthMM() + p.gapMM
	}
	return all
}

// ShowsCode tells whether a sheet's label has room for the check code.
func ShowsCode(p layout.Plan, s layout.Sheet, l Label) bool {
	code, _ := pdf.Printed("check " + l.Code)
	on := p.Backdrop.OnPage(s)
	told := label(on, s, l)
	if p.Backdrop.Uncut {
		told, _ = beside(p.Backdrop, on, l)
	}
	return slices.ContainsFunc(told, func(p piece) bool { return p.text == code })
}

// drawLabel writes the label into the strip above the cell, or below it when that is the side that is cut.
func drawLabel(d *pdf.Document, on layout.SheetPage, s layout.Sheet, l Label) {
	cell := on.Cell
	middle := cell.YMM - layout.BleedMM - stripClearMM(on)/2
	if !on.CutTop {
		middle = cell.BottomMM() + layout.BleedMM + stripClearMM(on)/2
	}
	x := cell.XMM + labelInsetMM
	for _, p := range label(on, s, l) {
		if p.text == "" {
			drawArrow(d, layout.Point{XMM: x + arrowWideMM/2, YMM: middle})
		} else {
			d.Put(p.style, x, middle+p.style.CapMM()/2, p.text)
		}
		x += p.widthMM() + p.gapMM
	}
}

// drawArrow draws an arrowhead that points up, about its middle.
func drawArrow(d *pdf.Document, at layout.Point) {
	d.Polygon(pdf.Grey(0), pdf.Pen{},
		layout.Point{XMM: at.XMM - arrowWideMM/2, YMM: at.YMM + arrowHighMM/2},
		layout.Point{XMM: at.XMM + arrowWideMM/2, YMM: at.YMM + arrowHighMM/2},
		layout.Point{XMM: at.XMM, YMM: at.YMM - arrowHighMM/2})
}
