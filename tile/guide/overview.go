package guide

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/pdf"
)

// overview is the first page: what this is, the picture in the drop, the key figures, the contents.
func (b *book) overview() {
	g, p := b.geo, b.job.Plan
	b.Put(sideStyle, g.left, b.y+3, "ASSEMBLY GUIDE")
	b.y += 6
	b.coverTitle()
	b.y += b.gap(2)
	b.Fill(layout.Rect{XMM: g.left, YMM: b.y, WidthMM: g.fullMM(), HeightMM: 0.7}, accent)
	b.y += b.gap(6)

	viewShare := 0.26 // of the page's height, at most
	if b.job.uncut() {
		viewShare = 0.2
	}
	side := min(0.42*g.fullMM(), viewShare*(g.bottom-g.top), 90)
	view := layout.Rect{XMM: g.left, YMM: b.y, WidthMM: side, HeightMM: side}
	b.placeImage(view, b.job.DropView, photoPPI)
	b.Frame(view, pen(grey, 0.2))
	x := view.RightMM() + 7
	w := min(g.right-x, measureMM)
	below := b.block(captionStyle, g.left, view.BottomMM()+1.5, side, "What the "+b.job.looker()+
		" will see, everything in focus. "+
		"Through the lens: closeup.png, and proof.png for the whole frame.")
	body := bodyStyle
	y := b.y - 1
	sheets := "Its sheets, cut and pasted on a board, make"
	switch {
	case b.job.uncut():
		sheets = "Its one sheet, as it comes out of the printer, makes"
	case b.job.single():
		sheets = "Its one sheet, cut and pasted on a board, makes"
	}
	inside := "the picture appears inside, the right way round."
	if b.job.rod() && p.Picture.Look != layout.Straight {
		inside = "the picture appears inside, the right way round and squeezed " + strong("across the rod only") + "."
	}
	belong := "Guide and sheets belong together when both carry the check code " + strong(b.clean(b.job.CheckCode)) + "."
	if all, _ := b.coded(); !all {
		belong = "This guide has the check code " + strong(b.clean(b.job.CheckCode)) + ", for which the sheets\u2019 " +
			"labels have no room: keep guide and sheets together."
	}
	for _, text := range []string{
		"This guide goes with " + strong("sheets.pdf") + ". " + sheets + " a backdrop of " +
			strong(b.size(p.Backdrop.WidthMM, p.Backdrop.HeightMM)) + ".",
		"Stand the backdrop " + strong(b.length(p.Drop.DistanceMM)) + " behind a " + b.job.body() +
			" and look at it through the " + b.job.body() + ": " + inside + " " + b.told("hangs.looks", "hangs.bent"),
		"Work through the guide from front to back.",
		belong,
	} {
		y = b.block(body, x, y, w, text) + b.gap(paraGapMM)
	}
	b.y = max(below, y) + b.gap(3)
	b.beforeYouStart()
	b.floor = b.y
	b.facts()
	if !b.job.uncut() {
		b.contents()
	}
}

// coverTitle sets the job's name, in up to three lines, smaller where it is long.
func (b *book) coverTitle() {
	const mostLines, leastPt = 3, 17
	g := b.geo
	name, full := pdf.Printed(b.job.Name)
	s := coverStyle
	for s.Pt > leastPt && len(s.Wrap(g.fullMM(), name)) > 1 {
		s = s.At(s.Pt - 1)
	}
	lines := s.Wrap(g.fullMM(), name)
	for i, l := range lines[:min(len(lines), mostLines)] {
		if i == mostLines-1 {
			for _, more := range lines[mostLines:] { // the line ends in an ellipsis then
				l = append(l, more...)
			}
		}
		b.PutFit(s, g.left, s.Base(b.y), g.fullMM(), l.Text())
		b.y += s.LeadMM
	}
	if !full {
		b.y = b.block(captionStyle, g.left, b.y+0.5, g.fullMM(), "The fonts of sheets and guide lack some letters of the "+
			"name: each shows as a question mark.")
	}
}

