package layout

import (
	"math"

	"dropsheet/flip"
)

// DarkRim is the ring of the drop that looks past the backdrop's edge, as shares, 0 to 1, of the drop's visible radius.
// It is widest where the edge is nearest to the axis and narrowest toward the corners.
type DarkRim struct {
	AcrossShare float64 `json:"across_share"` // toward the backdrop's left and right edges
	DownShare   float64 `json:"down_share"`   // toward its top and bottom edges
	CornerShare float64 `json:"corner_share"`
}

// DarkRim works the ring out. A rod has one across its own axis only; the other shares are 0.
func (p Plan) DarkRim() DarkRim {
	share := func(reachMM float64) float64 {
		fill, ok := p.Sight().FillAt(reachMM)
		if !ok {
			return 0 // the drop sees no further than the backdrop
		}
		return 1 - fill
	}
	turn := p.Drop.Reverses.Turn()
	var rim DarkRim
	halfW, halfH := p.Backdrop.WidthMM/2, p.Backdrop.HeightMM/2
	if turn.ReverseX {
		rim.AcrossShare = share(halfW)
	}
	if turn.ReverseY {
		rim.DownShare = share(halfH)
	}
	if turn.ReverseX && turn.ReverseY {
		rim.CornerShare = share(math.Hypot(halfW, halfH))
	}
	return rim
}

// Sensitivity is what the fill becomes when one thing is not as planned and the print stays as it is: 1 where the picture outgrows the drop, 0 where the
// backdrop comes so near that the drop no longer turns it over.
type Sensitivity struct {
	DropSmallerFill float64 `json:"drop_10_percent_smaller_fill"`
	DropLargerFill  float64 `json:"drop_10_percent_larger_fill"`
	NearerFill      float64 `json:"distance_10_mm_less_fill"`
	FurtherFill     float64 `json:"distance_10_mm_more_fill"`
}

// Sensitivity tries a drop 10 % smaller and larger, and a backdrop 10 mm nearer and further.
func (p Plan) Sensitivity() Sensitivity {
	fill := func(diameter, distanceMM float64) float64 {
		s := p.Sight()
		s.Drop.DiameterMM *= diameter
		s.DistanceMM += distanceMM
		switch f, ok := s.FillAt(p.Picture.ReachMM); {
		case ok:
			return f
		case s.Reverses() == flip.ReversesNone:
			return 0
		}
		return 1
	}
	return Sensitivity{
		DropSmallerFill: fill(0.9, 0), DropLargerFill: fill(1.1, 0),
		NearerFill: fill(1, -10), FurtherFill: fill(1, 10),
	}
}
