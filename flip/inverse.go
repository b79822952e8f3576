package flip

import "math"

// Steps of SeenThrough.
const (
	mostSteps   = 60
	seenToShare = 1e-13            // of the angle to the place: where steps have nothing left to mend
	rimAngle    = math.Pi/2 - 1e-6 // a share of 1 - 5e-13: at 1 itself rounding decides whether a ray goes through
	// seenWithin is the angle by which a place may be missed, in radians: what rounding leaves where rays
	// graze at the very rim. Elsewhere it is under a thousandth of that.
	seenWithin = 1e-7
)

// SeenThrough is the point of the plane through the drop's centre through which the camera sees a place of
// the backdrop's plane, both optical mm: PinholeRay and Trace undone. ok is false where the drop does not
// invert the backdrop, or does not look at the place.
//
// Newton's steps. They go in t, with sin|t| the share of the visible radius, and look at where rays land by
// the angle from the axis: near the rim the share hardly changes while the angle does, but between t and the
// angle all is nearly straight (of a ball, angle = 2(i - r) and t is nearly i).
func (s Sight) SeenThrough(xMM, yMM float64) (throughXMM, throughYMM float64, ok bool) {
	return s.find(xMM, yMM, func(l Landing, _, _ float64) (float64, float64) { return l.XMM, l.YMM })
}

// shows tells what a ray shows that goes through a point of the drop's plane and lands on the backdrop: a place, in mm.
type shows func(l Landing, throughXMM, throughYMM float64) (xMM, yMM float64)

// find is the point of the drop's plane that shows a place.
func (s Sight) find(xMM, yMM float64, what shows) (throughXMM, throughYMM float64, ok bool) {
	if s.Reverses() == ReversesNone {
		return 0, 0, false
	}
	f := finder{Sight: s, tracer: s.Tracer(), what: what}
	f.halfWidthMM, f.halfHeightMM = s.OutlineMM()
	target := s.angles(xMM, yMM)
	at := target.Scale(-1) // half-way between the straight path and the rim of a ball of water
	if at = f.withinRim(at); s.Drop.Body.Rod() {
		at = f.alongRod(at, target)
	}
	off, ok := f.missed(at, target)
	for k := 0; !ok && k < mostSteps; k++ { // a strong body looks backwards toward its rim
		at = at.Scale(0.8)
		off, ok = f.missed(at, target)
	}
	if !ok {
		return 0, 0, false
	}
	for range mostSteps {
		if math.Sqrt(off.Dot(off)) <= seenToShare*(math.Sqrt(target.Dot(target))+seenToShare) {
			break
		}
		step, solved := f.newton(at, off, target)
		if !solved {
			return 0, 0, false
		}
		better := false
		for range 30 {
			next := f.withinRim(at.Sub(step))
			nextOff, lands := f.missed(next, target)
			if lands && nextOff.Dot(nextOff) < off.Dot(off) {
				at, off, better = next, nextOff, true
				break
			}
			step = step.Scale(0.5)
		}
		if !better {
			break
		}
	}
	if !(math.Sqrt(off.Dot(off)) < seenWithin) {
		return 0, 0, false // beyond the rim
	}
	throughXMM, throughYMM = f.shareToMM(at)
	return throughXMM, throughYMM, true
}

// finder is a search through one sight for what shows something.
type finder struct {
	Sight
	tracer                    Tracer
	halfWidthMM, halfHeightMM float64 // of the drop's outline
	what                      shows
}

// angles tells a place of the backdrop's plane by its angle from the axis, along each axis; along a rod by
// its share of the way to it.
func (s Sight) angles(xMM, yMM float64) Vec {
	x, y := s.Drop.bends()
	switch {
	case !x:
		return Vec{xMM / (s.CameraMM + math.Hypot(yMM, s.DistanceMM)), math.Atan(yMM / s.DistanceMM), 0}
	case !y:
		return Vec{math.Atan(xMM / s.DistanceMM), yMM / (s.CameraMM + math.Hypot(xMM, s.DistanceMM)), 0}
	}
	away := math.Hypot(xMM, yMM)
	if away == 0 {
		return Vec{}
	}
	k := math.Atan(away/s.DistanceMM) / away
	return Vec{xMM * k, yMM * k, 0}
}

// withinRim keeps t inside the rim.
func (f *finder) withinRim(at Vec) Vec {
	x, y := f.Drop.bends()
	switch {
	case !x:
		at.Y = max(-rimAngle, min(at.Y, rimAngle))
	case !y:
		at.X = max(-rimAngle, min(at.X, rimAngle))
	default:
		if away := math.Hypot(at.X, at.Y); away > rimAngle {
			at = at.Scale(rimAngle / away)
		}
	}
	return at
}

// alongRod sets the guess along a rod, where the ray runs nearly straight.
func (f *finder) alongRod(at, target Vec) Vec {
	if f.Drop.Body == LevelRod {
		at.X = target.X
	} else {
		at.Y = target.Y
	}
	return at
}

// shareToMM is the point of the drop's plane for t; along a rod t is the slope from the pupil.
func (f *finder) shareToMM(at Vec) (xMM, yMM float64) {
	switch f.Drop.Body {
	case UprightRod:
		return math.Sin(at.X) * f.halfWidthMM, at.Y * f.CameraMM
	case LevelRod:
		return at.X * f.CameraMM, math.Sin(at.Y) * f.halfHeightMM
	}
	away := math.Hypot(at.X, at.Y)
	k := 1.0
	if away > 0 {
		k = math.Sin(away) / away
	}
	return at.X * k * f.halfWidthMM, at.Y * k * f.halfHeightMM
}

// missed is by how much what the ray at t shows is off the target, as angles. ok is false when it does not
// reach the plane.
func (f *finder) missed(at, target Vec) (off Vec, ok bool) {
	throughXMM, throughYMM := f.shareToMM(at)
	l, ok := f.tracer.Trace(f.PinholeRay(throughXMM, throughYMM))
	if !ok || !l.Through {
		return Vec{}, false
	}
	return f.angles(f.what(l, throughXMM, throughYMM)).Sub(target), true
}

// newton is the step of t that undoes off, by the slopes of the landing.
func (f *finder) newton(at, off, target Vec) (step Vec, ok bool) {
	const small = 1e-6
	slope := func(dx, dy float64) (Vec, bool) {
		// Away from the rim, so that the neighbour goes through.
		if at.X*dx+at.Y*dy > 0 {
			dx, dy = -dx, -dy
		}
		near, ok := f.missed(at.Add(Vec{dx, dy, 0}), target)
		return near.Sub(off).Scale(1 / (dx + dy)), ok
	}
	a, okA := slope(small, 0)
	b, okB := slope(0, small)
	determinant := a.X*b.Y - b.X*a.Y
	if !okA || !okB || determinant == 0 {
		return Vec{}, false
	}
	return Vec{(b.Y*off.X - b.X*off.Y) / determinant, (a.X*off.Y - a.Y*off.X) / determinant, 0}, true
}
