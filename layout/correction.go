package layout

import "fmt"

// Correction is how a page is drawn so that what comes out of the printer is true: stretched about the middle
// of what the printer reaches, which is where a sheet lies, so that it stays clear of the margins. From page
// mm at scale 1, which is what all of layout tells, to page mm as drawn:
//
//	drawn = About + (at - About) * (X, Y)
type Correction struct {
	About Point
	X, Y  float64
}

// Correction is how the backdrop's pages are drawn: as they stand, but for a measured printer.
func (b Backdrop) Correction() Correction {
	x, y := b.scale()
	return Correction{b.middle(), 1 / x, 1 / y}
}

// None tells that a page is drawn as it stands.
func (c Correction) None() bool { return c.X == 1 && c.Y == 1 }

// Drawn is where a rectangle of the page at scale 1 is drawn.
func (c Correction) Drawn(r Rect) Rect {
	if c.None() {
		return r // to the last bit
	}
	return Rect{c.About.XMM + (r.XMM-c.About.XMM)*c.X, c.About.YMM + (r.YMM-c.About.YMM)*c.Y, r.WidthMM * c.X,
		r.HeightMM * c.Y}
}

// scale is what the printer makes of one along the page's x and y; 1 of one that was not measured.
func (b Backdrop) scale() (x, y float64) {
	if b.Printer == nil {
		return 1, 1
	}
	return b.Printer.Scale(b.Orientation)
}

// reaches is the printer whose margins count: the measured one, or one that prints true within the margins that were
// told of each edge; nil where one margin serves for all.
func (b Backdrop) reaches() *Printer {
	if b.Printer == nil && b.Margins != nil {
		return &Printer{Paper: b.Paper, AcrossScale: 1, FeedScale: 1, Margins: *b.Margins}
	}
	return b.Printer
}

// live is how much a page holds of the board, in mm that come out true.
func (b Backdrop) live() Size {
	if b.reaches() == nil {
		page := b.Page()
		return Size{page.WidthMM - 2*b.MarginMM, page.HeightMM - 2*b.MarginMM}
	}
	live := b.reaches().Live(b.Paper, b.Orientation)
	x, y := b.scale()
	return Size{live.WidthMM * x, live.HeightMM * y}
}

// middle is where on its page the middle of what a sheet uses lies: in the middle of what the printer reaches.
func (b Backdrop) middle() Point {
	if b.reaches() == nil {
		page := b.Page()
		return Point{page.WidthMM / 2, page.HeightMM / 2}
	}
	live := b.reaches().Live(b.Paper, b.Orientation)
	return Point{live.XMM + live.WidthMM/2, live.YMM + live.HeightMM/2}
}

// room is where on its page a sheet may lie, at scale 1: what a measured printer reaches, or on the paper.
func (b Backdrop) room() Rect {
	if b.reaches() == nil {
		page := b.Page()
		return Rect{0, 0, page.WidthMM, page.HeightMM}
	}
	live, middle := b.live(), b.middle()
	return Rect{middle.XMM - live.WidthMM/2, middle.YMM - live.HeightMM/2, live.WidthMM, live.HeightMM}
}

// contains tells whether q lies in r, but for rounding.
func (r Rect) contains(q Rect) bool {
	return q.XMM >= r.XMM-tolerance && q.YMM >= r.YMM-tolerance && q.RightMM() <= r.RightMM()+tolerance &&
		q.BottomMM() <= r.BottomMM()+tolerance
}

// onPage is where a sheet's cell lies on its page, at scale 1.
func (b Backdrop) onPage(s Sheet) Point {
	used, middle := b.Used(s), b.middle()
	return Point{
		(2*middle.XMM-used.WidthMM)/2 + s.Cell.XMM - used.XMM,
		(2*middle.YMM-used.HeightMM)/2 + s.Cell.YMM - used.YMM,
	}
}

