package flip

// Landing is where a ray ends on the backdrop's plane, optical x and y in mm.
type Landing struct {
	XMM, YMM float64
	// Through tells a ray that went through the drop from one that passed beside it.
	Through bool
	// Transmittance is the share of the light, 0 to 1, that two surfaces let through (1 beside the drop).
	Transmittance float64
}

// Tracer follows rays for one Sight, prepared for many of them.
type Tracer struct {
	surface    surface
	index      float64
	distanceMM float64
}

// Tracer prepares the sight for many rays.
func (s Sight) Tracer() Tracer { return Tracer{s.Drop.surface(), s.Drop.Index, s.DistanceMM} }

// Trace follows one ray; see Tracer.Trace.
func (s Sight) Trace(r Ray) (Landing, bool) {
	t := s.Tracer()
	return t.Trace(r)
}

// Trace follows a ray from the camera's side to the backdrop's plane by vectors: refraction into the drop, refraction out.
// Light reflected inside the drop is not followed. ok is false when the ray never reaches the plane.
func (t *Tracer) Trace(r Ray) (Landing, bool) {
	inMM, hit := t.surface.enter(r)
	if !hit {
		return t.land(r, Landing{Transmittance: 1})
	}
	eta := 1 / t.index
	p := r.At(inMM)
	inside, cosIn, cosOut, ok := refract(r.Dir, t.surface.normal(p), eta)
	if !ok {
		return Landing{}, false
	}
	first := reflectance(cosIn, cosOut, eta)

	q := t.surface.leave(Ray{p, inside})
	outside, cosIn, cosOut, ok := refract(inside, t.surface.normal(q).Scale(-1), t.index)
	if !ok {
		return Landing{}, false
	}
	second := reflectance(cosIn, cosOut, t.index)
	return t.land(Ray{q, outside}, Landing{Through: true, Transmittance: (1 - first) * (1 - second)})
}

// land runs a ray on to the backdrop's plane.
func (t *Tracer) land(r Ray, l Landing) (Landing, bool) {
	if r.Dir.Z <= 0 {
		return Landing{}, false
	}
	p := r.At((t.distanceMM - r.From.Z) / r.Dir.Z)
	l.XMM, l.YMM = p.X, p.Y
	return l, true
}

// PinholeRay is the ray from the entrance pupil's centre through (xMM, yMM) of the plane through the drop's centre.
func (s Sight) PinholeRay(xMM, yMM float64) Ray {
	eye := Vec{0, 0, -s.CameraMM}
	return Ray{eye, Vec{xMM, yMM, 0}.Sub(eye).Unit()}
}
