package flip

import "math"

// Sight is a camera that looks at a backdrop through a drop, all three centred on one axis.
//
// A fill is the share, 0 to 1, of the drop's apparent radius in the plane through its centre. For a rod every
// figure holds across the rod's axis, and for a spheroid in the level plane, which cuts it in a circle;
// ReachDownMM is for its upright plane.
type Sight struct {
	Drop       Drop
	CameraMM   float64 // entrance pupil to drop centre, above the radius
	DistanceMM float64 // drop centre to backdrop, above the radius
}

// ApparentRadiusMM is the radius at which the drop's visible edge, the ray with impact parameter R,
// crosses the plane through the drop's centre: D tan(asin(R/D)).
func (s Sight) ApparentRadiusMM() float64 {
	return s.CameraMM * math.Tan(math.Asin(s.Drop.RadiusMM()/s.CameraMM))
}

// exit follows the ray at a fill through the drop: its impact parameter and its angle to the axis afterwards.
//
// With a the angle at the pupil, b = D sin a, sin i = b/R and sin r = b/(nR) (Snell), two refractions turn
// the ray by 2(i - r): the p = 1 ray of van de Hulst, Light Scattering by Small Particles (1957), 12.21. It
// leaves with the same b. A tube's two other refractions turn it likewise.
func (s Sight) exit(fill float64) (impactMM, phi float64) {
	a := math.Atan(fill * s.ApparentRadiusMM() / s.CameraMM)
	impactMM = s.CameraMM * math.Sin(a)
	return impactMM, a - 2*s.Drop.halfTurnRad(impactMM)
}

// HeightMM is where the ray at a fill meets the backdrop's plane, measured from the axis: y = L tan phi + b / cos phi.
// Below zero means on the other side of the axis than in the drop: reversed.
// ok is false when the fill is outside 0 to 1 or the ray never reaches the plane.
func (s Sight) HeightMM(fill float64) (heightMM float64, ok bool) {
	if !(fill >= 0 && fill <= 1) {
		return 0, false
	}
	impactMM, phi := s.exit(fill)
	if phi <= -math.Pi/2 {
		return 0, false
	}
	return s.DistanceMM*math.Tan(phi) + impactMM/math.Cos(phi), true
}

// ReachMM is how far from the axis, on the backdrop, the drop sees at a fill: the size of HeightMM.
func (s Sight) ReachMM(fill float64) (reachMM float64, ok bool) {
	heightMM, ok := s.HeightMM(fill)
	return math.Abs(heightMM), ok
}

// NearAxisReachMM is the thin-lens guess of ReachMM. A ray from the pupil that crosses the drop's plane at a height h
// climbs by h/D for each millimetre and is turned down by h/f there, so that it lands at h (1 + L/D - L/f) (Hecht,
// Optics, 5.2.3). It is half the truth near the rim; it is for comparison only.
func (s Sight) NearAxisReachMM(fill float64) float64 {
	enlarged := 1 + s.DistanceMM/s.CameraMM - s.DistanceMM/s.Drop.FocalLengthMM()
	return math.Abs(enlarged) * fill * s.ApparentRadiusMM()
}

// NearestInvertingMM is the distance beyond which the drop turns the middle of the backdrop over: where the
// near-axis ray height b(1 + L/D - L/f) changes sign. For a far camera it is the focal length. A spheroid
// must turn it over both ways. ok is false when the camera is inside the focal length, from where no distance
// inverts.
func (s Sight) NearestInvertingMM() (distanceMM float64, ok bool) {
	if s.Drop.Oblate() {
		levelMM, okLevel := s.nearestInverting(s.Drop.RadiusMM())
		uprightMM, okUpright := s.nearestInverting(s.Drop.CurvedUpMM())
		return max(levelMM, uprightMM), okLevel && okUpright
	}
	f := s.Drop.FocalLengthMM()
	if s.CameraMM <= f {
		return 0, false
	}
	return 1 / (1/f - 1/s.CameraMM), true
}

// nearestInverting is the same for a lens as thick as the drop is wide, whose faces are curved by curvatureMM
// where the axis meets them (of an ellipse of semi-axes a along the axis and b, b²/a): a near-axis ray is
// refracted by both (Hecht, Optics, 6.2, the matrices of a thick lens).
func (s Sight) nearestInverting(curvatureMM float64) (distanceMM float64, ok bool) {
	a, n := s.Drop.RadiusMM(), s.Drop.Index
	power := (n - 1) / curvatureMM
	heightMM, slope := s.CameraMM-a, 1.0 // at the near face, for a slope of 1 at the pupil
	inside := (slope - heightMM*power) / n
	heightMM += 2 * a * inside
	slope = n*inside - heightMM*power
	return a - heightMM/slope, s.CameraMM > a && slope < 0
}

// ReachDownMM is how far from the axis, on the backdrop, the drop sees at a fill straight up and down: of a
// spheroid by a traced ray, of any other body what ReachMM is; of a drop that hangs how far up, through its lower part.
// ok is false when the ray never reaches the plane, or is not turned over.
func (s Sight) ReachDownMM(fill float64) (reachMM float64, ok bool) {
	return s.reachAlong(fill, 1)
}

// ReachUpMM is the same through the drop's upper part: another length for a drop that hangs.
func (s Sight) ReachUpMM(fill float64) (reachMM float64, ok bool) {
	return s.reachAlong(fill, -1)
}

// reachAlong is either, for a way down the drop's plane, 1, or up, -1.
func (s Sight) reachAlong(fill, way float64) (reachMM float64, ok bool) {
	if !s.Drop.Oblate() {
		return s.ReachMM(fill)
	}
	_, halfHeightMM := s.OutlineMM()
	l, ok := s.Trace(s.PinholeRay(0, way*fill*halfHeightMM))
	return -way * l.YMM, ok && l.Through && way*l.YMM <= 0
}

// FillAt is the fill at which the drop reaches reachMM on the backdrop: ReachMM undone.
// ok is false when the drop does not invert at this distance or nowhere reaches so far.
func (s Sight) FillAt(reachMM float64) (fill float64, ok bool) {
	if s.Reverses() == ReversesNone || !(reachMM >= 0) {
		return 0, false
	}
	reaches := func(fill float64) bool {
		heightMM, ok := s.HeightMM(fill)
		return !ok || -heightMM >= reachMM
	}
	if !reaches(1) {
		return 0, false
	}
	low, high := 0.0, 1.0
	for {
		middle := (low + high) / 2
		if middle <= low || middle >= high {
			return high, true
		}
		if reaches(middle) {
			high = middle
		} else {
			low = middle
		}
	}
}

// DistanceAtMM is the distance at which the drop reaches reachMM at a fill: HeightMM solved for L.
// It depends on the drop and the camera distance alone. ok is false when no distance does it.
func (s Sight) DistanceAtMM(fill, reachMM float64) (distanceMM float64, ok bool) {
	if !(fill > 0 && fill <= 1) || !(reachMM > 0) {
		return 0, false
	}
	impactMM, phi := s.exit(fill)
	if phi <= -math.Pi/2 || phi >= 0 {
		return 0, false
	}
	return (reachMM + impactMM/math.Cos(phi)) / -math.Tan(phi), true
}
