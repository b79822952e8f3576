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
// told of each edge; nil where one margin serves for all. A sheet that is not cut has no marks to be kept off an edge.
func (b Backdrop) reaches() *Printer {
	if b.Printer != nil {
		return b.Printer
	}
	told := Margins{}
	switch {
	case b.Margins != nil:
		told = *b.Margins
	case b.MarginMM > 0:
		return nil
	}
	if !b.Uncut {
		told = told.offTheEdge(b.Paper)
	}
	return &Printer{Paper: b.Paper, AcrossScale: 1, FeedScale: 1, Margins: told}
}

// lostShare is what may be lost beyond an edge of a page that is printed borderless, as a share of the page: drivers
// enlarge such pages by some 2 to 3 % (common practice, no source), half of it over either edge.
const lostShare = 0.015

// offTheEdge is margins of which those that are none keep the marks where they come out, though a driver enlarge the
// page: a sheet whose marks are there, and whose check rule is too long, tells what is wrong.
func (m Margins) offTheEdge(paper Paper) Margins {
	for _, side := range []struct {
		mm      *float64
		alongMM float64
	}{{&m.LeftMM, paper.WidthMM}, {&m.RightMM, paper.WidthMM}, {&m.TopMM, paper.HeightMM}, {&m.BottomMM, paper.HeightMM}} {
		if *side.mm == 0 {
			*side.mm = lostShare * side.alongMM
		}
	}
	return m
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

// room is where on its page a sheet may lie, at scale 1: what a printer reaches whose margins
// are told of each edge, or on the paper.
func (b Backdrop) room() Rect {
	switch {
	case b.Printer == nil && b.Margins == nil:
		page := b.Page()
		return Rect{0, 0, page.WidthMM, page.HeightMM}
	case b.Printer == nil:
		return Printer{Margins: *b.Margins}.Live(b.Paper, b.Orientation)
	}
	return b.Reached()
}

// contains tells whether q lies in r, but for rounding.
func (r Rect) contains(q Rect) bool {
	return q.XMM >= r.XMM-tolerance && q.YMM >= r.YMM-tolerance && q.RightMM() <= r.RightMM()+tolerance &&
		q.BottomMM() <= r.BottomMM()+tolerance
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

// Borderless tells whether the printer prints to an edge of the paper.
func (b Backdrop) Borderless() bool {
	switch {
	case b.Printer != nil:
		return b.Printer.Margins.narrowestMM() == 0
	case b.Margins != nil:
		return b.Margins.narrowestMM() == 0
	}
	return b.MarginMM == 0
}

func (m Margins) widestMM() float64 { return max(m.LeftMM, m.TopMM, m.RightMM, m.BottomMM) }
