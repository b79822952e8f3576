package guide

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// cell is a place on the board, by row and column from 1.
type cell struct{ row, column int }

// takenCells are those that have a sheet.
func (j Job) takenCells() map[cell]bool {
	taken := make(map[cell]bool, len(j.Plan.Sheets))
	for _, s := range j.Plan.Sheets {
		taken[cell{s.Row, s.Column}] = true
	}
	return taken
}

// cells outlines every cell that has a sheet on a drawing of the board.
func (b *book) cells(at layout.Rect, p pdf.Pen) {
	if len(b.bare) > 0 {
		for _, s := range b.job.Plan.Sheets {
			b.Frame(b.onFigure(at, s.Cell), p)
		}
		return
	}
	board := b.job.Plan.Backdrop
	k := at.WidthMM / board.WidthMM
	for _, x := range board.XEdgesMM {
		b.Line(at.XMM+k*x, at.YMM, at.XMM+k*x, at.BottomMM(), p)
	}
	for _, y := range board.YEdgesMM {
		b.Line(at.XMM, at.YMM+k*y, at.RightMM(), at.YMM+k*y, p)
	}
}

// bareBoard shades on a drawing of the board what has no sheet.
func (b *book) bareBoard(at layout.Rect) {
	for _, piece := range b.bare {
		b.Fill(b.onFigure(at, piece), bareShade)
	}
}

// edged tells whether the picture's edge is another than the board's.
func (j Job) edged() bool { return j.surrounded() || !j.Plan.Picture.Plain() }

// pictureEdge is the edge of what is printed of the picture, on a drawing of the board.
func (b *book) pictureEdge(at layout.Rect) []layout.Point {
	k := at.WidthMM / b.job.Plan.Backdrop.WidthMM
	edge := b.job.Plan.PictureOutline()
	for i, p := range edge {
		edge[i] = layout.Point{XMM: at.XMM + k*p.XMM, YMM: at.YMM + k*p.YMM}
	}
	return edge
}

// edgeWords says what the dashed line on the board is, and what lies beyond it.
func (b *book) edgeWords() string {
	if !b.job.edged() {
		return ""
	}
	text := "The dashed line is the picture\u2019s edge. " + b.told("build.picture", "coverage.surround") + " "
	if b.job.surrounded() {
		return text
	}
	text += "Beyond it the paper stays white. "
	if b.job.bareCells() > 0 {
		text += "Cells without picture have no sheet: shaded here, they are bare board. "
	}
	return text
}

// nameRead says by an example how a cell's name is read.
func (j Job) nameRead() string {
	if s := j.sample(); j.bareCells() > 0 {
		return fmt.Sprintf("%s is the cell in row %d and column %d", s.Name, s.Row, s.Column)
	}
	return "R2C3 is the third cell in the second row"
}

// bareCells is how many cells have no sheet.
func (j Job) bareCells() int {
	return j.Plan.Backdrop.Columns*j.Plan.Backdrop.Rows - len(j.Plan.Sheets)
}
