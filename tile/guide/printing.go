package guide

import (
	"fmt"

	"dropsheet/layout"
)

// How far the check rule may be off (common practice, no source).
const (
	ruleMM    = 100.0
	ruleOffMM = 0.5
)

// printing says how to print at true size and how to check it.
func (b *book) printing() {
	p := b.job.Plan
	n := len(p.Sheets)
	b.intro("The sheets fit only if they come out at their true size.")

	b.side("Print")
	b.step(1, fmt.Sprintf("Open %s. It has %s, one sheet of the backdrop on each, in the order of pasting.", strong("sheets.pdf"), count(n, "page", "pages")))
	b.step(2, fmt.Sprintf("In the print dialogue choose %s paper, %s, and the kind of paper that you put in.", strong(b.clean(p.Backdrop.Paper.Name)), p.Backdrop.Orientation))
	b.step(3, "Choose "+strong("100"+noBreak+"%")+" or "+strong("actual size")+". Switch off "+strong("fit to page")+", "+strong("shrink")+", "+strong("scale to fit")+" and "+strong("borderless")+": each of them changes the size.")
	b.step(4, "Switch off everything that \u201cimproves\u201d colours, so that all sheets come out alike. Choose the best quality.")
	b.step(5, "Print "+strong("page 1 alone")+" and check it as below. Only then print the rest, all in one go.")
	b.step(6, "Let the ink dry as long as the paper\u2019s maker says before you cut.")

	b.side("Check the size")
	b.para("Every sheet carries a check rule in the strip beside the picture: a line with a tick each 10" + noBreak + "mm, " + strong("100"+noBreak+"mm") +
		" long. On a small sheet it is shorter; its length stands beside it. Lay a steel rule along it.")
	b.figure(16, b.checkRule)
	b.caption("A check rule, as it looks on the sheets. This one is true too if the guide was printed at 100" + noBreak + "%.")

	adds := "over the whole print"
	longer, inRow := p.Backdrop.WidthMM, p.Backdrop.Columns
	if p.Backdrop.HeightMM > longer {
		longer, inRow = p.Backdrop.HeightMM, p.Backdrop.Rows
	}
	if inRow > 1 {
		adds = "over " + count(inRow, "sheet", "sheets") + " in a row"
	}
	const share = ruleOffMM / ruleMM
	b.note(strong(fmt.Sprintf("If the 100%smm are off by more than %g%smm, stop.", noBreak, ruleOffMM, noBreak)) + " Do not go on and do not cut. " +
		fmt.Sprintf("%g%smm on 100%smm looks small, but %s it adds up to %s.", ruleOffMM, noBreak, noBreak, adds, strong(length(longer*share))))
	b.para("Look for the setting that scales: in the print dialogue, in the printer\u2019s own settings behind it, and in the program that shows the PDF. Try another program. Print page 1 again, and measure again. If it stays off, use another printer: sheets of a wrong size cannot be made to fit.")
	printed := p.Backdrop.Printed(p.Sheets[0])
	b.para(fmt.Sprintf("Measure the printed picture too. On page 1 it is %s wide and %s high; the width may be off by %s, the height by %s.",
		strong(length(printed.WidthMM)), strong(length(printed.HeightMM)), length(printed.WidthMM*share), length(printed.HeightMM*share)))
}

// checkRule draws a check rule in its true length, or as many whole centimetres of it as the page holds.
func (b *book) checkRule(box layout.Rect) {
	const tickMM, endMM, stepMM = 2.0, 4.0, 10.0
	perPaper := 1 / b.geo.scale // guide mm for one on paper
	steps := min(int(ruleMM/stepMM), int((box.RightMM()-b.geo.textX)/(stepMM*perPaper)))
	x, y := b.geo.textX, box.YMM+6
	b.line(x, y, x+float64(steps)*stepMM*perPaper, y, plain)
	for i := range steps + 1 {
		at, tick := x+float64(i)*stepMM*perPaper, tickMM
		if i == 0 || i == steps || i == steps/2 {
			tick = endMM
		}
		b.line(at, y, at, y-tick, plain)
	}
	b.put(labelStyle, x, y+5, "0")
	b.putRight(labelStyle, x+float64(steps)*stepMM*perPaper, y+5, fmt.Sprintf("%d%smm", steps*int(stepMM), noBreak))
}
