package gauge

import (
	"strings"

	"github.com/jung-kurt/gofpdf"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Levels of grey, 0 black to 255 white.
const (
	black = 0
	white = 255
)

// boxLineMM is how wide the line of a box, or of a place to write on, is.
const boxLineMM = 0.1

// stroke is a straight line with butt ends.
type stroke struct {
	x1, y1, x2, y2 float64 // mm
	widthMM        float64
	level          int
}

// fill is a filled rectangle.
type fill struct {
	layout.Rect
	level int
}

// style is how words look: one of PDF's core fonts, in points.
type style struct {
	font, weight string
	pt           float64
}

// sizeMM is the type's size, capMM the height of its capitals and figures: 0.718 of Helvetica's size (Adobe
// Font Metrics, Core 14, CapHeight).
func (s style) sizeMM() float64 { return units.PointsToMM(s.pt) }
func (s style) capMM() float64  { return 0.718 * s.sizeMM() }

// leadMM is from line to line.
func (s style) leadMM() float64 { return 1.36 * s.sizeMM() }

// words are one line of ASCII text from x on, on a baseline; turned ones read upwards, from the baseline's
// start at (x, y).
type words struct {
	x, y   float64
	text   string
	turned bool
	style  style
}

// page is what is on the page. Positions are collected first, then drawn: what is a fill lies under what is a
// stroke or a word.
type page struct {
	geometry
	canvas  *gofpdf.Fpdf
	y       float64 // where the middle goes on
	fills   []fill
	strokes []stroke
	words   []words
}

// level adds a line along x.
func (p *page) level(x1, x2, y, widthMM float64) {
	p.strokes = append(p.strokes, stroke{x1, y, x2, y, widthMM, black})
}

// upright adds a line along y.
func (p *page) upright(x, y1, y2, widthMM float64) {
	p.strokes = append(p.strokes, stroke{x, y1, x, y2, widthMM, black})
}

// box adds a hairline around a rectangle.
func (p *page) box(r layout.Rect) {
	p.level(r.XMM, r.RightMM(), r.YMM, boxLineMM)
	p.level(r.XMM, r.RightMM(), r.BottomMM(), boxLineMM)
	p.upright(r.XMM, r.YMM, r.BottomMM(), boxLineMM)
	p.upright(r.RightMM(), r.YMM, r.BottomMM(), boxLineMM)
}

// put adds words from x on.
func (p *page) put(s style, x, y float64, text string) {
	p.words = append(p.words, words{x, y, text, false, s})
}

// putMiddle adds words with their middle at x.
func (p *page) putMiddle(s style, x, y float64, text string) {
	p.put(s, x-p.width(s, text)/2, y, text)
}

// putTurned adds words that read upwards with their middle at y, and a baseline at x.
func (p *page) putTurned(s style, x, y float64, text string) {
	p.words = append(p.words, words{x, y + p.width(s, text)/2, text, true, s})
}

// width measures words.
func (p *page) width(s style, text string) float64 {
	p.canvas.SetFont(s.font, s.weight, s.pt)
	return p.canvas.GetStringWidth(text)
}

// wrap breaks words into lines no wider than widthMM; a single longer word stands alone.
func (p *page) wrap(s style, text string, widthMM float64) []string {
	var lines []string
	for _, word := range strings.Fields(text) {
		if last := len(lines) - 1; last >= 0 && p.width(s, lines[last]+" "+word) <= widthMM {
			lines[last] += " " + word
			continue
		}
		lines = append(lines, word)
	}
	return lines
}

// draw puts everything on the canvas.
func (p *page) draw() {
	c := p.canvas
	c.SetLineCapStyle("butt")
	for _, f := range p.fills {
		c.SetFillColor(f.level, f.level, f.level)
		c.Rect(f.XMM, f.YMM, f.WidthMM, f.HeightMM, "F")
	}
	for _, s := range p.strokes {
		c.SetDrawColor(s.level, s.level, s.level)
		c.SetLineWidth(s.widthMM)
		c.Line(s.x1, s.y1, s.x2, s.y2)
	}
	c.SetFillColor(black, black, black)
	c.SetTextColor(black, black, black)
	for _, w := range p.words {
		c.SetFont(w.style.font, w.style.weight, w.style.pt)
		if w.turned {
			c.TransformBegin()
			c.TransformRotate(90, w.x, w.y)
		}
		c.Text(w.x, w.y, w.text)
		if w.turned {
			c.TransformEnd()
		}
	}
}
