package guide

import (
	"slices"

	"dropsheet/layout/report"
	"dropsheet/tile/sheet"
)

// uncut tells whether the print hangs on one sheet as it comes out of the printer: the guide then leaves out all that
// is about cutting and pasting, and takes two pages, of a rod one more for its rays.
func (j Job) uncut() bool { return j.Plan.Backdrop.Uncut }

// oneSheetPages is how many pages the guide of one sheet should take: one leaf, printed on both sides, and where there
// are rays a page for those.
func (j Job) oneSheetPages() int {
	if HasRays(j.Plan) {
		return 3
	}
	return 2
}

// oneSheet lists the guide of such a print.
func (j Job) oneSheet() []section {
	list := []section{
		{"Printing", false, (*book).printOne},
		{"Setting up", false, (*book).hangOne},
		{cautionsTitle, false, (*book).cautionsInShort},
	}
	if HasRays(j.Plan) {
		list = append(list, section{raysTitle, true, (*book).rays})
	}
	return list
}

// printOne says how to print the sheet, how to check it, and how it comes again.
func (b *book) printOne() {
	s := b.job.Plan.Sheets[0]
	facts := b.report.TrueSize(report.Marks{Sheet: s, Across: true, Down: true})
	if made := b.job.Plan.Backdrop.Printer; made != nil {
		b.para("The page is made for the printer measured as " + strong(b.clean(made.Name)) + ". " + b.told("build.scale") +
			" For another one, print it again: dropsheet reprint, with " + strong("--printer") + ".")
	}
	next := b.steps(1, "Take "+b.phrase("buy.printer")+". Matt paper is best: glossy paper mirrors the lamps.",
		"Open "+strong("sheets.pdf")+", which has one page. Choose "+strong(b.clean(b.job.Plan.Backdrop.Paper.Name))+", "+
			string(b.job.Plan.Backdrop.Orientation)+", and "+strong("100"+noBreak+"%")+" or "+strong("actual size")+". "+
			b.scalingOff(),
		"Measure the print from edge to edge, with a steel rule. "+toldOf(facts, "true.cell", "true.stop")+
			" Then look for a setting that scales, or measure the printer with dropsheet gauge.")
	if white := b.told("print.lies", "print.white"); white != "" {
		next = b.steps(next, white)
	}
	again := "Splashed or torn? It comes again as it was: dropsheet reprint <folder> " + s.Name + "."
	if sheet.ShowsCode(b.job.Plan, s, sheet.Label{Job: b.job.Name, Code: b.job.CheckCode, Of: 1}) {
		again += " The label beside the print must show " + strong(b.clean(b.job.CheckCode)) + " again."
	}
	b.steps(next, again)
}

// hangOne says where everything stands, how the sheet hangs, and where to focus.
func (b *book) hangOne() {
	body := b.job.body()
	b.figure(sideViewMM, b.sideView, "")
	b.topic("The sheet", func(b *book) {
		b.para("Hold it flat and upright on something stiff, with clips, tape or magnets at its edges. " +
			b.told("hangs.looks", "hangs.bent") + " That is right: " +
			b.phrase("hangs.why") + ".")
	})
	b.topic("Measure", func(b *book) {
		b.para(b.told("build.stands") + " The camera distance counts from where the aperture seems to sit when you look " +
			"into the lens from the front. " + title(b.phrase("build.middle")) + ". All four corners of the print are " +
			"equally far from the " + body + ".")
	})
	b.topic("Focus", func(b *book) { b.para(b.told("focus.where", "sharp.verdict")) })
	b.topic("Light", func(b *book) {
		b.para("Light the sheet evenly, from outside the camera\u2019s view. Work in a " + strong("dark room") +
			", or hang " + strong("black cloth") + " around the sheet and behind the camera.")
	})
}

// cautionsInShort lists the dangers close together; page 1 says what comes before them.
func (b *book) cautionsInShort() {
	there := report.Hazards(b.job.Plan)
	for _, c := range cautionsList {
		if slices.Contains(there, c.of) {
			b.bullet(strong(c.about+".") + " " + c.text)
		}
	}
}
