package flip

import "math"

// Glint is a small light seen by way of a body's skin: mirrored in its front, or thrown back inside.
type Glint struct {
	Way      int     // ByFront, OnceInside or TwiceInside
	XMM, YMM float64 // of the plane through the body's centre: where the camera sees it
	Share    float64 // of the light that comes that way, 0 to 1
	// AreaMM2 is how much of the plane through the body's centre a light takes up for each steradian that it covers as
	// the body sees it. Of a ball's front, for a light and a camera far off, it is a quarter of the radius's square,
	// whatever the angle.
	AreaMM2 float64
	// OffRad is the angle at the body between its way to the light and to the camera.
	OffRad float64
}

// Steps of a search for glints.
const (
	glintSteps = 720  // across the body, even in the angle whose sine is the share of its radius
	glintTries = 40   // of Newton
	glintAngle = 1e-9 // radians: where a search ends
	fromAngle  = 1e-6 // likewise from one that is known
	glintJump  = 1.0  // radians from step to step: more is no crossing of zero but a turn by half a circle
	leastGlint = 1e-6 // share of the light: what is less is no glint
	slopeStep  = 1e-5 // of the radius, by which slopes are tried
)

// Glints are the glints of a small light at a place, optical mm: what the front mirrors first, then what is thrown back
// inside, on each way from left to right or from the top down. They lie in the plane of light, camera and body's middle
// or near it; a light on the axis may have rings besides, which are not told.
func (s Sight) Glints(light Vec) (all []Glint) {
	halfWidthMM, halfHeightMM := s.OutlineMM()
	// the direction to look along, from the axis; along a rod the light's own share of the way lies aside
	acrossX, acrossY := 1.0, 0.0
	var aside Vec
	switch out := math.Hypot(light.X, light.Y); {
	case s.Drop.Body == UprightRod:
		aside.Y = light.Y * s.CameraMM / (s.CameraMM + math.Hypot(light.X, light.Z))
	case s.Drop.Body == LevelRod:
		acrossX, acrossY = 0, 1
		aside.X = light.X * s.CameraMM / (s.CameraMM + math.Hypot(light.Y, light.Z))
	case out > 0:
		acrossX, acrossY = light.X/out, light.Y/out
		if acrossX < 0 {
			acrossX, acrossY = -acrossX, -acrossY
		}
	}
	if s.Drop.Body == Hanging { // as far as any of it goes
		halfHeightMM = max(s.Drop.AboveMM(), s.Drop.BelowMM())
	}
	radiusMM := 1 / math.Hypot(acrossX/halfWidthMM, acrossY/halfHeightMM)
	tracer := s.Tracer()
	for way := range ThrownWays {
		// missed is by how much a ray misses the light within the plane of that direction and z.
		missed := func(t float64) (rad float64, ok bool) {
			r := radiusMM * math.Sin(t)
			thrown, ok := tracer.thrownBy(s.PinholeRay(aside.X+acrossX*r, aside.Y+acrossY*r), way)
			if !ok || thrown.Share < leastGlint {
				return 0, false
			}
			to, d := light.Sub(thrown.Ray.From), thrown.Ray.Dir
			toAcross, across := to.X*acrossX+to.Y*acrossY, d.X*acrossX+d.Y*acrossY
			return math.Atan2(across*to.Z-d.Z*toAcross, d.Z*to.Z+across*toAcross), true
		}
		last, lastOK := 0.0, false
		for n := range glintSteps {
			t := math.Pi * ((float64(n)+0.5)/glintSteps - 0.5)
			rad, ok := missed(t)
			if ok && lastOK && (rad < 0) != (last < 0) && math.Abs(rad-last) < glintJump {
				r := radiusMM * math.Sin(between(missed, t-math.Pi/glintSteps, t, last < 0))
				near := Glint{Way: way, XMM: aside.X + acrossX*r, YMM: aside.Y + acrossY*r}
				if g, ok := tracer.glint(Vec{Z: -s.CameraMM}, light, near, radiusMM, glintAngle); ok {
					all = append(all, g)
				}
			}
			last, lastOK = rad, ok
		}
	}
	return all
}

