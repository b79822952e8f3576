package guide

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// frameMM is what a drawing of the board keeps free on each side for headings, the lamp and dimensions.
const frameMM = 14.0

// board shows the board as it must hang.
func (b *book) board() {
	p := b.job.Plan
	b.intro("Seen from the camera\u2019s side, facing the print.")
	b.note(b.told("hangs.looks", "hangs.bent") + " That is right. " + b.told("hangs.why") + " " +
		"Do not turn the board round.")

	below := 22.0
	if b.job.single() {
		below += 26
	}
	high := min(b.geo.bottom-b.y-below, (b.geo.fullMM()-2*frameMM)*p.Backdrop.HeightMM/p.Backdrop.WidthMM+2*frameMM)
	high = max(high, 60)
	_, named := b.labelFor(b.boardIn(layout.Rect{WidthMM: b.geo.fullMM(), HeightMM: high}))
	text := "The numbers in discs give the order of pasting; they are the pages of sheets.pdf too. "
	switch {
	case b.job.single():
		text = ""
	case !named:
		text = "The cells are too small here for their names: " + b.job.nameRead() +
			". The table in the next section gives each its page. "
	}
	text += b.edgeWords()
	b.figure(high, b.hanging, text+"The cross marks the middle, where the line from the lens through the "+b.job.body()+
		" meets the board. "+b.lightWords())
	if b.job.single() {
		b.topic("In pencil", func(b *book) { b.para(b.told("build.outline", "build.square") + " The sheet goes on it.") })
	}
}

// hanging draws the board as it hangs, its sheets named and numbered where there is room.
func (b *book) hanging(box layout.Rect) {
	p := b.job.Plan
	at := b.boardIn(box)
	b.placeBoard(at, 1, p.Backdrop.Board(), p.Backdrop.Board())
	b.bareBoard(at)
	hair := min(0.3, 0.04*min(at.WidthMM/float64(p.Backdrop.Columns), at.HeightMM/float64(p.Backdrop.Rows)))
	b.cells(at, pen(white, 3*hair))
	b.cells(at, pen(black, hair))
	if b.job.edged() {
		edge := b.pictureEdge(at)
		b.Outline(edge, pen(white, 5*hair))
		b.Outline(edge, pen(accent, 2.5*hair, 2, 1.2))
	}
	if l, ok := b.labelFor(at); ok && !b.job.single() {
		b.names(at, l)
	}
	b.around(at)
	b.middle(at)
}

// boardIn is where the board goes in a box that keeps a frame around it.
func (b *book) boardIn(box layout.Rect) layout.Rect {
	p := b.job.Plan.Backdrop
	return inside(box.Grow(layout.Sides{LeftMM: -frameMM, TopMM: -frameMM, RightMM: -frameMM, BottomMM: -frameMM}),
		p.WidthMM, p.HeightMM)
}

// onFigure moves a rectangle from board mm onto a drawing of the board.
func (b *book) onFigure(at, r layout.Rect) layout.Rect {
	k := at.WidthMM / b.job.Plan.Backdrop.WidthMM
	return layout.Rect{XMM: at.XMM + k*r.XMM, YMM: at.YMM + k*r.YMM, WidthMM: k * r.WidthMM, HeightMM: k * r.HeightMM}
}

// cellLabel is how names and numbers are set in the cells of a drawing: in one line, or one above the other.
type cellLabel struct {
	style   pdf.Style
	stacked bool
}

// sizeMM is the space that a label takes.
func (l cellLabel) sizeMM(b *book, name string) (widthMM, heightMM float64) {
	em := l.style.SizeMM()
	if l.stacked {
		return l.style.Width(name) + 1.8, 2.9 * em
	}
	return l.style.Width(name) + 1.8 + 1.7*em, 1.3 * em
}

// labelFor chooses the largest label that every cell holds. ok is false when it would be too small to read.
func (b *book) labelFor(at layout.Rect) (l cellLabel, ok bool) {
	const smallestPt, largestPt, padMM, share = 5.0, 10.0, 0.7, 0.55
	for pt := largestPt; pt >= smallestPt; pt -= 0.5 {
		for _, stacked := range []bool{false, true} {
			l := cellLabel{boldLabel.At(pt), stacked}
			holds := true
			for _, sheet := range b.job.Plan.Sheets {
				cell := b.onFigure(at, sheet.Cell)
				w, h := l.sizeMM(b, sheet.Name)
				holds = holds && w+2*padMM <= cell.WidthMM && h <= share*cell.HeightMM
			}
			if holds {
				return l, true
			}
		}
	}
	return cellLabel{}, false
}

