package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/report"
)

// order says in which order to paste, and why.
func (b *book) order() {
	p := b.job.Plan
	light := p.Backdrop.LightFrom
	first := p.Sheets[0]
	start, begins, side := "Start at the lamp\u2019s corner and work away from the lamp.", "where the light comes from",
		"the lamp\u2019s side"
	if !b.fromCorner() {
		start, begins, side = "Start in the corner that the sheets are cut for, and work away from it.",
			"which the cut edges face", "that side"
	}
	b.intro(start)

	across, down := "to the right", "downward"
	if !light.Left() {
		across = "to the left"
	}
	if !light.Top() {
		down = "upward"
	}
	text := fmt.Sprintf("Begin with %s, in the %s corner, %s. ", strong(first.Name), b.cutCorner(), begins)
	if vertical, horizontal := report.CornerSides(light); !b.job.atLamp(first) {
		text = fmt.Sprintf("Begin with %s, the sheet furthest to the %s in the %s row that has any. ", strong(first.Name),
			horizontal, vertical)
	}
	switch {
	case p.Backdrop.Rows == 1:
		text += "Go on " + across + " along the row."
	case p.Backdrop.Columns == 1:
		text += "Go on " + down + ", sheet by sheet."
	default:
		text += fmt.Sprintf("Go on %s to the end of the row. Then do the next row %s, again from %s, and so on.", across,
			down, side)
	}
	if b.job.bareCells() > 0 {
		text += " Cells without a sheet are passed over."
	}
	b.topic("The order", func(b *book) {
		b.para(text + " The pages of sheets.pdf come in this order.")
		b.figure(b.drawingMM(b.pathMM()), b.path, "")
	})
	b.topic("Paper that behaves", func(b *book) {
		advice := b.told("build.grows")
		if p.Backdrop.Printer == nil || p.Backdrop.Printer.Growth == (layout.Growth{}) {
			advice += " To have the sheets make up for it, paste and dry two pages of dropsheet gauge, measure them, and " +
				"keep the reading with " + strong("--pasted") + "."
		}
		b.bullet(advice)
		b.bullet("All sheets from one packet, with the grain one way, printed with one set of inks. Let the paper lie " +
			"in the room for a day. Store the prints flat, in order, and number their backs.")
		b.bullet("The same soaking time for every sheet. Roll each out from its middle, and let the board dry flat, under " +
			"weight. A light board bows: paste as much paper on its back.")
	})
	b.topic("Why", func(b *book) {
		b.para("The edges of a sheet that face the lamp are cut, and lie on top of the laps that are already down. " +
			"Lit like the paper around it, such an edge throws no shadow. One that faces away throws a thin shadow along " +
			"the whole seam, and the camera sees a line. " +
			"Paperhangers work the same way, away from the window.")
		b.figure(sectionMM, b.crossSections, "A seam cut through, the paper drawn much too thick. The same holds for the "+
			"seams that run across.")
	})
}

// mostDiscs is how many sheets the drawing of the order numbers one by one.
const mostDiscs = 25

// Radii of discs: of the smallest whose number can be read, which is set in six points, and as a share of the
// cell that holds it.
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

// pathMM is the height of the drawing of the order: as large as its discs need, where it has any and the page
// is large enough.
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

// atLamp tells whether a sheet lies in the corner that the light comes from.
func (j Job) atLamp(s layout.Sheet) bool {
	board := j.Plan.Backdrop
	return (s.Column == 1 || !board.LightFrom.Left()) && (s.Column == board.Columns || board.LightFrom.Left()) &&
		(s.Row == 1 || !board.LightFrom.Top()) && (s.Row == board.Rows || board.LightFrom.Top())
}

// runs parts sheets in pasting order into those that follow each other side by side.
func runs(sheets []layout.Sheet) (all [][]layout.Sheet) {
	from := 0
	for i := 1; i <= len(sheets); i++ {
		if i == len(sheets) || sheets[i].Row != sheets[i-1].Row || max(sheets[i].Column, sheets[i-1].Column)-
			min(sheets[i].Column, sheets[i-1].Column) > 1 {
			all = append(all, sheets[from:i])
			from = i
		}
	}
	return all
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
	b.bareBoard(at)
	b.cells(at, thin)
	b.Frame(at, heavy)
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
	way := pen(accent, 0.5*fine)
	var last layout.Sheet
	for i, run := range runs(p.Sheets) {
		x0, y0 := middle(last)
		x1, y1 := middle(run[0])
		last = run[len(run)-1]
		x2, y2 := middle(last)
		if i > 0 {
			b.Line(x0, y0, x1, y1, pen(accent, 0.25*fine, 1.2, 1))
		}
		switch {
		case len(run) > 1:
			b.arrow(x1, y1, x2-math.Copysign(radius+0.4, x2-x1), y2, head, way)
		case i > 0 && x0 == x1:
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
