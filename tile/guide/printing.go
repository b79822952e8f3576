package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/sheet"
)

// printing says how to print at true size and how to check it.
func (b *book) printing() {
	p := b.job.Plan
	n := len(p.Sheets)
	intro, pages := "The sheets fit only if they come out at their true size.", ": "+count(n, "page", "pages")+
		", a sheet on each, in the order of pasting."
	if b.job.single() {
		intro, pages = "The picture is right only if it comes out at its true size.", ", which has one page."
	}
	b.intro(intro)

	b.topic("Print", func(b *book) {
		if made := p.Backdrop.Printer; made != nil {
			b.para("The pages are made for the printer measured as " + strong(b.clean(made.Name)) + ". " +
				b.told("build.scale") + " On the screen they are off by as much the other way, and what comes out is true. " +
				"For any other printer, print the sheets again for it: dropsheet reprint, with " + strong("--printer") + ".")
		}
		b.step(1, "Open "+strong("sheets.pdf")+pages)
		b.step(2, fmt.Sprintf("In the print dialogue choose %s, %s, and the kind of paper put in.",
			strong(b.clean(p.Backdrop.Paper.Name)), p.Backdrop.Orientation))
		b.step(3, "Choose "+strong("100"+noBreak+"%")+" or "+strong("actual size")+". "+b.scalingOff())
		if b.job.single() {
			b.step(4, "Choose the best quality, print, and let the ink dry as long as the paper\u2019s maker says. Check "+
				"the size before you cut.")
			return
		}
		b.step(4, "Switch off everything that \u201cimproves\u201d colours, so that all sheets come out alike. Choose "+
			"the best quality.")
		b.step(5, "Print "+strong(fmt.Sprintf("page %d alone", sheet.CheckSheet(p).Page))+" and check it as below. "+
			"Only then print the rest, all in one go, and let the ink dry as long as the paper\u2019s maker says.")
	})
	b.keep((*book).checkSize, tallTopic)
}

// scalingOff says what to switch off, since it changes the size.
func (b *book) scalingOff() string {
	off := "Switch off " + strong("fit to page") + ", " + strong("shrink")
	if !b.job.Plan.Backdrop.Borderless() {
		return off + ", " + strong("scale to fit") + " and " + strong("borderless") + ": each of them changes the size."
	}
	text := off + " and " + strong("scale to fit") + ": each of them changes the size. Switch " +
		strong("borderless") + " on. By itself it enlarges a page by some 2 to 3" + noBreak + "% (common " +
		"practice, no source): "
	if b.job.Plan.Backdrop.Printer != nil {
		return text + "leave its expansion as it was when the printer was measured."
	}
	if b.job.uncut() { // no marks tell of it
		return text + "set its expansion to none, or make the job for a measured printer."
	}
	return text + "set its expansion to none. If it stays on, all marks come out, for they keep clear of the " +
		"paper\u2019s edge, but the check rule is too long. Where it can\u2019t be set, print the page of dropsheet gauge " +
		"borderless too, and make the job with " + strong("--printer") + "."
}

// checkSize says how to measure the page that is printed first, and how far off it may be.
func (b *book) checkSize() {
	p := b.job.Plan
	s := sheet.CheckSheet(p)
	ruleMM := sheet.CheckRuleMM(p, s)
	across, down := sheet.MarkedEnds(p, s)
	facts := b.report.TrueSize(report.Marks{Sheet: s, RuleMM: ruleMM, Across: across, Down: down})
	const heading = "Check the size"
	if ruleMM > 0 {
		b.together(func(b *book) {
			b.side(heading)
			b.para("In the strip beside the picture stands a check rule with a tick each 10" + noBreak + "mm. " +
				toldOf(facts, "true.rule", "true.pasted") + " Lay a steel rule along it, and read it with a lens.")
			b.checkRuleFigure(ruleMM)
		})
	} else {
		b.side(heading)
		b.para("The paper is too small for a check rule: measure the picture itself.")
	}
	if cell := toldOf(facts, "true.cell"); cell != "" {
		whole := "The whole cell tells still more. In the strips, measure from the cut mark with the arrowhead to the mark " +
			"at the cell\u2019s other end. "
		if b.job.single() {
			whole = "The whole picture tells still more. Measure from cut mark to cut mark. "
		}
		b.para(whole + cell)
	}
	b.note(strong(toldOf(facts, "true.stop")) + " Do not go on and do not cut. " + toldOf(facts, "true.wrong",
		"true.adds"))
	last := "If it stays off, use another program or another printer, or measure this one with dropsheet gauge."
	if p.Backdrop.Printer != nil {
		last = "If it stays off, the printer is no longer as it was measured: measure it again with dropsheet gauge."
	}
	b.para("Look for the setting that scales: in the print dialogue, in the printer\u2019s own settings behind it, in " +
		"the program that shows the PDF. Print again, and measure again. " + last)
}

// checkRuleFigure draws a check rule like those on the sheets, in its true length or, on a page too narrow
// for that, at half of it.
func (b *book) checkRuleFigure(ruleMM float64) {
	perPaper := 1 / b.geo.scale // guide mm for one on paper
	words := "A check rule as on the sheets; true here too, if the guide was printed at 100" + noBreak + "%."
	if b.job.Plan.Backdrop.Printer != nil {
		words = "A check rule as on the sheets. Only the sheets make up for the printer: measure theirs, not this one."
	}
	if ruleMM*perPaper > b.geo.fullMM() {
		perPaper /= 2
		words = "A check rule, half as large as on the sheets."
	}
	b.figure(12, func(box layout.Rect) {
		x := box.XMM
		if ruleMM*perPaper <= b.geo.textWidth {
			x = b.geo.textX
		}
		b.checkRule(x, box.YMM+5, ruleMM, perPaper)
	}, words)
}

// checkRule draws a check rule from a point on, at so many guide mm for one of its own.
func (b *book) checkRule(x, y, ruleMM, perMM float64) {
	const tickMM, endMM, stepMM = 2.0, 4.0, 10.0
	b.Line(x, y, x+ruleMM*perMM, y, plain)
	steps := int(math.Round(ruleMM / stepMM))
	for i := range steps + 1 {
		at, tick := x+float64(i)*stepMM*perMM, tickMM
		if i == 0 || i == steps || 2*i == steps {
			tick = endMM
		}
		b.Line(at, y, at, y-tick, plain)
	}
	b.Put(labelStyle, x, y+5, "0")
	b.PutRight(labelStyle, x+ruleMM*perMM, y+5, length(ruleMM))
}
