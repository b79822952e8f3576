package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/sheet"
)

// How far a check rule may be off, as a share of it: what can be read with a lens, and no more than the seams bear.
const offShare = 0.002

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
			b.para(fmt.Sprintf("The pages are made for the printer measured as %s. It prints %s across and %s along the "+
				"feed, and they make up for that: on the screen they are off by as much the other way, and what comes out is "+
				"true. For any other printer, print the sheets again for it: dropsheet reprint, with %s.",
				strong(b.clean(made.Name)), percentOff(made.AcrossScale), percentOff(made.FeedScale), strong("--printer")))
		}
		b.step(1, "Open "+strong("sheets.pdf")+pages)
		b.step(2, fmt.Sprintf("In the print dialogue choose %s, %s, and the kind of paper put in.",
			strong(b.clean(p.Backdrop.Paper.Name)), p.Backdrop.Orientation))
		b.step(3, "Choose "+strong("100"+noBreak+"%")+" or "+strong("actual size")+". Switch off "+strong("fit to page")+
			", "+strong("shrink")+", "+strong("scale to fit")+" and "+strong("borderless")+": each of them changes the size.")
		if b.job.single() {
			b.step(4, "Choose the best quality, print, and let the ink dry as long as the paper\u2019s maker says. Check "+
				"the size before you cut.")
			return
		}
		b.step(4, "Switch off everything that \u201cimproves\u201d colours, so that all sheets come out alike. Choose "+
			"the best quality.")
		b.step(5, "Print "+strong("page 1 alone")+" and check it as below. Only then print the rest, all in one go, and "+
			"let the ink dry as long as the paper\u2019s maker says.")
	})
	b.keep((*book).checkSize, tallTopic)
}

// checkSize says how to measure page 1, and how far off it may be.
func (b *book) checkSize() {
	p := b.job.Plan
	first := p.Sheets[0]
	ruleMM := sheet.CheckRuleMM(p, first)
	const heading = "Check the size"
	stop := ""
	if ruleMM > 0 {
		on := "On page 1 it is "
		if b.job.single() {
			on = "It is "
		}
		b.together(func(b *book) {
			b.side(heading)
			b.para("In the strip beside the picture stands a check rule with a tick each 10" + noBreak + "mm. " + on +
				strong(length(ruleMM)) + " long. Lay a steel rule along it, and read it with a lens.")
			b.checkRuleFigure(ruleMM)
		})
		stop = fmt.Sprintf("If the %s are off by more than %s, stop.", length(ruleMM), length(offShare*ruleMM))
	} else {
		b.side(heading)
		b.para("The paper is too small for a check rule: measure the picture itself.")
		stop = fmt.Sprintf("If the width is off by more than %s, or the height by more than %s, stop.",
			off(first.Cell.WidthMM), off(first.Cell.HeightMM))
	}
	whole := "The whole cell tells still more. From cut mark to cut mark, or to where a landing line begins (just " +
		"past the cell), page 1 must measure "
	if b.job.single() {
		whole = "The whole picture tells still more. From cut mark to cut mark it must measure "
	}
	switch across, down := b.job.marked(first); {
	case across && down:
		b.para(whole + strong(size(first.Cell.WidthMM, first.Cell.HeightMM)) +
			fmt.Sprintf(", within %s across and %s down.", off(first.Cell.WidthMM), off(first.Cell.HeightMM)))
	case across:
		b.para(whole + strong(length(first.Cell.WidthMM)) + fmt.Sprintf(" across, within %s.", off(first.Cell.WidthMM)))
	case down:
		b.para(whole + strong(length(first.Cell.HeightMM)) + fmt.Sprintf(" from top to bottom, within %s.",
			off(first.Cell.HeightMM)))
	}
	b.note(strong(stop) + " Do not go on and do not cut. " + b.why())
	last := "If it stays off, use another program or another printer, or measure this one with dropsheet gauge."
	if p.Backdrop.Printer != nil {
		last = "If it stays off, the printer is no longer as it was measured: measure it again with dropsheet gauge."
	}
	b.para("Look for the setting that scales: in the print dialogue, in the printer\u2019s own settings behind it, in " +
		"the program that shows the PDF. Print again, and measure again. " + last)
}

// percentOff says how far a scale is off.
func percentOff(scale float64) string {
	off := math.Round(1e4*(scale-1)) / 100
	switch text := short(math.Abs(off), 2) + noBreak + "%"; {
	case off < 0:
		return text + " short"
	case off > 0:
		return text + " long"
	}
	return "true"
}

// marked tells whether both ends of a sheet's cell are marked, across and down: by cut marks or a landing line.
func (j Job) marked(s layout.Sheet) (across, down bool) {
	left, top, right, bottom := sheet.Bare(j.Plan, s)
	return !left && !right, !top && !bottom
}

// off is how far a length may be off.
func off(mm float64) string { return length(math.Max(0.1, math.Floor(offShare*mm*10+0.5)/10)) }

// why says what a scale that is off by offShare does to this job.
func (b *book) why() string {
	p := b.job.Plan.Backdrop
	cell := b.job.Plan.Sheets[0].Cell
	off := length(100*offShare) + " on 100" + noBreak + "mm"
	if b.job.single() {
		return fmt.Sprintf("At %s the print is wrong by %s.", off, strong(length(offShare*max(p.WidthMM, p.HeightMM))))
	}
	columns, rows, wideMM, highMM := b.job.span()
	longMM, inRow, cellMM := wideMM, columns, cell.WidthMM
	if rows > 1 && (highMM > wideMM || columns == 1) {
		longMM, inRow, cellMM = highMM, rows, cell.HeightMM
	}
	bares := ""
	if offShare*cellMM > sheet.LandingFromMM {
		bares = ", enough to bare it"
	}
	return fmt.Sprintf("The landing line, which the next sheet must cover, begins only %s past the seam. At %s a cell "+
		"of %s is wrong by %s%s; over %s in a row it adds up to %s.",
		length(sheet.LandingFromMM), off, length(cellMM), strong(length(offShare*cellMM)), bares,
		count(inRow, "sheet", "sheets"), strong(length(offShare*longMM)))
}

// span is the part of the board, as columns and rows, that holds all sheets.
func (j Job) span() (columns, rows int, widthMM, heightMM float64) {
	s := j.Plan.Sheets[0]
	left, right, top, bottom := s.Column, s.Column, s.Row, s.Row
	for _, s := range j.Plan.Sheets {
		left, right, top, bottom = min(left, s.Column), max(right, s.Column), min(top, s.Row), max(bottom, s.Row)
	}
	xs, ys := j.Plan.Backdrop.XEdgesMM, j.Plan.Backdrop.YEdgesMM
	return right - left + 1, bottom - top + 1, xs[right] - xs[left-1], ys[bottom] - ys[top-1]
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
