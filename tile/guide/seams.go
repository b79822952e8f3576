package guide

import (
	"image"
	"image/color"

	"dropsheet/layout"
	"dropsheet/tile/ink"
	"dropsheet/tile/pdf"
)

// How the seam map's panels are shown, in guide mm for a pixel of the map.
const (
	panelMM      = 0.12 // its type is then as large as the guide's
	leastPanelMM = 0.1  // for a smaller one, each panel would get a page of its own
	besideMM     = 44.0 // the narrowest column of words beside a panel
)

// seams shows the two panels of the seam map, each with words beside or below it.
func (b *book) seams() {
	b.intro(b.job.mapIntro())
	board, drop := b.panels.Board.Size(), b.panels.Drop.Size()
	if k := min(panelMM, (b.geo.fullMM()-gutterMM)/float64(board.X+drop.X)); board.Y > board.X && k >= leastPanelMM {
		// A tall board leaves room for the drop beside it.
		b.mapPanel(b.boardTitle(), b.panels.Board, k, func(b *book, x, y, w float64) float64 {
			y = b.block(sideStyle, x, y-sideStyle.LeadMM-1, w, b.dropTitle()) + 1
			return b.key(k, x, b.part(b.panels.Drop, k, x, y)+figureGapMM, w)
		})
		b.topic("How to read it", func(b *book) { b.y = b.bullets(b.reading(), b.geo.textX, b.y, b.geo.textWidth) })
		return
	}
	k := b.panelScale()
	b.boardPanel(k)
	b.dropPanel(k)
}

func (b *book) boardTitle() string { return "On the board, as it hangs" }
func (b *book) dropTitle() string {
	return "In the " + b.job.body() + ", as the " + b.job.looker() + " sees it"
}

func (b *book) boardPanel(k float64) {
	b.mapPanel(b.boardTitle(), b.panels.Board, k, func(b *book, x, y, w float64) float64 { return b.key(k, x, y, w) })
}

func (b *book) dropPanel(k float64) {
	b.mapPanel(b.dropTitle(), b.panels.Drop, k,
		func(b *book, x, y, w float64) float64 { return b.bullets(b.reading(), x, y, w) })
}

// panelScale is guide mm for a pixel of the map: as large as both panels on one page allow, or, where that is
// small, one on the section's first page and the other on its second.
func (b *book) panelScale() float64 {
	roomMM := b.geo.bottom - b.geo.top - headMM - b.blockMM(leadStyle, b.geo.textWidth, b.job.mapIntro()) - 2*sideGapMM
	holds := func(k float64, draw func(*book)) bool {
		high, pages := b.takes(draw)
		return pages == 1 && high <= roomMM
	}
	widest := b.geo.fullMM() / float64(max(b.panels.Board.Dx(), b.panels.Drop.Dx()))
	k := min(panelMM, widest)
	for ; k > leastPanelMM; k -= 0.002 {
		if holds(k, func(b *book) { b.boardPanel(k); b.dropPanel(k) }) {
			return k
		}
	}
	for k = min(panelMM, widest); k > leastPanelMM/2 && !holds(k, func(b *book) { b.boardPanel(k) }); k -= 0.002 {
	}
	return k
}

// mapPanel sets a panel of the map under a title, and words in the column beside it, or below it where that
// is too narrow.
func (b *book) mapPanel(title string, part image.Rectangle, k float64,
	words func(b *book, x, y, w float64) (bottom float64)) {
	b.together(func(b *book) {
		g := b.geo
		b.y = b.lowest() + b.gap(sideGapMM)
		b.y = b.block(sideStyle, g.left, b.y, g.fullMM(), title) + 1
		bottom := b.part(part, k, g.left, b.y)
		x, y := g.left+k*float64(part.Dx())+gutterMM, b.y
		if g.right-x < besideMM {
			x, y = g.left, bottom+captionGapMM
		}
		b.y = max(bottom, words(b, x, y, min(g.right-x, measureMM)))
		b.floor = b.y
	})
}

