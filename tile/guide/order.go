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
	text := fmt.Sprintf("Begin with %s, in the %s corner, where the light comes from. ", strong(first.Name), corner(light))
	switch {
	case p.Backdrop.Rows == 1:
		text += "Go on " + across + " along the row."
	case p.Backdrop.Columns == 1:
		text += "Go on " + down + ", sheet by sheet."
	default:
		text += fmt.Sprintf("Go on %s to the end of the row. Then do the next row %s, again from the lamp\u2019s side, and so on.", across, down)
	}
	b.topic("The order", func(b *book) {
		b.para(text + " The pages of sheets.pdf come in this order.")
		b.figure(b.pathMM(), b.path, "")
	})
	b.topic("Why", func(b *book) {
		b.para("The edges of a sheet that face the lamp are cut, and lie on top of the laps that are already down. " +
			"Lit like the paper around it, such an edge throws no shadow. One that faces away throws a thin shadow along the whole seam, and the camera sees a line. " +
			"Paperhangers work the same way, away from the window.")
		b.figure(sectionMM, b.crossSections, "A seam cut through, the paper drawn much too thick. The same holds for the seams that run across.")
	})
}

// mostDiscs is how many sheets the drawing of the order numbers one by one.
const mostDiscs = 25

// Radii of discs: of the smallest whose number can be read, which is set in six points, and as a share of the cell that holds it.
const (
	leastDiscMM = 1.8
	discShare   = 0.37
)

// discRadiusMM is how large discs are drawn in cells of which the narrowest is that narrow, guide mm.
func discRadiusMM(narrowest float64) float64 {
	return min(3, discShare*narrowest)
}

// narrowestMM is the least side of any cell on the board.
func narrowestMM(p layout.Plan) float64 {
	least := math.Inf(1)
	for _, s := range p.Sheets {
		least = min(least, s.Cell.WidthMM, s.Cell.HeightMM)
	}
	return least
}

// pathMM is the height of the drawing of the order: as large as its discs need, where it has any and the page is large enough.
func (b *book) pathMM() float64 {
	p := b.job.Plan
	full, board := b.geo.fullMM(), p.Backdrop
	high := min(0.3*full*board.HeightMM/board.WidthMM, 0.42*full)
	if len(p.Sheets) <= mostDiscs {
		const roomyMM = 1.2 * leastDiscMM / discShare // of the narrowest cell
		widest := min((full-2*frameMM)*board.HeightMM/board.WidthMM, 0.42*(b.geo.bottom-b.geo.top))
		high = max(high, min(roomyMM/narrowestMM(p)*board.HeightMM, widest))
	}
	return max(high, 22) + frameMM
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
	narrowest := narrowestMM(p) * at.WidthMM / p.Backdrop.WidthMM
	radius := discRadiusMM(narrowest)
	numbered := radius >= leastDiscMM && len(p.Sheets) <= mostDiscs
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
		b.disc(x, y, leastDiscMM, "1")
	}
	b.cornerLamp(at)
}
