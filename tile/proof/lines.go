package proof

import (
	"cmp"
	"math"
	"slices"

	"dropsheet/layout"
)

// line is where seams run along one straight line of the board, optical mm from the axis.
type line struct {
	atMM float64
	runs []run // in rising order
}

// run is a part of a line. It has no end where it meets the board's edge.
type run struct{ fromMM, toMM float64 }

// nextMM is how far apart the ends of two seams may lie that follow each other without a gap: rounding.
const nextMM = 1e-6

// newLines gathers the seams of one axis, in rising order. The axis meets the lines' direction halfAcrossMM
// from the board's edge, and the lines are twice halfAlongMM long.
func newLines(seams []layout.Seam, axis string, halfAcrossMM, halfAlongMM float64) (lines []line) {
	var these []layout.Seam
	for _, s := range seams {
		if s.Axis == axis {
			these = append(these, s)
		}
	}
	slices.SortFunc(these, func(s, t layout.Seam) int {
		return cmp.Or(cmp.Compare(s.AtMM, t.AtMM), cmp.Compare(s.FromMM, t.FromMM))
	})
	for _, s := range these {
		r := run{s.FromMM - halfAlongMM, s.ToMM - halfAlongMM}
		if s.FromMM < nextMM {
			r.fromMM = math.Inf(-1)
		}
		if s.ToMM > 2*halfAlongMM-nextMM {
			r.toMM = math.Inf(1)
		}
		atMM := s.AtMM - halfAcrossMM
		if n := len(lines); n == 0 || lines[n-1].atMM != atMM {
			lines = append(lines, line{atMM, []run{r}})
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

// seamShare is the share of a patch about a place that the nearest lines of seams cover, seamMM wide: across
// the lines and along them, with the patch's size each way.
func seamShare(lines []line, seamMM, atMM, alongMM, spanMM, alongSpanMM float64) float64 {
	low, high := 0, len(lines) // the first line that is not before the place
	for low < high {
		if middle := (low + high) / 2; lines[middle].atMM < atMM {
			low = middle + 1
		} else {
			high = middle
		}
	}
	reachMM := seamMM/2 + spanMM // further off a line covers nothing
	var share float64
	for k := max(0, low-1); k < min(len(lines), low+1); k++ {
		offMM := lines[k].atMM - atMM
		if math.Abs(offMM) > reachMM {
			continue
		}
		if on := covered(offMM+seamMM/2, spanMM) - covered(offMM-seamMM/2, spanMM); on > 0 {
			share += on * lines[k].along(alongMM, alongSpanMM)
		}
	}
	return share
}

// along is the share of a patch's length that the line runs through.
func (l line) along(alongMM, spanMM float64) (share float64) {
	for _, r := range l.runs {
		share += covered(r.toMM-alongMM, spanMM) - covered(r.fromMM-alongMM, spanMM)
	}
	return share
}
