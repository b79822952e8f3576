package sheet

import (
	"math"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Where marks lie, in mm.
const (
	// LandingMM is how far past the seam the landing ticks stand, to the middle of their hairline.
	LandingMM = 2.0
	// clearMM is kept free of ink past every seam: a cut is off by sd 0.3 mm and a sheet is pasted off by sd 0.4 mm
	// (common practice, no source), so that a gap of more comes up on one hundredth of all seams.
	clearMM = 1.5
	// landingTickMM is the length of a landing tick, and landingStepMM the most from one to the next.
	landingTickMM = 5.0
	landingStepMM = 50.0
	// cutMarkGapMM keeps cut marks off the bleed.
	cutMarkGapMM = 0.5
	// markMM is the length of cut marks on a lap.
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
	// ends are the sides that it ends on, at from and at to.
	ends [2]end
}

// end is what becomes of an edge's end.
type end struct {
	at, out float64 // its place along the edge, and the direction away from the cell
	cut     bool    // the side there is cut
	hidden  bool    // laps go on round the corner there, and three neighbours hide them
}

// edges lists the sides of a sheet's cell.
func edges(p layout.Plan, s layout.Sheet, on layout.SheetPage) []edge {
	c := on.Cell
	bareLeft, bareTop, bareRight, bareBottom := Bare(p, s)
	hides := func(column, row int) bool { // whether the corner on that side is hidden
		return slices.ContainsFunc(p.Sheets, func(n layout.Sheet) bool {
			return n.Column == s.Column+column && n.Row == s.Row+row
		})
	}
	openX := map[int]bool{-1: on.CutLeft || bareLeft, 1: on.CutRight || bareRight}
	openY := map[int]bool{-1: on.CutTop || bareTop, 1: on.CutBottom || bareBottom}
	hidden := func(column, row int) bool { return !openX[column] && !openY[row] && hides(column, row) }
	upright := func(at float64, out int, cut, bare bool) edge {
		return edge{true, at, float64(out), c.YMM, c.BottomMM(), cut, bare, [2]end{
			{c.YMM, -1, on.CutTop, hidden(out, -1)}, {c.BottomMM(), 1, on.CutBottom, hidden(out, 1)}}}
	}
	level := func(at float64, out int, cut, bare bool) edge {
		return edge{false, at, float64(out), c.XMM, c.RightMM(), cut, bare, [2]end{
			{c.XMM, -1, on.CutLeft, hidden(-1, out)}, {c.RightMM(), 1, on.CutRight, hidden(1, out)}}}
	}
	return []edge{
		upright(c.XMM, -1, on.CutLeft, bareLeft), upright(c.RightMM(), 1, on.CutRight, bareRight),
		level(c.YMM, -1, on.CutTop, bareTop), level(c.BottomMM(), 1, on.CutBottom, bareBottom),
	}
}

// Marks draws everything on a sheet's page but its picture: cut marks, landing ticks, seam ticks, label and check
// rule; beside a print that is not cut its label alone.
func Marks(d *pdf.Document, p layout.Plan, s layout.Sheet, l Label) {
	on, lapMM := p.Backdrop.OnPage(s), p.Backdrop.LapMM
	if p.Backdrop.Uncut {
		drawBeside(d, p.Backdrop, on, l)
		return
	}
	var lines, cuts []pdf.Line
	for _, e := range edges(p, s, on) {
		switch {
		case e.cut:
			cuts = append(cuts, e.cutMark(on, e.ends[0], lapMM), e.cutMark(on, e.ends[1], lapMM))
		case !e.bare:
			lines = append(lines, e.landing()...)
			lines = append(lines, e.seamTicks(on, lapMM)...)
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
func (e edge) cutMark(on layout.SheetPage, n end, lapMM float64) pdf.Line {
	if n.cut {
		return e.pastEnd(n, layout.BleedMM+cutMarkGapMM, on.StripMM)
	}
	outer := lapMM - lapEndMM
	return e.pastEnd(n, max(outer-markMM, clearMM+keylineMM), outer) // a keyline stands before the head
}

// pastEnd is a line that goes on where the edge ends, from so far past the end to so far.
func (e edge) pastEnd(n end, fromMM, toMM float64) pdf.Line {
	return along(e.upright, e.at, n.at+n.out*fromMM, n.at+n.out*toMM)
}

// landing is the ticks on the lap, beside the seam: one near each end, and more between them.
func (e edge) landing() (ticks []pdf.Line) {
	line := e.at + e.out*LandingMM
	first, last := e.from+LandingMM, e.to-LandingMM-landingTickMM
	if last < first { // a cell too narrow for two
		return []pdf.Line{along(e.upright, line, first, max(first, e.to-LandingMM))}
	}
	steps := math.Ceil((last - first) / landingStepMM)
	for i := 0.0; i <= steps; i++ {
		at := first
		if steps > 0 {
			at += i / steps * (last - first)
		}
		ticks = append(ticks, along(e.upright, line, at, at+landingTickMM))
	}
	return ticks
}

// seamTicks go on in the seam's line past its ends: in the strip, where they are cut off, and on the lap round the
// corner, where they meet the pencil grid on the board beyond.
func (e edge) seamTicks(on layout.SheetPage, lapMM float64) (ticks []pdf.Line) {
	for _, n := range e.ends {
		switch {
		case n.cut && !(!e.upright && besideCheckRule(on, e.at, n.out)):
			ticks = append(ticks, e.pastEnd(n, layout.BleedMM+cutMarkGapMM, on.StripMM))
		case n.hidden:
			ticks = append(ticks, e.pastEnd(n, LandingMM, lapMM-lapEndMM))
		}
	}
	return ticks
}
