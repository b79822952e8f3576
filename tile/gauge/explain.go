package gauge

import (
	"fmt"

	"dropsheet/layout"
)

// typeSizes are the styles of the middle.
type typeSizes struct{ title, body, small, command style }

var (
	roomyType = typeSizes{style{"Helvetica", "B", 20}, style{"Helvetica", "", 10}, style{"Helvetica", "", 7.5},
		style{"Courier", "", 10}}
	compactType = typeSizes{style{"Helvetica", "B", 15}, style{"Helvetica", "", 8.5}, style{"Helvetica", "", 6.5},
		style{"Courier", "", 8.5}}
	smallType = typeSizes{style{"Helvetica", "B", 11}, style{"Helvetica", "", 7}, style{"Helvetica", "", 6},
		style{"Courier", "", 6.5}}
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

// title says what the page is.
func (p *page) title() {
	s, small := p.types.title, p.types.body
	p.y += s.capMM()
	p.put(s, p.middle.XMM, p.y, "Printer gauge")
	text := p.paper.Name + ", " + size(p.paper.WidthMM, p.paper.HeightMM)
	if at := p.middle.RightMM() - p.width(small, text); at > p.middle.XMM+p.width(s, "Printer gauge")+4 {
		p.put(small, at, p.y, text)
	}
	p.y += 2.4
	p.level(p.middle.XMM, p.middle.RightMM(), p.y, 0.5)
}

// steps sets the five lines, numbered.
func (p *page) steps() {
	s := p.types.body
	bold := style{s.font, "B", s.pt}
	indent := p.width(bold, "5") + 0.6*s.leadMM()
	p.y -= p.gapMM / 3
	for i, step := range Steps(p.paper) {
		p.put(bold, p.middle.XMM, p.y+s.leadMM(), fmt.Sprint(i+1))
		for _, line := range p.wrap(s, step, p.middle.WidthMM-indent) {
			p.y += s.leadMM()
			p.put(s, p.middle.XMM+indent, p.y, line)
		}
		p.y += 0.3 * s.leadMM()
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
			p.y += s.sizeMM() * 1.9
		}
		x := p.middle.XMM + float64(i%columns)*column
		p.put(s, x, p.y, entry)
		p.level(x+p.width(s, entry)+1, x+column-3, p.y+0.4, boxLineMM)
	}
}

// command sets the command that saves the reading, in a box.
func (p *page) command() {
	s := p.types.command
	const padMM = 2.0
	top := p.y
	p.y += padMM - 0.2*s.leadMM()
	for _, line := range p.wrap(s, SaveCommand(p.paper), p.middle.WidthMM-2*padMM) {
		p.y += s.leadMM()
		p.put(s, p.middle.XMM+padMM, p.y, line)
	}
	p.y += padMM
	p.box(layout.Rect{XMM: p.middle.XMM, YMM: top, WidthMM: p.middle.WidthMM, HeightMM: p.y - top})
}
