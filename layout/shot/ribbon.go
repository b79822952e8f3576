package shot

import (
	"dropsheet/flip"
	"dropsheet/layout"
)

// Ribbon is a picture as long along the rod as the sheets hold: a rod squeezes across itself alone, so that a print of
// usual proportions is a low, wide ribbon and leaves most of its paper empty.
type Ribbon struct {
	LongOverAcross   float64 // the picture's length along the rod over that across it
	PlannedAs        float64 // the same of the plan's picture
	AsTheFrameAllows bool    // the sheets hold more than the frame sees along the rod
}

// barelyLonger is the share up to which a picture is not worth drawing longer (common practice, no source).
const barelyLonger = 1.25

// Ribbon works it out, for the plan's distance, fill and number of sheets. ok is false for a ball, and where the
// picture is about as long already, or copies lie beside it.
func (s Shot) Ribbon() (r Ribbon, ok bool) {
	if !s.Drop.Body.Rod() || s.Backdrop.Copies > 1 {
		return r, false
	}
	holds, sees := s.along(s.Backdrop.Holds()), s.along(s.Sees())
	r.AsTheFrameAllows = sees < holds
	r.PlannedAs = s.longOverAcross(layout.Size{WidthMM: s.Picture.FlatWidthMM, HeightMM: s.Picture.FlatHeightMM})
	r.LongOverAcross = r.PlannedAs
	isMM := s.along(layout.Size{WidthMM: s.Picture.WidthMM, HeightMM: s.Picture.HeightMM})
	const tries = 3 // the print grows with the picture, but for a hundredth, since slanting rays are bent more
	for range tries {
		r.LongOverAcross *= min(holds, sees) / isMM
		setup := s.AsSetup()
		setup.Print = layout.Size{}
		if setup.Proportions = r.LongOverAcross; s.Drop.Body == flip.UprightRod {
			setup.Proportions = 1 / r.LongOverAcross
		}
		p, err := setup.Sized()
		if err != nil {
			return r, false
		}
		isMM = s.along(layout.Size{WidthMM: p.Picture.WidthMM, HeightMM: p.Picture.HeightMM})
	}
	return r, r.LongOverAcross > barelyLonger*r.PlannedAs
}

// along is the side of a size that runs along the rod.
func (s Shot) along(size layout.Size) float64 {
	if s.Drop.Body == flip.LevelRod {
		return size.WidthMM
	}
	return size.HeightMM
}

// longOverAcross is a size's length along the rod over that across it.
func (s Shot) longOverAcross(size layout.Size) float64 {
	if s.Drop.Body == flip.LevelRod {
		return size.WidthMM / size.HeightMM
	}
	return size.HeightMM / size.WidthMM
}
