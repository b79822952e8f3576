package board

import (
	"math"

	"dropsheet/layout"
)

// Spot is what of the picture lies at a place of the board.
type Spot struct {
	layout.Shown         // its InsideMM has no end where the picture goes on to the board's edge
	Gain         float64 // what the print makes up for the lamps by
}

// Spot is that of a place, for those whom the outline is of no matter to further off than reachMM.
func (s *Surface) Spot(xMM, yMM, reachMM float64) Spot {
	at := s.hanging.Near(xMM, yMM, reachMM)
	if s.hanging.Plain() && s.surround == nil {
		at.InsideMM = math.Inf(1)
	}
	return Spot{at, s.level.Gain(xMM, yMM)}
}

// Plain tells whether the picture hangs flat, upright and whole, its edges straight.
func (s *Surface) Plain() bool { return s.hanging.Plain() }
