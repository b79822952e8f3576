package board

import (
	"math"

	"dropsheet/layout"
)

// within is the share of a patch that lies within the printed picture, by what its place shows.
func (s *Surface) within(at layout.Shown, xMM, yMM float64, over Patch) float64 {
	if s.hanging.Plain() {
		if s.surround == nil {
			return 1
		}
		wideMM, highMM := over.spansMM()
		return s.print.share(xMM, yMM, wideMM, highMM)
	}
	if math.Abs(at.InsideMM) >= over.widestMM() {
		return Covered(at.InsideMM, 0)
	}
	x, y := 1.0, 0.0
	if over.XX != over.YY || over.XY != 0 { // a patch that is not alike in all directions
		x, y = s.outward(at, xMM, yMM)
	}
	return Covered(at.InsideMM, over.acrossMM(x, y))
}

// outward is the direction across the outline near a place, as cosines, by what places close by have.
func (s *Surface) outward(at layout.Shown, xMM, yMM float64) (x, y float64) {
	const nearMM = 1e-3
	x = s.hanging.At(xMM+nearMM, yMM).InsideMM - at.InsideMM
	y = s.hanging.At(xMM, yMM+nearMM).InsideMM - at.InsideMM
	if length := math.Hypot(x, y); length > 0 {
		return x / length, y / length
	}
	return 0, 0
}
