package board

import (
	"cmp"
	"math"
	"slices"

	"dropsheet/layout"
)

// seams are the lines of bare paper that the cut edges of sheets show.
type seams struct {
	widthMM      float64 // 0 for none
	down, across []seamLine
}

// seamLine is where seams run along one straight line of the board.
type seamLine struct {
	atMM float64
	runs []run // in rising order
}

// run is a part of a line. It has no end where it meets the board's edge.
type run struct{ fromMM, toMM float64 }

// nextMM is how far apart the ends of two seams may lie that follow each other without a gap: rounding.
const nextMM = 1e-6

func newSeams(p layout.Plan) seams {
	return seams{down: seamLines(p.Seams, "x", p.Backdrop.HeightMM), across: seamLines(p.Seams, "y", p.Backdrop.WidthMM)}
}

// seamLines gathers the seams of one axis, in rising order, on a board that is lengthMM long along them.
func seamLines(all []layout.Seam, axis string, lengthMM float64) (lines []seamLine) {
	var these []layout.Seam
	for _, s := range all {
		if s.Axis == axis {
			these = append(these, s)
		}
	}
	slices.SortFunc(these, func(s, t layout.Seam) int {
		return cmp.Or(cmp.Compare(s.AtMM, t.AtMM), cmp.Compare(s.FromMM, t.FromMM))
	})
	for _, s := range these {
		r := run{s.FromMM, s.ToMM}
		if s.FromMM < nextMM {
			r.fromMM = math.Inf(-1)
		}
		if s.ToMM > lengthMM-nextMM {
			r.toMM = math.Inf(1)
		}
		if n := len(lines); n == 0 || lines[n-1].atMM != s.AtMM {
			lines = append(lines, seamLine{s.AtMM, []run{r}})
			continue
		}
		runs := &lines[len(lines)-1].runs
		if last := &(*runs)[len(*runs)-1]; r.fromMM <= last.toMM+nextMM {
			last.toMM = r.toMM
		} else {
			*runs = append(*runs, r)
		}
	}
	return lines
}

// share is how much of an upright box about a place is seam.
func (s *seams) share(xMM, yMM, wideMM, highMM float64) float64 {
	down := nearestLines(s.down, s.widthMM, xMM, yMM, wideMM, highMM)
	across := nearestLines(s.across, s.widthMM, yMM, xMM, highMM, wideMM)
	return down + across - down*across
}

// nearestLines is the share of a box that the nearest lines cover, widthMM wide: across the lines and along
// them, with the box's size each way.
func nearestLines(lines []seamLine, widthMM, atMM, alongMM, spanMM, alongSpanMM float64) (share float64) {
	next := notBefore(lines, atMM)
	reachMM := (widthMM + spanMM) / 2 // further off a line covers nothing
	for k := max(0, next-1); k < min(len(lines), next+1); k++ {
		offMM := lines[k].atMM - atMM
		if math.Abs(offMM) > reachMM {
			continue
		}
		if on := between(-widthMM/2, widthMM/2, -offMM, spanMM); on > 0 {
			share += on * lines[k].along(alongMM, alongSpanMM)
		}
	}
	return share
}

// notBefore is the first line that is not before a place.
func notBefore(lines []seamLine, atMM float64) int {
	low, high := 0, len(lines)
	for low < high {
		if middle := (low + high) / 2; lines[middle].atMM < atMM {
			low = middle + 1
		} else {
			high = middle
		}
	}
	return low
}

// within tells whether a line of seams, however far along it, comes as near to a place as that.
func (s *seams) within(xMM, yMM, reachXMM, reachYMM float64) bool {
	near := func(lines []seamLine, atMM, reachMM float64) bool {
		next := notBefore(lines, atMM-reachMM-s.widthMM/2)
		return next < len(lines) && lines[next].atMM <= atMM+reachMM+s.widthMM/2
	}
	return s.widthMM > 0 && (near(s.down, xMM, reachXMM) || near(s.across, yMM, reachYMM))
}

// along is the share of a box's length that the line runs through.
func (l seamLine) along(alongMM, spanMM float64) (share float64) {
	for _, r := range l.runs {
		share += between(r.fromMM, r.toMM, alongMM, spanMM)
	}
	return share
}
