package gauge

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// typeSizes are the styles of the middle.
type typeSizes struct{ title, body, small, command pdf.Style }

var (
	roomyType   = typeSizes{pdf.Sans(20).Bold(), pdf.Sans(10), pdf.Sans(7.5), pdf.Mono(10)}
	compactType = typeSizes{pdf.Sans(15).Bold(), pdf.Sans(8.5), pdf.Sans(6.5), pdf.Mono(8.5)}
	smallType   = typeSizes{pdf.Sans(11).Bold(), pdf.Sans(7), pdf.Sans(6), pdf.Mono(6.5)}
)

// Steps are what to do with the page, in five lines.
func Steps(paper layout.Paper) []string {
	rules := Rules(paper)
	return []string{
		"Print at 100 % (actual size), upright, fed as your sheets will be: same paper, tray, settings.",
		fmt.Sprintf("Measure with a steel rule, first tick to last: ACROSS (%g mm if true), FEED (%g mm if true).",
			rules.WidthMM, rules.HeightMM),
		"Text upright, find on each side the outermost line printed whole: its number is the margin.",
		"End tick lost, or steel rule too short? Use nearer ticks, and add --between with their distances.",
		"Save your own figures with the command below; margins go left, top, right, bottom.",
	}
}

// SaveCommand is the command that stores a reading, with figures of a printer that is a few parts in a thousand off.
func SaveCommand(paper layout.Paper) string {
	rules := Rules(paper)
	const across, feed = 0.996, 0.994
	return fmt.Sprintf(`dropsheet gauge --paper %s --save "study inkjet" --read %.1fx%.1fmm --margins 4,4,4,12mm`,
		paper.Name, across*rules.WidthMM, feed*rules.HeightMM)
}

// PastedCommand is the command that adds what pasting makes of the paper, with figures of one that grows by 0.1 %
// across and 0.3 % along the feed.
func PastedCommand(paper layout.Paper) string {
	rules := Rules(paper)
	const across, feed = 0.996 * 1.001, 0.994 * 1.003
	return fmt.Sprintf(`dropsheet gauge --save "study inkjet" --pasted %.1fx%.1fmm`, across*rules.WidthMM,
		feed*rules.HeightMM)
}

// title says what the page is.
func (p *page) title() {
	s, small := p.types.title, p.types.body
	p.y += s.CapMM()
	p.put(s, p.middle.XMM, p.y, "Printer gauge")
	text := p.paper.Name + ", " + size(p.paper.WidthMM, p.paper.HeightMM)
	if at := p.middle.RightMM() - small.Width(text); at > p.middle.XMM+s.Width("Printer gauge")+4 {
		p.put(small, at, p.y, text)
	}
	p.y += 2.4
	p.level(p.middle.XMM, p.middle.RightMM(), p.y, 0.5)
}

// steps sets the five lines, numbered.
func (p *page) steps() {
	s := p.types.body
	bold := s.Bold()
	indent := bold.Width("5") + 0.6*s.LeadMM
	p.y -= p.gapMM / 3
	for i, step := range Steps(p.paper) {
		p.put(bold, p.middle.XMM, p.y+s.LeadMM, fmt.Sprint(i+1))
		for _, line := range s.Wrap(p.middle.WidthMM-indent, step) {
			p.y += s.LeadMM
			p.put(s, p.middle.XMM+indent, p.y, line.Text())
		}
		p.y += 0.3 * s.LeadMM
	}
}

// form leaves places to write the reading down.
func (p *page) form() {
	s := p.types.body
	entries := []string{"across", "feed", "left", "top", "right", "bottom"}
	columns := 6
	if p.compact {
		columns = 2
	}
	column := (p.middle.WidthMM + 3) / float64(columns)
	for i, entry := range entries {
		if i%columns == 0 {
			p.y += s.SizeMM() * 1.9
		}
		x := p.middle.XMM + float64(i%columns)*column
		p.put(s, x, p.y, entry)
		p.level(x+s.Width(entry)+1, x+column-3, p.y+0.4, boxLineMM)
	}
}

// command sets the command that saves the reading, in a box.
func (p *page) command() {
	s := p.types.command
	const padMM = 2.0
	top := p.y
	p.y += padMM - 0.2*s.LeadMM
	for _, line := range s.Wrap(p.middle.WidthMM-2*padMM, SaveCommand(p.paper)) {
		p.y += s.LeadMM
		p.put(s, p.middle.XMM+padMM, p.y, line.Text())
	}
	p.y += padMM
	p.box(layout.Rect{XMM: p.middle.XMM, YMM: top, WidthMM: p.middle.WidthMM, HeightMM: p.y - top})
}
