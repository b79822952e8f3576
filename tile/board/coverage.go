package board

import "math"

// Covered is the share of an even span about a place that lies on the near side of an edge that is insideMM
// away, negative where the place is beyond it; 0 or 1 when the span is a point.
//
// This is the one rule of coverage. It is exact where the edge is upright and the patch an upright box, as the
// pixels of the guide and the seam map are. For an edge aslant it errs by up to 0.043 of the patch, at 45
// degrees, where a rule that is exact there (a tent) errs as much at upright edges.
func Covered(insideMM, spanMM float64) float64 {
	switch half := spanMM / 2; {
	case insideMM >= half: // a point is wholly on one side
		return 1
	case insideMM <= -half:
		return 0
	}
	return 0.5 + insideMM/spanMM
}

// between is the share of a span about a place that lies between two edges.
func between(fromMM, toMM, atMM, spanMM float64) float64 {
	return Covered(toMM-atMM, spanMM) - Covered(fromMM-atMM, spanMM)
}

// extent is an upright rectangle that may go on without end.
type extent struct{ leftMM, topMM, rightMM, bottomMM float64 }

// endless is the extent that holds every place.
var endless = extent{math.Inf(-1), math.Inf(-1), math.Inf(1), math.Inf(1)}

// share is how much of an upright box about a place lies in the extent.
func (e *extent) share(xMM, yMM, wideMM, highMM float64) float64 {
	if halfMM := wideMM / 2; xMM-e.leftMM >= halfMM && e.rightMM-xMM >= halfMM {
		if halfMM = highMM / 2; yMM-e.topMM >= halfMM && e.bottomMM-yMM >= halfMM {
			return 1 // as most boxes do
		}
	}
	return between(e.leftMM, e.rightMM, xMM, wideMM) * between(e.topMM, e.bottomMM, yMM, highMM)
}
