package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// DarkRim is the ring of the drop that looks past the backdrop's edge, as shares, 0 to 1, of the drop's visible radius.
// It is widest where the edge is nearest to the axis and narrowest toward the corners.
type DarkRim struct {
	AcrossShare float64 `json:"across_share"` // toward the backdrop's left and right edges
	DownShare   float64 `json:"down_share"`   // toward its top and bottom edges
	CornerShare float64 `json:"corner_share"`
}

// DarkRim works the ring out. A rod has one across its own axis only; the other shares are 0.
func (s Shot) DarkRim() DarkRim {
	turn := s.Drop.Reverses.Turn()
	if !s.Filled() {
		return s.bentRim(turn)
	}
	var rim DarkRim
	halfW, halfH := s.Backdrop.WidthMM/2, s.Backdrop.HeightMM/2
	if turn.ReverseX {
		rim.AcrossShare = 1 - s.shareSeen(layout.Point{XMM: halfW, YMM: 0})
	}
	if turn.ReverseY {
		rim.DownShare = 1 - s.shareSeen(layout.Point{XMM: 0, YMM: halfH})
	}
	if turn.ReverseX && turn.ReverseY {
		rim.CornerShare = 1 - s.shareSeen(layout.Point{XMM: halfW, YMM: halfH})
	}
	return rim
}

// shareSeen is the share of the drop's radius at which a place of the backdrop, counted from the axis, is
// seen; 1 where the drop sees no further.
func (s Shot) shareSeen(at layout.Point) float64 {
	through, ok := s.seenThrough(s.Drop.DistanceMM, at)
	if !ok {
		return 1
	}
	return s.shareOfRadius(through)
}

// bentRim is the ring about a picture that does not fill its board. Corners are where it is narrowest. A
// rod's is looked for straight across it.
func (s Shot) bentRim(turn flip.Turn) (rim DarkRim) {
	nearest, furthest := 1.0, 0.0
	for _, e := range s.InkOutline() {
		sin, cos := math.Sincos(e.AzimuthRad)
		const straight = 1 - 1e-9
		if s.Drop.Body == flip.UprightRod && math.Abs(cos) < straight || s.Drop.Body == flip.LevelRod &&
			math.Abs(sin) < straight {
			continue
		}
		share := s.shareSeen(e.At)
		nearest, furthest = min(nearest, share), max(furthest, share)
	}
	if turn.ReverseX {
		rim.AcrossShare = 1 - nearest
	}
	if turn.ReverseY {
		rim.DownShare = 1 - nearest
	}
	if turn.ReverseX && turn.ReverseY {
		rim.CornerShare = 1 - furthest
	}
	return rim
}

// Sensitivity is what the fill becomes when one thing is not as planned and the print stays as it is: 1 where
// the picture outgrows the drop, 0 where the backdrop comes so near that the drop no longer turns it over.
type Sensitivity struct {
	DropSmallerFill float64 `json:"drop_10_percent_smaller_fill"`
	DropLargerFill  float64 `json:"drop_10_percent_larger_fill"`
	NearerFill      float64 `json:"distance_10_mm_less_fill"`
	FurtherFill     float64 `json:"distance_10_mm_more_fill"`
}

// Sensitivity tries a drop 10 % smaller and larger, and a backdrop 10 mm nearer and further.
func (s Shot) Sensitivity() Sensitivity {
	fill := func(diameter, distanceMM float64) float64 {
		sight := s.Sight()
		sight.Drop.DiameterMM *= diameter
		sight.DistanceMM += distanceMM
		switch f, ok := sight.FillAt(s.Picture.ReachMM); {
		case ok:
			return f
		case sight.Reverses() == flip.ReversesNone:
			return 0
		}
		return 1
	}
	return Sensitivity{
		DropSmallerFill: fill(0.9, 0), DropLargerFill: fill(1.1, 0),
		NearerFill: fill(1, -10), FurtherFill: fill(1, 10),
	}
}
