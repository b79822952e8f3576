package report

import (
	"math"

	"dropsheet/layout"
)

// offShare is how far a printed length may be off, as a share of it: what can be read with a lens, and no more
// than the seams bear (common practice, no source).
const offShare = 0.002

// leastOffMM is the least that an eye tells on a steel rule, with a lens (common practice, no source). It is also as
// much as a mark is thick.
const leastOffMM = 0.2

// Off is how far a printed length may be off its true one.
func Off(mm float64) Figure { return Length(math.Max(leastOffMM, math.Floor(offShare*mm*10+0.5)/10)) }

// leastCellOffMM is the least that a cell may be off from mark to mark: more than a mark is thick.
const leastCellOffMM = 0.3

// offBetweenMarks is how far the distance of two marks may be off its true one.
func offBetweenMarks(mm float64) Figure { return Length(math.Max(leastCellOffMM, Off(mm).Value)) }

// Marks is what a sheet carries to be measured by.
type Marks struct {
	Sheet        layout.Sheet // the one to print and measure before the others
	RuleMM       float64      // length of its check rule; 0 for none
	Across, Down bool         // whether both ends of its cell are marked in a strip, across and down
}

// TrueSize tells what the sheet that is printed first must measure, and what it does to the job when it does not.
func (r *Report) TrueSize(m Marks) (facts []Fact) {
	// Before it is pasted a sheet is smaller by what it will grow.
	b, cell, ruleMM := r.shot.Backdrop, m.Sheet.Cell, m.RuleMM
	growsX, growsY := b.Printer.Grown(b.Orientation)
	cell.WidthMM, cell.HeightMM, ruleMM = cell.WidthMM/growsX, cell.HeightMM/growsY, ruleMM/growsY
	on, what := say("on page %s it", m.Sheet.Page), say("page %s", m.Sheet.Page)
	if len(r.shot.Sheets) == 1 {
		on, what = say("it"), say("it")
	}
	if m.RuleMM > 0 {
		facts = append(facts, Fact{Key: "true.rule", Text: say("%s is %s long", on, strong(Length(ruleMM)))},
			Fact{Key: "true.stop", Text: say("if the %s are off by more than %s, stop", Length(ruleMM), Off(ruleMM))})
		if growsY != 1 {
			facts = append(facts, Fact{Key: "true.pasted", Text: say("pasted and dry, it must be %s", Length(m.RuleMM))})
		}
	} else {
		facts = append(facts, Fact{Key: "true.stop", Text: say("if the width is off by more than %s, or the height by more "+
			"than %s, stop", offBetweenMarks(cell.WidthMM), offBetweenMarks(cell.HeightMM))})
	}
	var must Text
	switch {
	case m.Across && m.Down:
		must = say("%s, within %s across and %s down", strong(Size(cell.WidthMM, cell.HeightMM)),
			offBetweenMarks(cell.WidthMM),
			offBetweenMarks(cell.HeightMM))
	case m.Across:
		must = say("%s across, within %s", strong(Length(cell.WidthMM)), offBetweenMarks(cell.WidthMM))
	case m.Down:
		must = say("%s from top to bottom, within %s", strong(Length(cell.HeightMM)), offBetweenMarks(cell.HeightMM))
	}
	if must != nil {
		facts = append(facts, Fact{Key: "true.cell", Text: say("%s must measure %s", what, must)})
	}
	return append(facts, r.whenOff(m)...)
}

// whenOff tells what it does to this job when the sheet is off by what can just be told.
func (r *Report) whenOff(m Marks) []Fact {
	p := r.shot.Plan
	b, cell := p.Backdrop, m.Sheet.Cell
	measuredMM := m.RuleMM
	if measuredMM == 0 {
		measuredMM = max(cell.WidthMM, cell.HeightMM)
	}
	off := Off(measuredMM)
	if m.RuleMM == 0 {
		off = offBetweenMarks(measuredMM)
	}
	share := off.Value / measuredMM
	at := say("at %s on %s", off, Length(measuredMM))
	if len(p.Sheets) == 1 {
		return []Fact{{Key: "true.wrong", Text: say("%s the print is wrong by %s", at,
			strong(Length(share*max(b.WidthMM, b.HeightMM))))}}
	}
	columns, rows, wideMM, highMM := span(p)
	longMM, inRow, cellMM := wideMM, columns, cell.WidthMM
	if rows > 1 && (highMM > wideMM || columns == 1) {
		longMM, inRow, cellMM = highMM, rows, cell.HeightMM
	}
	return []Fact{
		{Key: "true.wrong", Text: say("%s a cell of %s is wrong by %s", at, Length(cellMM), strong(Length(share*cellMM)))},
		{Key: "true.adds", Text: say("over %s in a row that makes %s, which the pencil grid shares out over the seams",
			Count(inRow, "sheet", "sheets"), strong(Length(share*longMM)))},
	}
}

// span is the part of the board, as columns and rows, that holds all sheets.
func span(p layout.Plan) (columns, rows int, widthMM, heightMM float64) {
	s := p.Sheets[0]
	left, right, top, bottom := s.Column, s.Column, s.Row, s.Row
	for _, s := range p.Sheets {
		left, right, top, bottom = min(left, s.Column), max(right, s.Column), min(top, s.Row), max(bottom, s.Row)
	}
	xs, ys := p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM
	return right - left + 1, bottom - top + 1, xs[right] - xs[left-1], ys[bottom] - ys[top-1]
}
