package report

import (
	"fmt"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// covers tells what surrounds the picture and what the frame sees of the board, with what mends it.
func (r *Report) covers() []Fact {
	c := r.coverage()
	var facts []Fact
	if text := r.surround(); text != nil {
		facts = append(facts, Fact{Key: "coverage.surround", Name: "surround", Text: text})
	}
	facts = append(facts, Fact{Key: "coverage.sees", Name: "coverage",
		Text: say("past the %s the frame takes in %s at the board, %s of the backdrop", r.body,
			strong(size(length("coverage.sees_mm.width", c.Sees.WidthMM), length("coverage.sees_mm.height", c.Sees.HeightMM))),
			smallShare("coverage.backdrop_share", c.BackdropShare))})
	if c.Covered() && c.PrintEnds == nil {
		facts = append(facts, Fact{Key: "coverage.none", Text: say("no edge of the board shows")})
	}
	if !c.Covered() {
		facts = append(facts, Fact{Key: "coverage.edges", Asks: true, Text: say("the board's edge shows: %s", r.edges())},
			Fact{Key: "coverage.needs", Asks: true, Text: say("a board of %s would fill the frame",
				strong(size(boardNeeds("width", c.Needs.WidthMM), boardNeeds("height", c.Needs.HeightMM))))})
	}
	if c.PrintEnds != nil {
		facts = append(facts, r.printEnds()...)
	}
	return facts
}

// boardNeeds is a side of a board that fills the frame, in whole millimetres.
func boardNeeds(side string, mm float64) Figure {
	return Figure{Path: "coverage.needs_mm." + side, Value: mm, Unit: MM, rounds: up}
}

// surround says what fills the board beyond the picture.
func (r *Report) surround() Text {
	p := r.shot.Plan
	b := p.Backdrop
	board := size(length("backdrop.width_mm", b.WidthMM), length("backdrop.height_mm", b.HeightMM))
	switch beyond := b.WidthMM > p.Picture.WidthMM || b.HeightMM > p.Picture.HeightMM; {
	case b.Surround == "":
		return nil
	case beyond && b.Surround == layout.Stretch:
		return say("beyond the picture its edge goes on, to a backdrop of %s", board)
	case beyond:
		return say("beyond the picture the backdrop goes on in %s, to %s", b.Surround.Word(), board)
	case !p.Picture.Plain():
		return say("what the picture leaves of the backdrop is %s", b.Surround.Word())
	}
	return say("none is needed: the picture fills the frame by itself")
}

// edges says which edges of the board show, and where.
func (r *Report) edges() Text {
	var parts []Text
	edges := r.coverage().Edges
	for i := 0; i < len(edges); i += 2 { // opposite edges stand together
		a, b := edges[i], edges[i+1]
		axis, px := "x", r.shot.Camera.WidthPx
		if a.Side == "top" {
			axis, px = "y", r.shot.Camera.HeightPx
		}
		if a.AtPx < 0 {
			parts = append(parts, say("%s and %s only as a blur, from %s outside the frame", a.Side, b.Side,
				whole("", b.AtPx-float64(px), Pixels)))
			continue
		}
		at := func(i int, e shot.BoardEdge) Figure {
			return whole(fmt.Sprintf("coverage.edges.%d.at_px", i), e.AtPx, Bare)
		}
		parts = append(parts, say("%s and %s at %s = %s and %s pixels", a.Side, b.Side, axis, at(i, a), at(i+1, b)))
	}
	return join(parts, ", ")
}

// printEnds says where the print ends inside the frame, how much of the view that leaves bare, and what fills it.
func (r *Report) printEnds() []Fact {
	ends := r.coverage().PrintEnds
	var parts []Text
	for i, e := range ends.Edges {
		axis := "x"
		if e.Side == "top" || e.Side == "bottom" {
			axis = "y"
		}
		parts = append(parts, say("%s at %s = %s at the furthest", e.Side, axis,
			whole(fmt.Sprintf("coverage.print_ends.edges.%d.at_px", i), e.AtPx, Pixels)))
	}
	where := join(parts, ", ")
	switch {
	case len(parts) == 0 && r.coverage().Covered():
		where = say("in its corners")
	case len(parts) == 0:
		where = say("short of the board's corners")
	}
	unprinted := say("only the blur of its edge shows")
	if ends.Share > 0 {
		unprinted = say("%s of what the frame sees past the %s is not printed",
			strong(smallShare("coverage.print_ends.unprinted_share", ends.Share)), r.body)
	}
	return []Fact{
		{Key: "coverage.print", Asks: true, Text: say("the print ends inside the frame: %s", where)},
		{Key: "coverage.unprinted", Asks: true, Text: unprinted},
		{Key: "coverage.print_mend", Text: r.printMend()},
	}
}

// printMend says what fills the rest.
func (r *Report) printMend() Text {
	p := r.shot.Plan
	if p.Backdrop.FillOnly {
		return say("--surround %s in place of --background fills it", Typed(p.Backdrop.Surround.Word()))
	}
	if p.Picture.Fit == layout.Inside { // else the picture fills the view by itself
		return say("--surround black fills it, --background black only what the %s sees", r.body)
	}
	return say("--surround black fills it")
}

// coverageRemedies tells what gets the board's edge out of the frame, in words that can be asked for.
func (r *Report) coverageRemedies() []Fact {
	if r.coverage().Covered() {
		return nil
	}
	m := r.remedies()
	var facts []Fact
	for _, way := range []struct {
		key, words string
		remedy     *shot.Remedy
	}{{"larger_fill", "print larger", m.Fill}, {"nearer", "hang it nearer", m.Nearer},
		{"further", "hang it further off", m.Further}} {
		if way.remedy != nil {
			facts = append(facts, Fact{Key: "remedies." + way.key, Asks: true,
				Text: say("%s: %s", way.words, askFor("coverage.remedies."+way.key, way.remedy))})
		}
	}
	if m.Surround != nil {
		facts = append(facts, Fact{Key: "remedies.surround", Asks: true,
			Text: say("surround it: %s", r.askForSurround("coverage.remedies.surround", m.Surround))})
	}
	if len(facts) == 0 && r.shot.Filled() {
		return []Fact{{Key: "remedies.none", Asks: true, Text: say("no print, distance or surround of up to 500 sheets " +
			"fills the frame: take a narrower one")}}
	}
	return facts
}

// remedies are what mends the coverage; where what is printed ends short of the board's edges no larger or
// nearer print fills the frame for certain, and a surround alone does.
func remedies(s shot.Shot) shot.Remedies {
	m := s.CoverageRemedies()
	if !s.Filled() {
		m.Fill, m.Nearer, m.Further = nil, nil, nil
	}
	return m
}

// askFor is how to ask for a remedy, and what comes of it.
func askFor(path string, m *shot.Remedy) Text {
	return say("%s, which fills %s, on %s sheets at most", asked(path, m), share(path+".fill", m.Fill),
		whole(path+".sheets_at_most", float64(m.SheetsAtMost), Bare))
}

// asked is a remedy's distance and print in the words of the command line.
func asked(path string, m *shot.Remedy) Text {
	mm := func(name string, v float64) Figure {
		return Figure{Path: path + name, Value: v, Decimals: 1}
	}
	return say("--distance %smm --print-size %sx%smm", mm(".distance_mm", m.DistanceMM),
		mm(".print_mm.width", m.Print.WidthMM), mm(".print_mm.height", m.Print.HeightMM))
}

// askForSurround is how to ask for this print in a larger surround: of the kind that there is, or with the
// picture's edge going on.
func (r *Report) askForSurround(path string, m *shot.Remedy) Text {
	mm := func(name string, v float64) Figure { return Figure{Path: path + ".backdrop_mm." + name, Value: v} }
	return say("%s --surround %s --surround-size %sx%smm, on %s sheets at most", asked(path, m),
		Typed(r.shot.SurroundKind().Word()), mm("width", m.Backdrop.WidthMM), mm("height", m.Backdrop.HeightMM),
		whole(path+".sheets_at_most", float64(m.SheetsAtMost), Bare))
}