// between is where something that is below zero at the one end, or above, changes its sign.
func between(of func(float64) (float64, bool), low, high float64, lowBelow bool) float64 {
	for range 40 {
		middle := (low + high) / 2
		if v, _ := of(middle); (v < 0) == lowBelow {
			low = middle
		} else {
			high = middle
		}
	}
	return (low + high) / 2
}

// GlintFrom is a glint as another place of the pupil sees it, and of a light at another place, both optical mm and not
// far from those of a glint that is known. ok is false when no light comes so.
func (t *Tracer) GlintFrom(pupil, light Vec, near Glint) (Glint, bool) {
	return t.glint(pupil, light, near, 1/math.Sqrt(t.quadric.Z), fromAngle)
}

// glint finds it by Newton's steps, from one that is near: in the plane through the body's centre, until the thrown ray
// runs to the light, but for such an angle.
func (t *Tracer) glint(pupil, light Vec, near Glint, radiusMM, offRad float64) (Glint, bool) {
	x, y := near.XMM, near.YMM
	at, ok := t.glintAt(pupil, light, near.Way, x, y)
	for try := 0; ok && try < glintTries; try++ {
		// By how much the thrown ray turns for a millimetre, both ways; toward the middle, so that no neighbour misses.
		stepX, stepY := math.Copysign(slopeStep*radiusMM, -x), math.Copysign(slopeStep*radiusMM, -y)
		right, okRight := t.glintAt(pupil, light, near.Way, x+stepX, y)
		down, okDown := t.glintAt(pupil, light, near.Way, x, y+stepY)
		ax, ay := (right.aside-at.aside)/stepX, (right.up-at.up)/stepX
		bx, by := (down.aside-at.aside)/stepY, (down.up-at.up)/stepY
		determinant := ax*by - bx*ay
		if !okRight || !okDown || determinant == 0 {
			break
		}
		off := at.off()
		dx, dy := (by*at.aside-bx*at.up)/determinant, (ax*at.up-ay*at.aside)/determinant
		for half := 0; at.off() >= off && half < 30; half++ {
			if next, ok := t.glintAt(pupil, light, near.Way, x-dx, y-dy); ok && next.off() < off {
				at, x, y = next, x-dx, y-dy
			}
			dx, dy = dx/2, dy/2
		}
		switch {
		case at.off() < offRad:
			to, back := light.Sub(at.way.Ray.From).Unit(), pupil.Sub(at.way.Ray.From).Unit()
			return Glint{near.Way, x, y, at.way.Share, math.Abs(1 / determinant), math.Acos(max(-1, min(1, to.Dot(back))))},
				at.way.Share >= leastGlint
		case at.off() >= off:
			ok = false // no step mends it
		}
	}
	return Glint{}, false
}

// tried is a ray thrown toward a light, and by how much it misses it, in two directions across, as sines.
type tried struct {
	way       Thrown
	aside, up float64
}

func (t *tried) off() float64 { return math.Hypot(t.aside, t.up) }

// glintAt tries the ray through a point of the plane through the body's centre.
func (t *Tracer) glintAt(pupil, light Vec, way int, xMM, yMM float64) (out tried, ok bool) {
	out.way, ok = t.thrownBy(Ray{pupil, Vec{xMM, yMM, 0}.Sub(pupil).Unit()}, way)
	to := light.Sub(out.way.Ray.From).Unit()
	if !ok || out.way.Ray.Dir.Dot(to) < 0 {
		return out, false
	}
	off := out.way.Ray.Dir.Sub(to)
	// two directions across the way to the light
	aside := Vec{to.Z, 0, -to.X}
	if math.Abs(to.Y) > 0.9 {
		aside = Vec{0, -to.Z, to.Y}
	}
	aside = aside.Unit()
	up := Vec{to.Y*aside.Z - to.Z*aside.Y, to.Z*aside.X - to.X*aside.Z, to.X*aside.Y - to.Y*aside.X}
	out.aside, out.up = off.Dot(aside), off.Dot(up)
	return out, true
}

// thrownBy is what the body throws on by one way. ok is false when none of the light takes it.
func (t *Tracer) thrownBy(r Ray, way int) (Thrown, bool) {
	if way == ByFront {
		mirrored, _, ok := t.Mirrored(r)
		return mirrored, ok
	}
	ways, ok := t.Thrown(r)
	return ways[way], ok && ways[way].Share > 0
}
