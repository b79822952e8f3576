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

// Tracer follows rays for one Sight, prepared for many of them.
type Tracer struct {
	drop       Drop
	hanging    *pendant // of a drop that hangs, else nil
	quadric    quadric
	ball       bool    // a ray stays in one plane with both normals
	roundMM    float64 // radius of a ball or a rod; 0 for a body of which the curvature changes from place to place
	index, eta float64 // eta is 1/index
	distanceMM float64
	wall       *wall // of a tube, else nil; then index and eta are those of the wall
}

// Tracer prepares the sight for many rays.
func (s Sight) Tracer() Tracer {
	index := s.Drop.skinIndex()
	t := Tracer{drop: s.Drop, quadric: s.Drop.quadric(), index: index, eta: 1 / index, distanceMM: s.DistanceMM,
		wall: s.Drop.wall()}
	t.hanging = s.Drop.hanging()
	if !s.Drop.Oblate() {
		t.roundMM = s.Drop.RadiusMM()
		t.ball = s.Drop.Body == Ball
	}
	return t
}

// Trace follows one ray; see Tracer.Trace.
func (s Sight) Trace(r Ray) (Landing, bool) {
	t := s.Tracer()
	return t.Trace(r)
}

// Trace follows a ray from the camera's side to the backdrop's plane by vectors: refraction into the drop,
// refraction out. Light reflected inside the drop is not followed. ok is false when the ray never reaches the
// plane.
//
// A chord along d enters the quadric W at p and leaves it at q with p.W.d = -q.W.d. Where the surface is
// round, gradients are of one length, and so the ray meets both faces at the same angle: it leaves at the
// angle at which it came, and each face throws back the same share.
func (t *Tracer) Trace(r Ray) (Landing, bool) {
	if t.hanging != nil {
		return t.traceHanging(r)
	}
	if t.wall != nil {
		return t.traceWalled(r)
	}
	from, d := r.From, r.Dir
	p, slope, hit := t.quadric.enter(from, d)
	if !hit {
		return t.land(from, d, Landing{Transmittance: 1})
	}
	gradient := t.quadric.weigh(p)
	unit := t.unit(gradient)
	cosIn, normal := slope*unit, gradient.Scale(unit)
	cosInside, ok := refract(cosIn, t.eta)
	if !ok {
		return Landing{}, false
	}
	first := reflectance(cosIn, cosInside, t.eta)
	d = d.Scale(t.eta).Add(normal.Scale(t.eta*cosIn - cosInside))

	slope = cosInside / unit
	p = p.Add(d.Scale(2 * slope / d.Dot(t.quadric.weigh(d))))
	gradient = t.quadric.weigh(p)
	cosOut, second, cosEntered := cosIn, first, cosInside
	if t.roundMM == 0 {
		unit = t.unit(gradient)
		cosInside = slope * unit
		if cosOut, ok = refract(cosInside, t.index); !ok {
			return Landing{}, false
		}
		second = reflectance(cosInside, cosOut, t.index)
	}
	cos2Twist := 1.0
	if !t.ball {
		cos2Twist = twist(normal.Dot(gradient)*unit, cosEntered, cosInside)
	}
	d = d.Scale(t.index).Add(gradient.Scale((cosOut - t.index*cosInside) * unit))
	return t.land(p, d, Landing{Through: true, Transmittance: passes(first, second, cos2Twist)})
}

// unit is what makes the surface's gradient a unit normal: 1 over its length, which is the radius where the
// surface is round.
func (t *Tracer) unit(gradient Vec) float64 {
	if t.roundMM > 0 {
		return t.roundMM
	}
	return 1 / math.Sqrt(gradient.Dot(gradient))
}

// land runs a ray on to the backdrop's plane.
func (t *Tracer) land(from, d Vec, l Landing) (Landing, bool) {
	if d.Z <= 0 {
		return Landing{}, false
	}
	mm := (t.distanceMM - from.Z) / d.Z
	l.XMM, l.YMM = from.X+mm*d.X, from.Y+mm*d.Y
	return l, true
}

// PinholeRay is the ray from the entrance pupil's centre through (xMM, yMM) of the plane through the drop's centre.
func (s Sight) PinholeRay(xMM, yMM float64) Ray {
	eye := Vec{0, 0, -s.CameraMM}
	return Ray{eye, Vec{xMM, yMM, 0}.Sub(eye).Unit()}
}
