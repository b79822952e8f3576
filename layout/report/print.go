package report

import (
	"fmt"
	"math"

	"dropsheet/layout"
)

// print tells how large the print is, and how it lies on paper.
func (r *Report) print() []Fact {
	p := r.shot.Plan
	pic, b := p.Picture, p.Backdrop
	fit := "it covers all that the %s sees at the fill (--fit cover)"
	if pic.Fit == layout.Inside {
		fit = "all of it lies inside what the %s sees at the fill (--fit inside)"
	}
	sheets := say("%s of %s, %s: %s across, %s down", strong(counted("", len(p.Sheets), "sheet", "sheets")), b.Paper.Name,
		string(b.Orientation), whole("backdrop.columns", float64(b.Columns), Bare),
		whole("backdrop.rows", float64(b.Rows), Bare))
	switch {
	case b.Uncut:
		sheets = say("%s of %s, %s, that hangs uncut", strong(counted("", 1, "sheet", "sheets")), b.Paper.Name,
			string(b.Orientation))
	case r.eitherWay:
		sheets = say("%s, or as many the other way: make takes the one whose seams show less in the artwork", sheets)
	}
	facts := []Fact{
		{Key: "print.size", Name: "print", Text: say("%s", strong(size(length("picture.width_mm", pic.WidthMM),
			length("picture.height_mm", pic.HeightMM))))},
		{Key: "print.fit", Text: say(fit, r.body)},
		{Key: "print.sheets", Name: "sheets", Text: sheets},
	}
	if b.Copies > 1 {
		facts = append(facts, Fact{Key: "print.copies", Text: say("it carries the print %s times, each with its own cut "+
			"marks: cut them apart", Figure{Path: "backdrop.copies", Value: float64(b.Copies)})})
	}
	if cells := b.Columns * b.Rows; cells > len(p.Sheets) {
		facts = append(facts, Fact{Key: "print.bare", Text: say("%s of the %s cells carry picture; the others have no sheet",
			whole("", float64(len(p.Sheets)), Bare), whole("", float64(cells), Bare))})
	}
	if n := solidSheets(p); n > 0 {
		facts = append(facts, Fact{Key: "print.solid", Text: say("%s of them carry nothing but the colour around the "+
			"picture, solid ink: a board painted so, or cloth, would do instead", Figure{Value: float64(n)})})
	}
	margin := say("margins as measured")
	switch mm := func(v float64) Figure { return Figure{Value: v, Decimals: 2} }; {
	case b.Printer == nil && b.Margins != nil:
		m := b.Margins
		margin = say("margins left %s, top %s, right %s, bottom %s mm", mm(m.LeftMM), mm(m.TopMM), mm(m.RightMM),
			mm(m.BottomMM))
	case b.Printer == nil:
		margin = say("margin %s", Figure{Path: "backdrop.margin_mm", Value: b.MarginMM, Unit: MM, Decimals: 2})
	}
	if b.Uncut {
		facts = append(facts, Fact{Key: "print.paper", Text: margin})
		facts = append(facts, r.whiteRound()...)
	} else {
		facts = append(facts, Fact{Key: "print.paper", Text: say("lap %s, %s", Figure{Path: "backdrop.lap_mm",
			Value: b.LapMM, Unit: MM, Decimals: 2}, margin)})
	}
	if near := r.nearby(true); near != nil {
		facts = append(facts, Fact{Key: "print.choices", Text: say("nearby: %s", near)})
	}
	if b.Printer != nil {
		facts = append(facts, Fact{Key: "print.printer", Name: "printer",
			Text: say("%s; the sheets make up for it", Printer(*b.Printer))})
	}
	return facts
}

// nearby tells how large a print numbers of sheets near the plan's hold, with the lie of the paper where that is
// another; nothing where they are not known.
func (r *Report) nearby(lies bool) Text {
	near := r.choices()
	if len(near) < 2 {
		return nil
	}
	var each []Text
	for i, c := range near {
		path := fmt.Sprintf("choices.%d.", i)
		most := Figure{Path: path + "width_mm", Value: c.WidthMM, Unit: MM, rounds: down}
		text := say("%s at %s", whole(path+"sheets", float64(c.Sheets), Bare), most.bare())
		if i == 0 {
			text = say("%s at up to %s wide", counted(path+"sheets", c.Sheets, "sheet", "sheets"), most)
		}
		if lies && c.Orientation != r.shot.Backdrop.Orientation {
			text = say("%s (%s)", text, string(c.Orientation))
		}
		each = append(each, text)
	}
	return join(each, ", ")
}

// solidSheets is how many sheets lie wholly beyond the picture, on a board that goes on in one colour.
func solidSheets(p layout.Plan) (n int) {
	if _, colour := p.Backdrop.Surround.Colour(); !colour {
		return 0
	}
	picture := p.PictureOnBoard()
	for _, s := range p.Sheets {
		if c := s.Cell; c.XMM >= picture.RightMM() || c.RightMM() <= picture.XMM || c.YMM >= picture.BottomMM() ||
			c.BottomMM() <= picture.YMM {
			n++
		}
	}
	return n
}

// counted is how many of a thing there are.
func counted(path string, n int, one, many Unit) Figure {
	if n == 1 {
		many = one
	}
	return Figure{Path: path, Value: float64(n), Unit: many}
}

// Printer tells a measured printer in a line.
func Printer(p layout.Printer) Text {
	m := p.Margins
	mm := func(v float64) Figure { return Figure{Value: v, Decimals: 2} }
	t := say("%s on %s: across %s, feed %s; margins left %s, top %s, right %s, bottom %s mm",
		fmt.Sprintf("%q", p.Name), p.Paper.Name, PercentOff(p.AcrossScale), PercentOff(p.FeedScale), mm(m.LeftMM),
		mm(m.TopMM), mm(m.RightMM), mm(m.BottomMM))
	if p.Growth != (layout.Growth{}) {
		t = say("%s; pasted, its paper comes %s across and %s along the feed", t, PercentOff(p.Growth.Across),
			PercentOff(p.Growth.Feed))
	}
	return t
}

// PercentOff tells a scale as what is too much or too little.
func PercentOff(scale float64) Text {
	off := Figure{Value: math.Abs(scale - 1), Unit: Percent, Decimals: 2}
	switch {
	case off.Number() == "0":
		return say("true")
	case scale < 1:
		return say("%s short", off)
	}
	return say("%s long", off)
}
