package flip

import "math"

// Path is the way of a ray in the plane across a rod, or through the middle of a round ball, from the pupil to the
// backdrop's plane: where it turns, and the angles that a protractor finds there.
type Path struct {
	// Corners are the pupil, the places on the faces, two or of a tube four, and the place on the backdrop's plane; Y is
	// the height, X 0.
	Corners []Vec
	// LeavesRad is the angle to the axis at the pupil; TurnedRad is by how much the body turns the ray in all, toward the
	// axis.
	LeavesRad, TurnedRad float64
	// Faces are the angles to the normal at each face on the way in, those on the way out being the same.
	Faces []FaceAngles
}

// FaceAngles are the angles to a face's normal, of the ray before it and behind.
type FaceAngles struct{ BeforeRad, BehindRad float64 }

// Path follows the ray at a fill (see exit). ok is false where HeightMM is, and for a drop out of round.
func (s Sight) Path(fill float64) (p Path, ok bool) {
	heightMM, ok := s.HeightMM(fill)
	if !ok || s.Drop.Oblate() {
		return Path{}, false
	}
	impactMM, phi := s.exit(fill)
	p.LeavesRad = math.Asin(impactMM / s.CameraMM)
	p.TurnedRad = p.LeavesRad - phi
	// The normal where it enters makes the angle before the face with the way that it comes, and where it leaves with the
	// way that it goes on.
	on := func(radiusMM, rad float64) Vec {
		sin, cos := math.Sincos(rad)
		return Vec{0, radiusMM * sin, radiusMM * cos}
	}
	var in, out []Vec
	comes, goes := p.LeavesRad, phi
	for _, f := range s.Drop.faces() {
		a := FaceAngles{math.Asin(min(impactMM/f.radiusMM/f.before, 1)), math.Asin(min(impactMM/f.radiusMM/f.behind, 1))}
		p.Faces = append(p.Faces, a)
		in = append(in, on(f.radiusMM, math.Pi+comes-a.BeforeRad))
		out = append([]Vec{on(f.radiusMM, goes+a.BeforeRad)}, out...)
		comes -= a.BeforeRad - a.BehindRad
		goes += a.BeforeRad - a.BehindRad
	}
	p.Corners = append(append([]Vec{{0, 0, -s.CameraMM}}, in...), out...)
	p.Corners = append(p.Corners, Vec{0, heightMM, s.DistanceMM})
	return p, true
}