// marginMM is the margin that holds along every edge.
func (s Setup) marginMM() float64 {
	switch {
	case s.Printer != nil:
		return s.Printer.Margins.widestMM()
	case s.Margins != nil:
		return s.Margins.widestMM()
	}
	return s.MarginMM
}

// String is the margins as they are typed: left, top, right, bottom.
func (m Margins) String() string {
	return fmt.Sprintf("%g,%g,%g,%gmm", m.LeftMM, m.TopMM, m.RightMM, m.BottomMM)
}

// narrowestMM is the least of them.
func (m Margins) narrowestMM() float64 { return min(m.LeftMM, m.TopMM, m.RightMM, m.BottomMM) }

// Borderless tells whether sheets are printed to an edge of the paper.
func (b Backdrop) Borderless() bool {
	if p := b.reaches(); p != nil {
		return p.Margins.narrowestMM() == 0
	}
	return b.MarginMM == 0
}

func (m Margins) widestMM() float64 { return max(m.LeftMM, m.TopMM, m.RightMM, m.BottomMM) }

// Reprint places some of the plan's sheets anew on other paper or for another printer, nil for one that was
// not measured. Cells, laps and marks stay as they are; where they lie on the page, and how it is drawn, may
// change. The paper lies as in the plan if it holds all of them so, and otherwise the other way. Of a printer
// that was not measured nothing is known if the plan is for one that was: then the paper's edge is the only
// bound.
//
// margins, if not nil, are those of a printer that was not measured. Where the paper does not hold a sheet as it
// was, its laps are printed narrower, down to the least that carries a mark and paste.
func (p Plan) Reprint(sheets []Sheet, paper Paper, printer *Printer, margins *Margins) (Plan, []Sheet, error) {
	b := p.Backdrop
	switch {
	case printer != nil:
		b.MarginMM = printer.Margins.widestMM()
	case b.Printer != nil:
		b.MarginMM = 0
	}
	if printer != nil {
		b.Margins = nil
	}
	if margins != nil {
		b.Margins, b.MarginMM = margins, margins.widestMM()
	}
	b.Paper, b.Printer = paper, printer
	turned := b
	turned.Orientation = Landscape
	if b.Orientation == Landscape {
		turned.Orientation = Portrait
	}
	for _, b := range []Backdrop{b, turned, b.lapped(sheets), turned.lapped(sheets)} {
		if b.tooLarge(sheets) != nil {
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
	return Plan{}, nil, b.tooLarge(sheets)
}

// lapped is the backdrop with laps as narrow as lets the paper hold the sheets, but none below the least.
func (b Backdrop) lapped(sheets []Sheet) Backdrop {
	for b.LapMM > minLapMM && b.tooLarge(sheets) != nil {
		b.LapMM = max(minLapMM, b.LapMM-0.5)
	}
	return b
}

// tooLarge tells of the first sheet that the paper does not hold as it lies.
func (b Backdrop) tooLarge(sheets []Sheet) error {
	live := b.live()
	for _, s := range sheets {
		used := b.Used(s)
		if used.WidthMM <= live.WidthMM+tolerance && used.HeightMM <= live.HeightMM+tolerance {
			continue
		}
		within := fmt.Sprintf("within margins of %gmm", b.MarginMM)
		again := fmt.Sprintf("--paper %s", b.Paper.Name)
		switch {
		case b.Printer != nil:
			within = fmt.Sprintf("within the margins of printer %q", b.Printer.Name)
			again += fmt.Sprintf(" --printer %q", b.Printer.Name)
		case b.Margins != nil:
			within = "within margins of " + b.Margins.String()
			again += " --margin " + b.Margins.String()
		}
		return fmt.Errorf("sheet %s needs %.1fx%.1fmm for its cell, laps and strips, and %q, %s, holds %.1fx%.1fmm %s: "+
			"take paper or a printer that holds it, or make the whole job again for this one (dropsheet make JOB %s)",
			s.Name, used.WidthMM, used.HeightMM, b.Paper.Name, b.Orientation, max(live.WidthMM, 0), max(live.HeightMM, 0),
			within, again)
	}
	return nil
}
