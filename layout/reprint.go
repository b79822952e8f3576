package layout

import "fmt"

// Reprint places some of the plan's sheets anew on other paper or for another printer, nil for one that was
// not measured. Cells and marks stay as they are; where they lie on the page, and how it is drawn, may
// change. The paper lies as in the plan if it holds all of them so, and otherwise the other way. Of a printer
// that was not measured nothing is known if the plan is for one that was: then the paper's edge is the only
// bound.
//
// margins, if not nil, are those of a printer that was not measured. Where the paper does not hold a sheet as it was,
// what is cut off comes narrower first, its strips, and then its laps, down to the least that carries marks and paste.
func (p Plan) Reprint(sheets []Sheet, paper Paper, printer *Printer, margins *Margins) (Plan, []Sheet, error) {
	b := p.Backdrop
	unknown := printer == nil && margins == nil && b.Printer != nil
	switch {
	case printer != nil:
		b.MarginMM = printer.Margins.widestMM()
	case unknown:
		b.MarginMM = 0
	}
	if printer != nil {
		b.Margins = nil
	}
	if margins != nil {
		b.Margins, b.MarginMM = margins, margins.widestMM()
	}
	b.Paper, b.Printer, b.NarrowStripMM = paper, printer, 0
	turned := b
	turned.Orientation = Landscape
	if b.Orientation == Landscape {
		turned.Orientation = Portrait
	}
	room := Backdrop.live
	if unknown {
		room = Backdrop.Page
	}
	for _, narrowed := range []func(Backdrop) Backdrop{
		func(b Backdrop) Backdrop { return b },
		func(b Backdrop) Backdrop { return b.stripped(sheets, room(b)) },
		func(b Backdrop) Backdrop { return b.stripped(sheets, room(b)).lapped(sheets, room(b)) },
	} {
		for _, b := range []Backdrop{narrowed(b), narrowed(turned)} {
			if b.tooLarge(sheets, room(b)) != nil {
				continue
			}
			placed := make([]Sheet, len(sheets))
			for i, s := range sheets {
				s.OnPage = b.onPage(s)
				placed[i] = s
			}
			p.Backdrop = b
			return p, placed, nil
		}
	}
	return Plan{}, nil, b.stripped(sheets, room(b)).lapped(sheets, room(b)).refused(sheets, room(b), p.Backdrop.LapMM)
}

// narrowingMM is how finely strips and laps are narrowed.
const narrowingMM = 0.5

// stripped is the backdrop with strips as narrow as lets the paper hold the sheets, but none below the least.
func (b Backdrop) stripped(sheets []Sheet, room Size) Backdrop {
	for b.stripMM() > leastStripMM && b.tooLarge(sheets, room) != nil {
		b.NarrowStripMM = max(leastStripMM, b.stripMM()-narrowingMM)
	}
	return b
}

// lapped is the backdrop with laps as narrow as lets the paper hold the sheets, but none below the least.
func (b Backdrop) lapped(sheets []Sheet, room Size) Backdrop {
	for b.LapMM > minLapMM && b.tooLarge(sheets, room) != nil {
		b.LapMM = max(minLapMM, b.LapMM-narrowingMM)
	}
	return b
}

// tooLarge is the first sheet that has no room; nil where all have.
func (b Backdrop) tooLarge(sheets []Sheet, room Size) *Sheet {
	for _, s := range sheets {
		if used := b.copiesSize(s); used.WidthMM > room.WidthMM+tolerance || used.HeightMM > room.HeightMM+tolerance {
			return &s
		}
	}
	return nil
}

// refused tells of the first sheet that has no room, as narrow as its strips and laps may be, and what to do. lapMM is
// what its laps were.
func (b Backdrop) refused(sheets []Sheet, room Size, lapMM float64) error {
	s := *b.tooLarge(sheets, room)
	used := b.copiesSize(s)
	within := fmt.Sprintf("within margins of %gmm", b.MarginMM)
	again := "--paper " + b.Paper.Name
	switch {
	case b.Printer != nil:
		within = fmt.Sprintf("within the margins of printer %q", b.Printer.Name)
		again += fmt.Sprintf(" --printer %q", b.Printer.Name)
	case b.Margins != nil:
		within = "within margins of " + b.Margins.String()
		again += " --margin " + b.Margins.String()
	}
	laps := ""
	if b.LapMM < lapMM {
		laps = fmt.Sprintf(" and laps of %gmm", b.LapMM)
	}
	with := fmt.Sprintf("even with strips of %gmm%s", b.stripMM(), laps)
	if b.Uncut {
		with = "for its print"
	}
	return fmt.Errorf("sheet %s needs %.1fx%.1fmm %s, and %q, %s, holds %.1fx%.1fmm %s\n"+
		"hint: take paper or a printer that holds it, or make the whole job again for this one (dropsheet make JOB %s)",
		s.Name, used.WidthMM, used.HeightMM, with, b.Paper.Name, b.Orientation, max(room.WidthMM, 0),
		max(room.HeightMM, 0), within, again)
}
