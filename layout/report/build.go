package report

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// build tells what the board is built and set up by.
func (r *Report) build() []Fact {
	p := r.shot.Plan
	b := p.Backdrop
	facts := []Fact{
		{Key: "build.scene", Text: say("%s, refractive index %s; board %s behind it, %s %s in front of it", r.bodyAndSize(),
			Figure{Path: "drop.index", Value: p.Drop.Index, Decimals: 4}, length("drop.distance_mm", p.Drop.DistanceMM),
			r.lens(), length("drop.camera_distance_mm", p.Drop.CameraMM))},
		{Key: "build.stands", Text: r.stands()},
		{Key: "build.middle", Text: say("the line from the %s through the %s meets the board %s from the print's left "+
			"edge and %s below its upper edge", r.lens(), r.body, strong(Length(b.WidthMM/2)), strong(Length(b.HeightMM/2)))},
		{Key: "build.outline", Text: say("draw the print's outline on the board, %s, with a border all round",
			strong(Size(b.WidthMM, b.HeightMM)))},
		{Key: "build.square", Text: say("it is square when both diagonals measure %s", strong(Length(diagonalMM(b))))},
	}
	if on := p.PictureOnBoard(); on != b.Board() {
		facts = append(facts, Fact{Key: "build.picture", Text: say("the picture begins %s from the print's left edge "+
			"and %s below its upper edge", Length(on.XMM), Length(on.YMM))})
	}
	if b.Printer != nil {
		facts = append(facts, Fact{Key: "build.scale", Text: say("it prints %s across and %s along the feed, and the sheets "+
			"make up for that", PercentOff(b.Printer.AcrossScale), PercentOff(b.Printer.FeedScale))})
	}
	return append(append(facts, r.grows()), r.handwork()...)
}

// stands says what stands or falls between the lens and the board.
func (r *Report) stands() Text {
	p := r.shot.Plan
	rod := say("the rod")
	if Material(p.Drop) != nil {
		rod = say("the %s", RodToGet(p.Drop))
	}
	switch m := Material(p.Drop); {
	case p.Drop.Body == flip.UprightRod:
		return say("%s, %s, stands upright and parallel to the board", rod, Measures(p))
	case p.Drop.Body == flip.LevelRod:
		return say("%s, %s, lies level and parallel to the board", rod, Measures(p))
	case p.Drop.Body == flip.Hanging:
		of := Text(nil)
		if m != nil {
			of = say(" of %s", m)
		}
		return say("a drop%s, %s, hangs from its holder, upright over one place", of, Measures(p))
	case Solid(p.Drop):
		return say("a ball of %s, %s, hangs or stands before the board", m, Measures(p))
	case m != nil:
		return say("drops of %s, %s, fall at one place", m, Measures(p))
	}
	return say("drops, %s, fall at one place", Measures(p))
}

// What is bought beyond the bare need (common practice, no source).
const (
	boardStepMM = 10.0 // boards and rules are not cut finer
	spareShare  = 0.1  // of the sheets, for slips of the knife
	leastSpares = 2
)

