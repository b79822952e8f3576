package sheet

import (
	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// What a label beside a print that is not cut takes, in mm.
const (
	leastBesideMM = 3.2 // of white that the printer reaches; less has no label
	besideOffMM   = 4.0 // from the print to the label's middle line
	besideEdgeMM  = 1.3 // from there to where the printer ends, at least
)

// slot is where the label of an uncut print runs: to the right from its start, or upward.
type slot struct {
	start  layout.Point // on the label's middle line, page mm
	upward bool
	roomMM float64
}

// slotOf is the white above the print, below it or at either side, the first that has room. ok is false where none has.
func slotOf(b layout.Backdrop, on layout.SheetPage) (at slot, ok bool) {
	c, reached := on.Cell, b.Reached()
	wideMM, highMM := c.WidthMM-2*labelInsetMM, c.HeightMM-2*labelInsetMM
	x, y := c.XMM+labelInsetMM, c.BottomMM()-labelInsetMM
	off := func(roomMM float64) float64 { return min(besideOffMM, roomMM-besideEdgeMM) }
	above, below := c.YMM-reached.YMM, reached.BottomMM()-c.BottomMM()
	left, right := c.XMM-reached.XMM, reached.RightMM()-c.RightMM()
	switch {
	case above >= leastBesideMM:
		return slot{layout.Point{XMM: x, YMM: c.YMM - off(above)}, false, wideMM}, true
	case below >= leastBesideMM:
		return slot{layout.Point{XMM: x, YMM: c.BottomMM() + off(below)}, false, wideMM}, true
	case left >= leastBesideMM:
		return slot{layout.Point{XMM: c.XMM - off(left), YMM: y}, true, highMM}, true
	case right >= leastBesideMM:
		return slot{layout.Point{XMM: c.RightMM() + off(right), YMM: y}, true, highMM}, true
	}
	return slot{}, false
}

// beside is what stands beside an uncut print, as far as there is room: which edge is up, the check code, the job's
// name.
func beside(b layout.Backdrop, on layout.SheetPage, l Label) ([]piece, slot) {
	at, ok := slotOf(b, on)
	if !ok {
		return nil, slot{}
	}
	all := []piece{{gapMM: arrowGapMM}, {labelText, "up", labelGapMM}}
	for _, text := range []string{"check " + l.Code, l.Job} {
		if text, _ = pdf.Printed(text); text != "" {
			all = append(all, piece{labelText, text, labelGapMM})
		}
	}
	return fitting(all, at.roomMM), at
}

// drawBeside writes the label beside an uncut print.
func drawBeside(d *pdf.Document, b layout.Backdrop, on layout.SheetPage, l Label) {
	told, at := beside(b, on, l)
	along := 0.0
	for _, p := range told {
		switch {
		case at.upward && p.text == "":
			drawArrow(d, layout.Point{XMM: at.start.XMM, YMM: at.start.YMM - along - arrowWideMM/2})
		case at.upward:
			d.PutUpward(p.style, at.start.XMM+p.style.CapMM()/2, at.start.YMM-along, p.text)
		case p.text == "":
			drawArrow(d, layout.Point{XMM: at.start.XMM + along + arrowWideMM/2, YMM: at.start.YMM})
		default:
			d.Put(p.style, at.start.XMM+along, at.start.YMM+p.style.CapMM()/2, p.text)
		}
		along += p.widthMM() + p.gapMM
	}
}
