package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
)

// Page geometry, in guide mm.
const (
	leastMarginMM = 12.0 // on paper: what a desk printer and a hand that holds the page need
	marginShare   = 0.085
	narrowMM      = 128.0 // least width that the pages are designed for, and
	lowMM         = 180.0 // least height, both inside the margins: A5
	plainMM       = 186.0 // width inside the margins up to which the scale is 1: A4
	headerMM      = 14.0  // above and below the content, where the page is large enough for wider margins at its sides
	footerMM      = 9.0
	sideMM        = 36.0 // the column of side headings, where the page is wide enough for one
	gutterMM      = 5.0
	measureMM     = 134.0 // the text column at most: about 80 letters a line
	wideMM        = 160.0 // width inside the margins from which headings stand beside the text
)

// headMM is the height of a section's head.
const headMM = 19.0

// geometry is where things go on a page, in guide mm.
type geometry struct {
	scale                    float64 // paper mm for one guide mm
	widthMM, heightMM        float64 // the page
	left, top, right, bottom float64 // the space for content
	textX, textWidth         float64
	beside                   bool // side headings stand beside the text, not above it
}

// newGeometry fits the page to the paper, upright. All of it is zoom times as large as usual.
func newGeometry(p layout.Paper, zoom float64) geometry {
	w, h := min(p.WidthMM, p.HeightMM), max(p.WidthMM, p.HeightMM)
	margin := min(leastMarginMM, 0.3*w)
	liveW, liveH := w-2*margin, h-2*margin
	scale := 1.0
	if liveW > plainMM {
		scale = math.Sqrt(liveW / plainMM) // type grows half as fast as paper: it is read from a little further off
	}
	scale = min(scale, liveW/narrowMM, liveH/lowMM) * zoom

	g := geometry{scale: scale, widthMM: w / scale, heightMM: h / scale}
	side := margin / scale
	if ample := marginShare * g.widthMM; side < ample && g.widthMM-2*ample >= narrowMM {
		side = ample
	}
	g.left, g.right = side, g.widthMM-side
	ends := min(side, max(margin/scale, headerMM))
	g.top, g.bottom = ends, g.heightMM-ends-footerMM
	g.textX, g.textWidth = g.left, min(g.right-g.left, measureMM)
	if g.right-g.left >= wideMM {
		g.beside = true
		g.textX = g.left + sideMM + gutterMM
		g.textWidth = min(g.right-g.textX, measureMM)
	}
	return g
}

// Holds tells whether a guide can come on a paper: on a smaller one its type of ten points would come out at less than
// 8.6.
func Holds(p layout.Paper) bool { return newGeometry(p, 1).scale >= leastScale }

// fullMM is the width that figures may take.
func (g geometry) fullMM() float64 { return g.right - g.left }

// fill is how much of a page is filled that ends there, as a share.
func (g geometry) fill(bottomMM float64) float64 { return (bottomMM - g.top) / (g.bottom - g.top) }

// room is the height left on the page.
func (b *book) room() float64 { return b.geo.bottom - b.y }

// need starts a new page when the current one has less room than that, unless nothing is on it yet.
func (b *book) need(heightMM float64) {
	if b.room() < heightMM && b.y > b.geo.top {
		b.newPage()
	}
}

// newPage starts the next page.
func (b *book) newPage() {
	b.bottoms = append(b.bottoms, b.lowest())
	b.AddPage(b.geo.widthMM*b.geo.scale, b.geo.heightMM*b.geo.scale)
	b.Scale(b.geo.scale, b.geo.scale, layout.Point{})
	b.page++
	b.y, b.floor = b.geo.top, b.geo.top
	b.footer()
}

// footer writes the job's name, its check code and the page number at the foot.
func (b *book) footer() {
	g := b.geo
	line := g.bottom + footerMM - 4.6
	b.Line(g.left, line, g.right, line, thin)
	base := g.bottom + footerMM
	number := fmt.Sprintf("%d / %d", b.page, b.pages)
	code := "check code " + b.clean(b.job.CheckCode)
	b.PutRight(footStyle, g.right, base, number)
	at := g.right - 16 - footStyle.Width(code)
	b.Put(footStyle, at, base, code)
	b.PutFit(footStyle, g.left, base, at-g.left-6, b.clean(b.job.Name)+" \u2013 assembly guide")
}

// title sets a section's head.
func (b *book) title(i int, s section) { b.heading(fmt.Sprint(i+1), s.title) }

// heading sets a head: a rule across the page, its number, its title.
func (b *book) heading(number, title string) {
	g := b.geo
	b.Fill(layout.Rect{XMM: g.left, YMM: b.y, WidthMM: g.fullMM(), HeightMM: 0.7}, accent)
	base := b.y + 11
	b.Put(numberStyle, g.left, base, number)
	x := g.textX
	if !g.beside {
		x = g.left + numberStyle.Width(number) + 4
	}
	b.PutFit(titleStyle, x, base, g.right-x, title)
	b.y += headMM
	b.floor = b.y
}
