package shot

import "dropsheet/layout"

// shareOfRadius is how far out a point of the drop's plane lies in the drop, as a share of its visible
// radius; for a rod across its axis.
func (p Shot) shareOfRadius(through layout.Point) float64 {
	return p.Sight().ShareAt(through.XMM, through.YMM)
}

// seenThrough is the point of the drop's plane that the camera sees a place through: the place lies behindMM
// behind the drop's centre, at (x, y) of the optical frame. ok is false when the drop can't show it.
func (p Shot) seenThrough(behindMM float64, place layout.Point) (through layout.Point, ok bool) {
	s := p.Sight()
	s.DistanceMM = behindMM
	through.XMM, through.YMM, ok = s.SeenThrough(place.XMM, place.YMM)
	return through, ok
}
