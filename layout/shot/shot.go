package shot

import "dropsheet/layout"

// Shot is a plan before its camera. Its methods work out what the camera gets.
type Shot struct{ layout.Plan }

// Of is the shot of a plan.
func Of(p layout.Plan) Shot { return Shot{p} }

// tolerance is what rounding may make of a length, in mm.
const tolerance = 1e-6

// shareOfRadius is how far out a point of the drop's plane lies in the drop, as a share of its visible
// radius; for a rod across its axis.
func (s Shot) shareOfRadius(through layout.Point) float64 {
	return s.Sight().ShareAt(through.XMM, through.YMM)
}

// seenThrough is the point of the drop's plane that the camera sees a place through: the place lies behindMM
// behind the drop's centre, at (x, y) of the optical frame. ok is false when the drop can't show it.
func (s Shot) seenThrough(behindMM float64, place layout.Point) (through layout.Point, ok bool) {
	sight := s.Sight()
	sight.DistanceMM = behindMM
	through.XMM, through.YMM, ok = sight.SeenThrough(place.XMM, place.YMM)
	return through, ok
}
