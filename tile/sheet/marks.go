package sheet

import (
	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Where marks lie, in mm.
const (
	// LandingFromMM is where a landing line's keyline starts, counted from the seam onto the lap: past it, so
	// that nothing of it can show in the cell, and the edge that is laid on the seam hides it.
	LandingFromMM = 0.1
	// pastSeamMM is the middle of a landing line.
	pastSeamMM = LandingFromMM + keylineMM + hairlineMM/2
	// cutMarkGapMM keeps cut marks off the bleed.
	cutMarkGapMM = 0.5
	// markMM is the length of registration marks, and of cut marks on a lap.
	markMM = 4.0
	// lapEndMM keeps a mark off the lap's outer edge.
	lapEndMM = 0.5
)

// edge is one side of a sheet's cell on its page.
type edge struct {
	upright  bool    // it runs down the page, rather than across
	at       float64 // its place on the other axis
	out      float64 // the direction away from the cell: -1 or 1
	from, to float64 // the cell's extent along it
	cut      bool
	bare     bool // it carries a lap that nothing is pasted over
	// cutFrom and cutTo tell whether the sides that it ends on are cut, openFrom and openTo whether these are cut or bare.
	cutFrom, cutTo, openFrom, openTo bool
}

// edges lists the sides of a sheet's cell.
func edges(p layout.Plan, s layout.Sheet, on layout.SheetPage) []edge {
	c, left, top, right, bottom := on.Cell, on.CutLeft, on.CutTop, on.CutRight, on.CutBottom
	bareLeft, bareTop, bareRight, bareBottom := Bare(p, s)
	openLeft, openTop, openRight, openBottom := left || bareLeft, top || bareTop, right || bareRight, bottom || bareBottom
	return []edge{
		{true, c.XMM, -1, c.YMM, c.BottomMM(), left, bareLeft, top, bottom, openTop, openBottom},
		{true, c.RightMM(), 1, c.YMM, c.BottomMM(), right, bareRight, top, bottom, openTop, openBottom},
		{false, c.YMM, -1, c.XMM, c.RightMM(), top, bareTop, left, right, openLeft, openRight},
		{false, c.BottomMM(), 1, c.XMM, c.RightMM(), bottom, bareBottom, left, right, openLeft, openRight},
	}
}

// Marks draws everything on a sheet's page but its picture: cut marks, landing lines, registration marks,
// label and check rule.
func Marks(d *pdf.Document, p layout.Plan, s layout.Sheet, l Label) {
	on, lapMM := p.Backdrop.OnPage(s), p.Backdrop.LapMM
	var lines, cuts []pdf.Line
	for _, e := range edges(p, s, on) {
		switch {
		case e.cut:
			cuts = append(cuts, e.cutMark(e.from, -1, e.cutFrom, lapMM), e.cutMark(e.to, 1, e.cutTo, lapMM))
		case !e.bare:
			lines = append(lines, e.landing(lapMM)...)
		}
	}
	drawKeylined(d, lines...)
	drawCutMarks(d, cuts...)
	drawLabel(d, on, s, l)
	drawCheckRule(d, on)
}

// cutMark is the mark that shows where the cut along e runs, past one of its ends: in the strip when the side
// there is cut, and otherwise at the outer end of the lap, where the neighbour's lap and the next row will
// hide it. It runs outward, and is drawn with an arrowhead that points inward.
func (e edge) cutMark(end, out float64, cut bool, lapMM float64) pdf.Line {
	if cut {
		return along(e.upright, e.at, end+out*(layout.BleedMM+cutMarkGapMM), end+out*layout.StripMM)
	}
	outer := lapMM - lapEndMM
	return along(e.upright, e.at, end+out*max(outer-markMM, pastSeamMM), end+out*outer)
}

// landing is the line on the lap that the neighbour's cut edge lands on, with a registration mark where each
// of its corners comes.
func (e edge) landing(lapMM float64) []pdf.Line {
	line := e.at + e.out*pastSeamMM
	tick := e.at + e.out*min(markMM, lapMM-lapEndMM)
	from, to := e.from, e.to // an end stops at a cut or a bare lap, and runs on over one that a neighbour hides
	if !e.openFrom {
		from -= lapMM - lapEndMM
	}
	if !e.openTo {
		to += lapMM - lapEndMM
	}
	return []pdf.Line{
		along(e.upright, line, from, to),
		along(!e.upright, justInside(e.from, -1, e.openFrom), line, tick),
		along(!e.upright, justInside(e.to, 1, e.openTo), line, tick),
	}
}

// justInside puts a registration mark beside the corner at end so that the neighbour hides it: within its
// height where the end is open, and past the next seam where it carries a lap.
func justInside(end, out float64, open bool) float64 {
	if open {
		return end - out*pastSeamMM
	}
	return end + out*pastSeamMM
}
