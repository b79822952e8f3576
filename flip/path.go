package flip

import "math"

// Path is the way of a ray in the plane across a rod, or through the middle of a round ball, from the pupil to the
// backdrop's plane: where it turns, and the angles that a protractor finds there.
type Path struct {
	Corners []Vec // the pupil, the two places on the surface, the place on the backdrop's plane; Y is the height, X 0
	// LeavesRad is the angle to the axis at the pupil; IncidenceRad and InsideRad are those to the surface's normal,
	// outside and inside, at both places; TurnedRad is by how much the body turns the ray in all, toward the axis.
	LeavesRad, IncidenceRad, InsideRad, TurnedRad float64
}

// Path follows the ray at a fill (see exit). ok is false where HeightMM is, and for a drop out of round.
func (s Sight) Path(fill float64) (p Path, ok bool) {
	heightMM, ok := s.HeightMM(fill)
	if !ok || s.Drop.Oblate() {
		return Path{}, false
	}
	impactMM, phi := s.exit(fill)
	radiusMM := s.Drop.RadiusMM()
	p.LeavesRad = math.Asin(impactMM / s.CameraMM)
	p.IncidenceRad = math.Asin(min(impactMM/radiusMM, 1))
	p.InsideRad = math.Asin(min(impactMM/radiusMM, 1) / s.Drop.Index)
	p.TurnedRad = p.LeavesRad - phi
	// The normal where it enters makes the angle of incidence with the way that it comes, and where it leaves with the
	// way that it goes on.
	on := func(rad float64) Vec { sin, cos := math.Sincos(rad); return Vec{0, radiusMM * sin, radiusMM * cos} }
	p.Corners = []Vec{{0, 0, -s.CameraMM}, on(math.Pi + p.LeavesRad - p.IncidenceRad), on(phi + p.IncidenceRad),
		{0, heightMM, s.DistanceMM}}
	return p, true
}
