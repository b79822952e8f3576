package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
)

// order says in which order to paste, and why.
func (b *book) order() {
	p := b.job.Plan
	light := p.Backdrop.LightFrom
	first := p.Sheets[0]
	b.intro("Start at the lamp\u2019s corner and work away from the lamp.")

	across, down := "to the right", "downward"
	if !light.Left() {
		across = "to the left"
	}
	if !light.Top() {
		down = "upward"
	}
	b.side("The order")
	if len(p.Sheets) == 1 {
		b.para("This backdrop is a single sheet: there are no seams, and nothing to put in order.")
		return
	}
	text := fmt.Sprintf("Begin with %s, in the %s corner, where the light comes from. ", strong(first.Name), corner(light))
	switch {
	case p.Backdrop.Rows == 1:
		text += "Go on " + across + " along the row."
	case p.Backdrop.Columns == 1:
		text += "Go on " + down + ", sheet by sheet."
	default:
		text += fmt.Sprintf("Go on %s to the end of the row. Then do the next row %s, again from the lamp\u2019s side, and so on.", across, down)
	}
	b.para(text + " The pages of sheets.pdf come in this order.")
	high := min(0.36*b.geo.fullMM()*p.Backdrop.HeightMM/p.Backdrop.WidthMM, 0.4*b.geo.fullMM())
	b.figure(max(high, 22)+frameMM, b.path)

	const why = "The edges of a sheet that face the lamp are cut, and lie on top of the laps that are already down. " +
		"An edge that faces the lamp is lit like the paper around it and throws no shadow. One that faces away throws a thin shadow along the whole seam, and the camera sees a line. " +
		"Paperhangers work the same way, away from the window."
	const caption = "A seam cut through, the paper drawn much too thick. The same holds for the seams that run across."
	b.need(sideGapMM + b.blockMM(bodyStyle, b.geo.textWidth, why) + sectionMM + b.blockMM(captionStyle, b.geo.textWidth, caption) + 8)
	b.side("Why")
	b.para(why)
	b.figure(sectionMM, b.crossSections)
	b.caption(caption)
}

// path draws the board's grid with the way that the pasting takes.
func (b *book) path(box layout.Rect) {
	p := b.job.Plan
	room := layout.Sides{LeftMM: -frameMM, RightMM: -frameMM}
	if p.Backdrop.LightFrom.Top() {
		room.TopMM = -frameMM
	} else {
		room.BottomMM = -frameMM
	}
	at := inside(box.Grow(room), p.Backdrop.WidthMM, p.Backdrop.HeightMM)
	b.cells(at, thin)
	b.frame(at, heavy)
	columns := p.Backdrop.Columns
	middle := func(s layout.Sheet) (x, y float64) {
		cell := b.onFigure(at, s.Cell)
		return cell.XMM + cell.WidthMM/2, cell.YMM + cell.HeightMM/2
	}
	narrowest := min(at.WidthMM, at.HeightMM)
	for _, s := range p.Sheets {
		cell := b.onFigure(at, s.Cell)
		narrowest = min(narrowest, cell.WidthMM, cell.HeightMM)
	}
	radius := min(3, 0.22*narrowest)
	numbered := radius >= 1.1
	if !numbered {
		radius = 0
	}
	fine := min(1, narrowest/8)
	head := max(0.8, 2.4*fine)
	way := pen{accent, 0.5 * fine, nil}
	for i := 0; i < len(p.Sheets); i += columns {
		x1, y1 := middle(p.Sheets[i])
		x2, y2 := middle(p.Sheets[i+columns-1])
		if i > 0 {
			x0, y0 := middle(p.Sheets[i-1])
			b.line(x0, y0, x1, y1, pen{accent, 0.25 * fine, []float64{1.2, 1}})
		}
		switch {
		case columns > 1:
			b.arrow(x1, y1, x2-math.Copysign(radius+0.4, x2-x1), y2, head, way)
		case i > 0:
			x0, y0 := middle(p.Sheets[i-1])
			b.arrow(x0, y0, x1, y1-math.Copysign(radius+0.4, y1-y0), head, way)
		}
	}
	if numbered {
		for _, s := range p.Sheets {
			x, y := middle(s)
			b.disc(x, y, radius, fmt.Sprint(s.Page))
		}
	} else {
		x, y := middle(p.Sheets[0])
		b.disc(x, y, 1.6, "1")
	}
	b.cornerLamp(at)
}
