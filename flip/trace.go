package flip

import "math"

// Landing is where a ray ends on the backdrop's plane, optical x and y in mm.
type Landing struct {
	XMM, YMM float64
	// Through tells a ray that went through the drop from one that passed beside it.
	Through bool
	// Transmittance is the share of the light, 0 to 1, that two surfaces let through (1 beside the drop).
	Transmittance float64
}

// Trace follows a ray from the camera's side to the backdrop's plane by vectors: refraction into the drop, refraction out.
// Light reflected inside the drop is not followed. ok is false when the ray never reaches the plane.
func (s Sight) Trace(r Ray) (Landing, bool) {
	inMM, hit := s.Drop.enter(r)
	if !hit {
		return s.land(r, Landing{Transmittance: 1})
	}
	eta := 1 / s.Drop.Index
	p := r.At(inMM)
	inside, cosIn, cosOut, ok := refract(r.Dir, s.Drop.normal(p), eta)
	if !ok {
		return Landing{}, false
	}
	first := reflectance(cosIn, cosOut, eta)

	q := s.Drop.leave(Ray{p, inside})
	outside, cosIn, cosOut, ok := refract(inside, s.Drop.normal(q).Scale(-1), s.Drop.Index)
	if !ok {
		return Landing{}, false
	}
	second := reflectance(cosIn, cosOut, s.Drop.Index)
	return s.land(Ray{q, outside}, Landing{Through: true, Transmittance: (1 - first) * (1 - second)})
}

// land runs a ray on to the backdrop's plane.
func (s Sight) land(r Ray, l Landing) (Landing, bool) {
	if r.Dir.Z <= 0 {
		return Landing{}, false
	}
	p := r.At((s.DistanceMM - r.From.Z) / r.Dir.Z)
	l.XMM, l.YMM = p.X, p.Y
	return l, true
}

// stretch returns the body's surface as the quadric x²X + y²Y + z²Z = 1, in 1/mm²: a rod's own axis has no weight.
func (d Drop) stretch() Vec {
	w := 1 / (d.RadiusMM() * d.RadiusMM())
	v := Vec{0, 0, w}
	x, y := d.bends()
	if x {
		v.X = w
	}
	if y {
		v.Y = w
	}
	return v
}

// weigh multiplies v by the quadric's weights.
func (d Drop) weigh(v Vec) Vec {
	w := d.stretch()
	return Vec{v.X * w.X, v.Y * w.Y, v.Z * w.Z}
}

// normal is the unit outward normal at a point of the surface.
func (d Drop) normal(p Vec) Vec { return d.weigh(p).Unit() }

// enter returns how far along r, in mm, the surface is first met from outside.
func (d Drop) enter(r Ray) (mm float64, hit bool) {
	wd := d.weigh(r.Dir)
	a, b, c := r.Dir.Dot(wd), r.From.Dot(wd), r.From.Dot(d.weigh(r.From))-1
	discriminant := b*b - a*c
	if a == 0 || discriminant <= 0 {
		return 0, false
	}
	mm = (-b - math.Sqrt(discriminant)) / a
	return mm, mm > 0
}

// leave returns where a ray that starts on the surface and runs inside meets it again.
func (d Drop) leave(r Ray) Vec {
	wd := d.weigh(r.Dir)
	return r.At(-2 * r.From.Dot(wd) / r.Dir.Dot(wd))
}

// PinholeRay is the ray from the entrance pupil's centre through (xMM, yMM) of the plane through the drop's centre.
func (s Sight) PinholeRay(xMM, yMM float64) Ray {
	eye := Vec{0, 0, -s.CameraMM}
	return Ray{eye, Vec{xMM, yMM, 0}.Sub(eye).Unit()}
}