// names writes each sheet's name and pasting number into its cell, above the middle so that the cross there stays free.
func (b *book) names(at layout.Rect, l cellLabel) {
	em := l.style.SizeMM()
	for _, sheet := range b.job.Plan.Sheets {
		cell := b.onFigure(at, sheet.Cell)
		x, y := cell.XMM+cell.WidthMM/2, cell.YMM+0.31*cell.HeightMM
		number := fmt.Sprint(sheet.Page)
		if l.stacked {
			b.tag(l.style, x, y-0.75*em, sheet.Name)
			b.disc(x, y+0.75*em, 0.65*em, number)
			continue
		}
		w, _ := l.sizeMM(b, sheet.Name)
		name := l.style.Width(sheet.Name) + 1.8
		b.tag(l.style, x-w/2+name/2, y, sheet.Name)
		b.disc(x+w/2-0.65*em, y, 0.65*em, number)
	}
}

// around draws what stands round the board: its outer edge, rows and columns, which edge is up, its size, and
// the lamp at its corner.
func (b *book) around(at layout.Rect) {
	p := b.job.Plan
	b.Frame(at, heavy)
	xs, ys := p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM
	k := at.WidthMM / p.Backdrop.WidthMM
	s := tinyStyle
	columns, rows := p.Backdrop.Columns, p.Backdrop.Rows
	wide := s.Width(fmt.Sprintf("C%d", columns)) + 1
	if b.job.single() {
		columns, rows = 0, 0 // no names for cells
	}
	for i := 0; i < columns; i += everyNth(wide, k*leastStep(xs)) {
		b.PutMiddle(s, at.XMM+k*(xs[i]+xs[i+1])/2, at.YMM-1.8, fmt.Sprintf("C%d", i+1))
	}
	for i := 0; i < rows; i += everyNth(s.SizeMM(), k*leastStep(ys)) {
		b.PutRight(s, at.XMM-1.8, at.YMM+k*(ys[i]+ys[i+1])/2+s.CapMM()/2, fmt.Sprintf("R%d", i+1))
	}
	x := at.XMM + at.WidthMM/2
	b.arrow(x-7, at.YMM-6, x-7, at.YMM-11, 2.6, heavy)
	b.Put(boldLabel, x-4.6, at.YMM-7, "this edge up")
	b.across(at.XMM, at.RightMM(), at.BottomMM()+7, b.length(p.Backdrop.WidthMM))
	b.down(at.RightMM()+7, at.YMM, at.BottomMM(), b.length(p.Backdrop.HeightMM))
	b.cornerLamp(at)
}

// leastStep is the least distance between the middles of neighbouring cells, whose edges are given in rising order.
func leastStep(edges []float64) float64 {
	least := edges[len(edges)-1] - edges[0]
	for i := 2; i < len(edges); i++ {
		least = min(least, (edges[i]-edges[i-2])/2)
	}
	return least
}

// everyNth says how many steps to go from one heading to the next so that headings of that size stay apart.
func everyNth(sizeMM, stepMM float64) int {
	for _, n := range []int{1, 2, 5, 10, 20, 50} {
		if sizeMM <= float64(n)*stepMM {
			return n
		}
	}
	return 100
}

// cornerLamp draws the lamp outside the corner that it shines from, where it does.
func (b *book) cornerLamp(at layout.Rect) {
	if !b.fromCorner() {
		return
	}
	const off, slant = 8.5, 0.7071 // half a right angle
	x, ux := at.RightMM()+off, -slant
	if b.job.Plan.Backdrop.LightFrom.Left() {
		x, ux = at.XMM-off, slant
	}
	y, uy := at.BottomMM()+off, -slant
	if b.job.Plan.Backdrop.LightFrom.Top() {
		y, uy = at.YMM-off, slant
	}
	b.lamp(x, y, ux, uy)
}

// middle marks the middle of the board with a cross.
func (b *book) middle(at layout.Rect) {
	x, y := at.XMM+at.WidthMM/2, at.YMM+at.HeightMM/2
	arm := max(0.8, min(0.1*at.HeightMM/float64(b.job.Plan.Backdrop.Rows), 3))
	for _, p := range []pdf.Pen{pen(white, 1), pen(black, 0.35)} {
		b.Line(x-arm, y, x+arm, y, p)
		b.Line(x, y-arm, x, y+arm, p)
	}
}