// buy tells what the plan asks for that is bought.
func (r *Report) buy() []Fact {
	p := r.shot.Plan
	b, n := p.Backdrop, len(p.Sheets)
	spares := max(leastSpares, int(math.Ceil(spareShare*float64(n))))
	printer := say("a printer that takes %s and prints to within %s of the paper's edge", b.Paper.Name, Length(b.MarginMM))
	switch {
	case b.Printer == nil && b.Borderless():
		printer = say("a printer that prints %s borderless", b.Paper.Name)
	case b.Printer == nil && b.Margins != nil:
		m := b.Margins
		printer = say("a printer that takes %s and prints to within %s of its left edge, %s of its upper, %s of its "+
			"right and %s of its lower one", b.Paper.Name, Length(m.LeftMM), Length(m.TopMM), Length(m.RightMM),
			Length(m.BottomMM))
	case b.Printer != nil:
		printer = say("the printer measured as %s, with %s in it", strong(b.Printer.Name), b.Paper.Name)
	}
	least := func(mm float64) Figure { return WholeMM(roundUp(mm, boardStepMM)) }
	longest, longestIs := longestCutMM(p), "as the longest cut is from mark to mark"
	if b.Uncut {
		longest, longestIs = max(b.WidthMM, b.HeightMM), "as the print's longer side is"
	}
	return []Fact{
		{Key: "buy.paper", Text: say("%s of %s paper for the backdrop, and %s for slips",
			strong(Count(n, "sheet", "sheets")), strong(b.Paper.Name), Count(spares, "spare", "spares"))},
		{Key: "buy.printer", Text: printer},
		{Key: "buy.board", Text: say("a flat, stiff board of at least %s: the print, and a border of %s all round to hold "+
			"it by", strong(size(least(b.WidthMM+2*layout.BorderMM), least(b.HeightMM+2*layout.BorderMM))),
			WholeMM(layout.BorderMM))},
		{Key: "buy.rule", Text: say("a steel rule at least %s long, %s", strong(least(longest)), longestIs)},
		{Key: "buy.tape", Text: say("a tape measure longer than the print's diagonal, %s", strong(Far(diagonalMM(b))))},
		{Key: "buy.body", Text: r.toGet()},
	}
}

// toGet says what serves as the drop or rod.
func (r *Report) toGet() Text {
	p := r.shot.Plan
	index := say("a refractive index of %s", strong(Figure{Path: "drop.index", Value: p.Drop.Index, Decimals: 4}))
	measures := strong(Measures(p))
	m := Material(p.Drop)
	if p.Drop.Body.Rod() {
		rod := strong(RodToGet(p.Drop))
		switch {
		case Solid(p.Drop):
			return say("a %s, %s, and a firm holder for it", rod, measures)
		case m != nil:
			return say("a thin-walled %s and free of bubbles, %s, and a firm holder for it", rod, measures)
		}
		return say("a %s, %s, of %s, and a firm holder for it", rod, measures, index)
	}
	if p.Drop.Body == flip.Hanging {
		return say("%s, a tube or needle %s wide outside and cut square, fed by a syringe, a firm stand that holds it "+
			"upright, a tray below it, and a cloth", strong(m),
			strong(Figure{Path: "drop.held_mm", Value: p.Drop.HeldMM, Unit: MM, Decimals: 2}))
	}
	const fall = "something that lets drops of it fall at one place, a tray below it, and a cloth"
	switch out := p.Sight().Drop.Oblate(); {
	case Solid(p.Drop) && out:
		return say("a %s out of round, %s, and a thin stand or thread to hold it", strong(say("ball of %s", m)), measures)
	case Solid(p.Drop):
		return say("a %s, %s, and a thin stand or thread to hold it", strong(say("ball of %s", m)), measures)
	case m != nil:
		return say("%s, %s", strong(m), fall)
	}
	return say("a liquid of %s, %s", index, fall)
}

// longestCutMM is from mark to mark of the longest cut.
func longestCutMM(p layout.Plan) (longest float64) {
	for _, s := range p.Sheets {
		used := p.Backdrop.Used(s)
		left, top, right, bottom := p.Backdrop.Cut(s)
		if left || right {
			longest = max(longest, used.HeightMM)
		}
		if top || bottom {
			longest = max(longest, used.WidthMM)
		}
	}
	return longest
}

// diagonalMM is the diagonal of the print.
func diagonalMM(b layout.Backdrop) float64 { return math.Hypot(b.WidthMM, b.HeightMM) }

// roundUp rounds up to a whole number of steps; a hundredth of a millimetre over one, which no saw keeps, does not
// ask for the next.
func roundUp(mm, stepMM float64) float64 { return math.Ceil((mm-0.01)/stepMM) * stepMM }
