package board

import (
	"math"

	"dropsheet/layout"
)

// InPicture is where in the picture a place of the board lies.
type InPicture struct {
	layout.Shown         // its InsideMM has no end where the picture goes on to the board's edge
	Gain         float64 // what the print makes up for the lamps by
}

// InPicture is that of a place, for those whom the outline is of no matter to further off than reachMM.
func (s *Surface) InPicture(xMM, yMM, reachMM float64) InPicture {
	at := s.hanging.Near(xMM, yMM, reachMM)
	if s.hanging.Plain() && s.surround == nil {
		at.InsideMM = math.Inf(1)
	}
	return InPicture{at, s.level.Gain(xMM, yMM)}
}

// Plain tells whether the picture hangs flat, upright and whole, its edges straight.
func (s *Surface) Plain() bool { return s.hanging.Plain() }
