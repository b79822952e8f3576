package guide

import (
	"fmt"

	"dropsheet/layout"
)

// grid explains the pencil grid and lists every line of it, then every sheet's corners.
func (b *book) grid() {
	xs, ys := b.job.Plan.Backdrop.XEdgesMM, b.job.Plan.Backdrop.YEdgesMM
	b.intro("Draw the cells on the board before you paste: they show each sheet its place, and keep slips of the hand " +
		"from adding up.")
	if b.job.Plan.Inches {
		b.para("Measure the grid in " + strong("millimetres") + ": a sixteenth of an inch is too coarse for it.")
	}

	b.step(1, b.told("build.outline", "build.square"))
	b.step(2, "Mark the upright lines along the upper and the lower edge, each measured from the print\u2019s "+
		strong("left edge")+"; never from the line before. Join the marks with hard, thin pencil lines that "+
		strong("run on into the border")+": there they are still seen when laps hide the rest.")
	b.step(3, "Mark the level lines along the left and the right edge, each measured from the print\u2019s "+
		strong("upper edge")+". Join them, and run these on too.")
	b.step(4, "Write each cell\u2019s name in it: R for the row, counted from above, C for the column, counted from "+
		"the left."+b.job.bareGrid())
	b.y += 1
	// A drawing with both sets of figures, where they can be read.
	p := b.job.Plan.Backdrop
	high := min(0.42*b.geo.fullMM()*p.HeightMM/p.WidthMM, 0.36*b.geo.fullMM())
	b.figure(b.drawingMM(max(high, 20))+gridRoom.TopMM+gridRoom.BottomMM, b.gridDrawing,
		"Along the top: mm from the left edge. Down the side: mm from the upper edge.")
	b.together(func(b *book) {
		b.lines("Upright lines", "x", "C", "left edge", "right edge", xs)
		b.lines("Level lines", "y", "R", "upper edge", "lower edge", ys)
	})
	b.corners()
}

// bareGrid says what to do with cells that have no sheet.
func (j Job) bareGrid() string {
	if j.bareCells() == 0 {
		return ""
	}
	return " The shaded cells have no sheet: they get no name, and pencil lines in them are rubbed out when all is pasted."
}

// gridRoom is what the drawing of the grid keeps free for its figures.
var gridRoom = layout.Sides{LeftMM: 14, TopMM: 7, RightMM: 6, BottomMM: 2}

// gridDrawing draws the pencil grid with its measures and diagonals.
func (b *book) gridDrawing(box layout.Rect) {
	p := b.job.Plan
	at := inside(box.Grow(layout.Sides{LeftMM: -gridRoom.LeftMM, TopMM: -gridRoom.TopMM, RightMM: -gridRoom.RightMM,
		BottomMM: -gridRoom.BottomMM}),
		p.Backdrop.WidthMM, p.Backdrop.HeightMM)
	xs, ys := p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM
	k := at.WidthMM / p.Backdrop.WidthMM
	b.bareBoard(at)
	b.Line(at.XMM, at.YMM, at.RightMM(), at.BottomMM(), pen(pale, 0.2, 2, 1.2))
	b.Line(at.XMM, at.BottomMM(), at.RightMM(), at.YMM, pen(pale, 0.2, 2, 1.2))
	b.cells(at, plain)
	b.Frame(at, heavy)
	figure := tinyStyle.In(black)
	for _, i := range spaced(xs, (figure.Width(tenth(xs[len(xs)-1]))+1.5)/k) {
		b.PutMiddle(figure, at.XMM+k*xs[i], at.YMM-2, tenth(xs[i]))
	}
	for _, i := range spaced(ys, figure.SizeMM()/k) {
		b.PutRight(figure, at.XMM-2, at.YMM+k*ys[i]+figure.CapMM()/2, tenth(ys[i]))
	}
}

// spaced picks those of the lines at rising places that have room for a figure of that size: the first, the
// last, and from the first on each that is far enough from the one picked before and from the last.
func spaced(at []float64, size float64) []int {
	last := len(at) - 1
	picked := []int{0}
	for i := 1; i < last; i++ {
		if at[i]-at[picked[len(picked)-1]] >= size && at[last]-at[i] >= size {
			picked = append(picked, i)
		}
	}
	return append(picked, last)
}

// lines lists the pencil lines of one direction: outer edge, the line between each two columns or rows, outer edge.
func (b *book) lines(heading, axis, letter, first, last string, at []float64) {
	t := table{columns: []column{{"line", false, tableStyle.Width("upper edge") + 8}, {axis + " mm", true, 15}},
		gapMM: 7}
	for i, mm := range at {
		name := fmt.Sprintf("%s%d | %s%d", letter, i, letter, i+1)
		switch i {
		case 0:
			name = first
		case len(at) - 1:
			name = last
		}
		t.rows = append(t.rows, []string{name, tenth(mm)})
	}
	b.topic(heading, func(b *book) { b.table(t) })
}

// corners lists every sheet's cell, in pasting order.
func (b *book) corners() {
	heading := "Every cell"
	if b.job.bareCells() > 0 {
		heading = "Every cell that has a sheet"
	}
	b.need(24 + tableStyle.LeadMM*float64(min(9, len(b.job.Plan.Sheets)))) // the words stay with the table's beginning
	b.side(heading)
	b.para("In mm: left and right from the print\u2019s left edge, top and bottom from its upper edge. The order is " +
		"the order of pasting; the number is the page of sheets.pdf.")
	p := b.job.Plan
	// Columns are as wide as the widest that they hold, so that two panels go on a page.
	figures, name := tableHead.Width("bottom"), tableHead.Width("sheet")
	for _, mm := range []float64{p.Backdrop.WidthMM, p.Backdrop.HeightMM} {
		figures = max(figures, tableStyle.Width(tenth(mm)))
	}
	for _, s := range p.Sheets {
		name = max(name, tableStyle.Bold().Width(s.Name))
	}
	t := table{
		columns: []column{
			{"page", true, tableHead.Width("page")}, {"sheet", false, name + 1},
			{"left", true, figures + 1}, {"top", true, figures + 1}, {"right", true, figures + 1}, {"bottom", true, figures + 1},
		},
		gapMM: 6, wide: true, boldColumn: 1,
	}
	for _, s := range p.Sheets {
		t.rows = append(t.rows, []string{fmt.Sprint(s.Page), s.Name, tenth(s.Cell.XMM), tenth(s.Cell.YMM),
			tenth(s.Cell.RightMM()), tenth(s.Cell.BottomMM())})
	}
	b.table(t)
}
