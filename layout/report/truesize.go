package report

import (
	"math"

	"dropsheet/layout"
)

// offShare is how far a printed length may be off, as a share of it: what can be read with a lens, and no more
// than the seams bear (common practice, no source).
const offShare = 0.002

// Off is how far a printed length may be off its true one.
func Off(mm float64) Figure { return Length(math.Max(0.1, math.Floor(offShare*mm*10+0.5)/10)) }

// Marks is what the first sheet carries to be measured by.
type Marks struct {
	RuleMM       float64 // length of its check rule; 0 for none
	Across, Down bool    // whether both ends of its cell are marked, across and down
	// LandingFromMM is how far past a seam the line begins that the next sheet must cover.
	LandingFromMM float64
}

// TrueSize tells what the first sheet must measure, and what it does to the job when it does not.
func (r *Report) TrueSize(m Marks) (facts []Fact) {
	cell := r.shot.Sheets[0].Cell
	on, what := "on page 1 it", "page 1"
	if len(r.shot.Sheets) == 1 {
		on, what = "it", "it"
	}
	if m.RuleMM > 0 {
		facts = append(facts, Fact{Key: "true.rule", Text: say("%s is %s long", on, strong(Length(m.RuleMM)))},
			Fact{Key: "true.stop", Text: say("if the %s are off by more than %s, stop", Length(m.RuleMM), Off(m.RuleMM))})
	} else {
		facts = append(facts, Fact{Key: "true.stop", Text: say("if the width is off by more than %s, or the height by more "+
			"than %s, stop", Off(cell.WidthMM), Off(cell.HeightMM))})
	}
	var must Text
	switch {
	case m.Across && m.Down:
		must = say("%s, within %s across and %s down", strong(Size(cell.WidthMM, cell.HeightMM)), Off(cell.WidthMM),
			Off(cell.HeightMM))
	case m.Across:
		must = say("%s across, within %s", strong(Length(cell.WidthMM)), Off(cell.WidthMM))
	case m.Down:
		must = say("%s from top to bottom, within %s", strong(Length(cell.HeightMM)), Off(cell.HeightMM))
	}
	if must != nil {
		facts = append(facts, Fact{Key: "true.cell", Text: say("%s must measure %s", what, must)})
	}
	return append(facts, r.whenOff(m)...)
}

// whenOff tells what a scale that is off by offShare does to this job.
func (r *Report) whenOff(m Marks) []Fact {
	p := r.shot.Plan
	b, cell := p.Backdrop, p.Sheets[0].Cell
	off := say("at %s on %s", Length(100*offShare), Length(100))
	if len(p.Sheets) == 1 {
		return []Fact{{Key: "true.wrong", Text: say("%s the print is wrong by %s", off,
			strong(Length(offShare*max(b.WidthMM, b.HeightMM))))}}
	}
	columns, rows, wideMM, highMM := span(p)
	longMM, inRow, cellMM := wideMM, columns, cell.WidthMM
	if rows > 1 && (highMM > wideMM || columns == 1) {
		longMM, inRow, cellMM = highMM, rows, cell.HeightMM
	}
	bares := ""
	if offShare*cellMM > m.LandingFromMM {
		bares = ", enough to bare it"
	}
	return []Fact{
		{Key: "true.landing", Text: say("the landing line, which the next sheet must cover, begins only %s past the seam",
			Length(m.LandingFromMM))},
		{Key: "true.wrong", Text: say("%s a cell of %s is wrong by %s%s", off, Length(cellMM),
			strong(Length(offShare*cellMM)), bares)},
		{Key: "true.adds", Text: say("over %s in a row that adds up to %s", Count(inRow, "sheet", "sheets"),
			strong(Length(offShare*longMM)))},
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