// part places a panel of the map, pixel for pixel so that its thin lines stay, and returns where it ends.
func (b *book) part(part image.Rectangle, k, x, y float64) (bottom float64) {
	at := layout.Rect{XMM: x, YMM: y, WidthMM: k * float64(part.Dx()), HeightMM: k * float64(part.Dy())}
	packed := b.job.SeamMap.board
	if part == b.panels.Drop {
		packed = b.job.SeamMap.drop
	}
	b.Place(at)
	b.pictures = append(b.pictures, func() (pdf.Picture, error) { return packed, nil })
	return at.BottomMM()
}

// key sets what the map's lines are, each beside a piece of it, in two columns where there is room.
func (b *book) key(k, x, y, w float64) (bottom float64) {
	const sampleMM, afterMM, twoMM = 9.6, 12.0, 120.0
	rows := len(b.panels.Key)
	if w >= twoMM {
		rows, w = (rows+1)/2, w/2
	}
	top := y
	for i, e := range b.panels.Key {
		if i == rows {
			x, y = x+w, top
		}
		b.sample(e.Line, k, x, x+sampleMM, y+labelStyle.LeadMM/2)
		y = b.block(labelStyle, x+afterMM, y, w-afterMM, e.Text) + 1
		bottom = max(bottom, y)
	}
	return bottom
}

// sample draws a piece of one of the map's lines.
func (b *book) sample(l ink.Line, k, from, to, y float64) {
	shadeOf := func(c color.RGBA) pdf.Shade { return pdf.Shade{R: c.R, G: c.G, B: c.B} }
	dash := make([]float64, len(l.DashPx))
	for i, px := range l.DashPx {
		dash[i] = k * px
	}
	b.Line(from, y, to, y, pen(shadeOf(l.Keyline), k*(l.WidthPx+2*l.KeylinePx), dash...))
	b.Line(from, y, to, y, pen(shadeOf(l.Colour), k*l.WidthPx, dash...))
	if l.CorePx > 0 {
		b.Line(from, y, to, y, pen(shadeOf(l.Core), k*l.CorePx, dash...))
	}
}

// bullets sets a list in a column, outside the flow.
func (b *book) bullets(texts []string, x, y, w float64) (bottom float64) {
	const indent = 4.6
	for _, text := range texts {
		b.Fill(layout.Rect{XMM: x, YMM: y + bodyStyle.LeadMM/2 - 0.7, WidthMM: 1.4, HeightMM: 1.4}, accent)
		y = b.block(bodyStyle, x+indent, y, w-indent, text) + 1.9
	}
	return y
}

// mapIntro says what the map is.
func (j Job) mapIntro() string {
	const file = " Both views are in seams.png in the job\u2019s folder."
	switch {
	case j.single():
		return "How the picture on the board comes to lie in the " + j.body() + "." + file
	case j.rod():
		return "Each seam twice: on the board, and as the rod shows it." + file
	}
	return "Each seam twice: on the board, and as the " + j.body() + " bends it." + file
}

// reading says how to read the map.
func (b *book) reading() []string {
	rings, inner := "The circles", "inside the innermost circle"
	if b.job.rod() {
		rings, inner = "The pairs of lines", "between the innermost pair of lines"
	}
	if b.job.oblate() {
		rings, inner = "The ovals", "inside the innermost oval"
	}
	fills := rings + " show where the " + b.job.body() + " looks at a quarter, a half and three quarters of its visible " +
		"radius, and at the picture\u2019s own fill."
	if b.job.single() {
		return []string{fills}
	}
	return []string{
		fills,
		b.told("seams.bend", "seams.along") + " A seam near the middle is drawn largest, and shows the most.",
		"Take the most care over the seams that the map marks as showing, and over those " + inner +
			": look for white edges, gaps and steps, and touch them up.",
		strong("dropsheet seams <folder>") + " lists every seam, the plainest first, and what would hide it.",
	}
}
