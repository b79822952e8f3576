package guide

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Gaps between blocks, in guide mm.
const (
	paraGapMM    = 2.4
	sideGapMM    = 4.2
	figureGapMM  = 4.0
	captionGapMM = 2.0 // from a figure to its words
	indentMM     = 8.0
)

// intro sets the sentence that opens a section.
func (b *book) intro(text string) {
	b.flow(leadStyle, b.geo.textX, b.geo.textWidth, text)
	b.y += b.gap(3.4)
}

// side starts a topic: its heading stands beside the text that follows, or above it on narrow paper.
func (b *book) side(heading string) {
	g := b.geo
	b.y = max(b.y, b.floor)
	if b.y > g.top {
		b.y += b.gap(sideGapMM)
	}
	b.need(18)
	if g.beside {
		b.floor = b.block(sideStyle, g.left, b.y, sideMM, heading)
		return
	}
	b.y = b.block(sideStyle, g.left, b.y, g.textWidth, heading) + 0.8
	b.floor = b.y
}

// para sets a paragraph in the text column.
func (b *book) para(text string) {
	b.flow(bodyStyle, b.geo.textX, b.geo.textWidth, text)
	b.y += b.gap(paraGapMM)
}

// flow sets text line by line, over page breaks; it leaves no single line behind.
func (b *book) flow(s pdf.Style, x, widthMM float64, text string) {
	lines := b.wrap(s, widthMM, text)
	for i, l := range lines {
		if left := len(lines) - i; i == 0 || left == 2 {
			b.need(float64(min(left, 2)) * s.LeadMM)
		} else {
			b.need(s.LeadMM)
		}
		b.PutLine(s, x, s.Base(b.y), l)
		b.y += s.LeadMM
	}
}

// item sets an indented paragraph, kept on one page, after drawing its mark at the first line's left.
func (b *book) item(text string, mark func(x, middle float64)) {
	x, w := b.geo.textX, b.geo.textWidth-indentMM
	b.need(b.blockMM(bodyStyle, w, text))
	mark(x, b.y+bodyStyle.LeadMM/2)
	b.y = b.block(bodyStyle, x+indentMM, b.y, w, text) + b.gap(1.9)
}

// step sets a numbered step.
func (b *book) step(number int, text string) {
	b.item(text, func(x, middle float64) { b.disc(x+2.5, middle, 2.5, fmt.Sprint(number)) })
}

// bullet sets one of a list.
func (b *book) bullet(text string) {
	b.item(text, func(x, middle float64) {
		b.Fill(layout.Rect{XMM: x + 1.6, YMM: middle - 0.7, WidthMM: 1.4, HeightMM: 1.4}, accent)
	})
}

// tick sets one of a list that is ticked off with a pencil.
func (b *book) tick(text string) {
	b.item(text, func(x, middle float64) {
		b.Frame(layout.Rect{XMM: x + 0.6, YMM: middle - 1.7, WidthMM: 3.4, HeightMM: 3.4}, plain)
	})
}

// note sets a paragraph that must not be missed, on a tint with a bar beside it.
func (b *book) note(text string) { b.noteIn(b.geo.textX, b.geo.textWidth, text) }

// wideNote sets a note from side to side.
func (b *book) wideNote(text string) { b.noteIn(b.geo.left, b.geo.fullMM(), text) }

func (b *book) noteIn(x, widthMM float64, text string) {
	const padMM = 3.0
	w := widthMM - 2*padMM - 1
	h := b.blockMM(bodyStyle, w, text) + 2*padMM - 1
	b.need(h)
	b.Fill(layout.Rect{XMM: x, YMM: b.y, WidthMM: widthMM, HeightMM: h}, tint)
	b.Fill(layout.Rect{XMM: x, YMM: b.y, WidthMM: 1, HeightMM: h}, accent)
	b.block(bodyStyle, x+1+padMM, b.y+padMM-0.5, w, text)
	b.y += h + b.gap(paraGapMM+0.6)
}

// command sets something to type.
func (b *book) command(text string) {
	s := commandStyle
	for s.Pt > 6 && s.Width(text) > b.geo.textWidth-6 {
		s = s.At(s.Pt - 0.5)
	}
	h := s.LeadMM + 3
	b.need(h)
	b.Fill(layout.Rect{XMM: b.geo.textX, YMM: b.y, WidthMM: b.geo.textWidth, HeightMM: h}, tint)
	b.PutFit(s, b.geo.textX+3, s.Base(b.y+1.5), b.geo.textWidth-6, text)
	b.y += h + b.gap(paraGapMM)
}

// figure keeps a place of that height, as wide as the page allows, and draws in it; its words, if any, stand
// below it on the same page.
func (b *book) figure(heightMM float64, draw func(layout.Rect), words string) {
	b.y = max(b.y, b.floor) + b.gap(figureGapMM)/2
	b.need(heightMM + b.captionMM(words))
	at := layout.Rect{XMM: b.geo.left, YMM: b.y, WidthMM: b.geo.fullMM(), HeightMM: heightMM}
	if !b.IsUndrawn() {
		draw(at)
	}
	b.y += heightMM
	if words != "" {
		b.y = b.block(captionStyle, b.geo.textX, b.y+captionGapMM, b.geo.textWidth, words)
	}
	b.y += b.gap(figureGapMM)
	b.floor = b.y
}

// captionMM is the height that a figure's words take below it.
func (b *book) captionMM(words string) float64 {
	if words == "" {
		return 0
	}
	return captionGapMM + b.blockMM(captionStyle, b.geo.textWidth, words)
}
