package gauge

import (
	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Levels of grey, 0 black to 255 white.
const (
	black = 0
	white = 255
)

// boxLineMM is how wide the line of a box, or of a place to write on, is.
const boxLineMM = 0.1

// stroke is a straight line of a level of grey.
type stroke struct {
	pdf.Line
	widthMM float64
	level   int
}

// fill is a filled rectangle.
type fill struct {
	layout.Rect
	level int
}

// words are one line of ASCII text from x on, on a baseline; turned ones read upwards, from the baseline's
// start at (x, y).
type words struct {
	x, y   float64
	text   string
	turned bool
	style  pdf.Style
}

// page is what is on the page. Positions are collected first, then drawn: what is a fill lies under what is a
// stroke or a word.
type page struct {
	geometry
	y       float64 // where the middle goes on
	fills   []fill
	strokes []stroke
	words   []words
}

// level adds a line along x.
func (p *page) level(x1, x2, y, widthMM float64) {
	p.stroke(x1, y, x2, y, widthMM, black)
}

// upright adds a line along y.
func (p *page) upright(x, y1, y2, widthMM float64) {
	p.stroke(x, y1, x, y2, widthMM, black)
}

// stroke adds a line.
func (p *page) stroke(x1, y1, x2, y2, widthMM float64, level int) {
	line := pdf.Line{From: layout.Point{XMM: x1, YMM: y1}, To: layout.Point{XMM: x2, YMM: y2}}
	p.strokes = append(p.strokes, stroke{line, widthMM, level})
}

// box adds a hairline around a rectangle.
func (p *page) box(r layout.Rect) {
	p.level(r.XMM, r.RightMM(), r.YMM, boxLineMM)
	p.level(r.XMM, r.RightMM(), r.BottomMM(), boxLineMM)
	p.upright(r.XMM, r.YMM, r.BottomMM(), boxLineMM)
	p.upright(r.RightMM(), r.YMM, r.BottomMM(), boxLineMM)
}

// put adds words from x on.
func (p *page) put(s pdf.Style, x, y float64, text string) {
	p.words = append(p.words, words{x, y, text, false, s})
}

// putMiddle adds words with their middle at x.
func (p *page) putMiddle(s pdf.Style, x, y float64, text string) {
	p.put(s, x-s.Width(text)/2, y, text)
}

// putTurned adds words that read upwards with their middle at y, and a baseline at x.
func (p *page) putTurned(s pdf.Style, x, y float64, text string) {
	p.words = append(p.words, words{x, y + s.Width(text)/2, text, true, s})
}

// draw draws everything.
func (p *page) draw(d *pdf.Document) {
	for _, f := range p.fills {
		d.Fill(f.Rect, pdf.Grey(uint8(f.level)))
	}
	for _, s := range p.strokes {
		d.Lines([]pdf.Line{s.Line}, pdf.Pen{Shade: pdf.Grey(uint8(s.level)), WidthMM: s.widthMM})
	}
	for _, w := range p.words {
		if w.turned {
			d.PutUpward(w.style, w.x, w.y, w.text)
		} else {
			d.Put(w.style, w.x, w.y, w.text)
		}
	}
}