// keyFact is a row of the key figures: its name, and what the report tells under some keys.
type keyFact struct {
	name string
	keys []string
}

// facts lists the key figures, each name beside its words.
func (b *book) facts() {
	b.fact("Print", b.phrase("print.size")+", "+set(report.PerInch(b.job.PPI))+". "+b.told("coverage.surround"))
	rows := []keyFact{
		{"Sheets", []string{"print.sheets", "print.copies", "print.bare", "print.solid"}},
		{"Look", []string{"look.bend", "look.holds"}},
		{"Turn", []string{"look.turn"}},
		{"On the axis", []string{"look.off", "look.aside"}},
		{"Round", []string{"look.round"}},
		{"Distance", []string{"place.distance"}},
		{title(b.job.looker()) + " distance", []string{"place.camera"}},
		{title(b.job.body()), []string{"drop.what", "drop.wall"}},
		{"Along the rod", []string{"look.along", "look.shows", "look.ribbon"}},
		{"Fill", []string{"place.fill"}},
		{"Reach", []string{"place.reach", "place.near"}},
		{"Rim", []string{"place.rim", "place.rim_shows", "place.rim_mirrors", "place.rim_dark"}},
		{"If it differs", []string{"place.drops", "place.boards"}},
	}
	if b.job.uncut() {
		rows = []keyFact{
			{"Sheet", []string{"print.sheets"}}, {title(b.job.body()), []string{"drop.what"}},
			{"Fill", []string{"place.fill"}}, {"If it differs", []string{"place.drops", "place.boards"}},
		}
	}
	for _, row := range rows {
		if text := b.told(row.keys...); text != "" {
			b.fact(row.name, text)
		}
	}
	if !b.job.uncut() {
		b.fact(b.lampFact())
	}
	b.y += b.gap(1)
	b.Line(b.geo.left, b.y, b.geo.right, b.y, thin)
	b.floor = b.y
}

// fact sets one row of the key figures under a hairline.
func (b *book) fact(name, text string) {
	g := b.geo
	x := g.textX
	if !g.beside {
		x = g.left + 30
	}
	w := g.right - x // lines as long as the page: few rows have more than two
	pad := b.gap(1)
	b.need(b.blockMM(bodyStyle, w, text) + 2*pad + 0.2)
	b.Line(g.left, b.y, x+w, b.y, thin)
	b.Put(sideStyle, g.left, sideStyle.Base(b.y+pad), name)
	b.y = b.block(bodyStyle, x, b.y+pad, w, text) + pad
}

// contents lists the sections with their pages.
func (b *book) contents() {
	const rowMM, gapMM = 5.0, 8.0
	g := b.geo
	columns := 1
	if g.beside {
		columns = 2
	}
	rows := (len(b.sections) + columns - 1) / columns
	b.need(float64(rows)*rowMM + b.gap(sideGapMM))
	b.side("In this guide")
	w := (min(g.textWidth, measureMM) - gapMM*float64(columns-1)) / float64(columns)
	for i, s := range b.sections {
		x := g.textX + float64(i/rows)*(w+gapMM)
		base := bodyStyle.Base(b.y + float64(i%rows)*rowMM)
		b.Put(bodyStyle.In(accent), x, base, fmt.Sprint(i+1))
		b.PutFit(bodyStyle, x+7, base, w-14, s.title)
		b.PutRight(bodyStyle, x+w, base, fmt.Sprint(b.pageOf(i)))
	}
	b.y += float64(rows) * rowMM
	b.floor = max(b.floor, b.y)
}

// pageOf is the page on which a section starts; 0 while pages are only counted.
func (b *book) pageOf(section int) int {
	if b.starts == nil {
		return 0
	}
	return b.starts[section]
}

// title starts a text with a capital.
func title(text string) string {
	if text == "" || text[0] < 'a' || text[0] > 'z' {
		return text
	}
	return string(text[0]-'a'+'A') + text[1:]
}
