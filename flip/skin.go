package flip

import "math"

// A ray from the camera that meets the body is split: part goes through (Trace), part the body throws on.

// Ways on which a body throws light on, by how often it is thrown back inside: not at all, by its front alone; once,
// as in the rainbow; twice, as in the second bow (van de Hulst, Light Scattering by Small Particles, 1957, 12.21:
// p = 0, 2 and 3; from memory). What is thrown back three times and more is not followed: of what meets a ball of
// water, 0.1 % at 60 degrees, 3 % at 80, and at most 10 %, at 87.
const (
	ByFront = iota
	OnceInside
	TwiceInside
	ThrownWays
)

// Thrown is what leaves the body on one way.
type Thrown struct {
	Ray   Ray     // from where it leaves the surface for good
	Share float64 // of the light, 0 to 1; 0 for a way that none takes
}

// thrownLight is light on its way through faces: all of it, and how much more of it swings in the plane of incidence
// than across (Stokes's I and Q). Turned by an angle t about the ray, the axes find Q cos 2t; Stokes's U, which only
// bodies that are no balls make, and only from the second turn on, is left out.
type thrownLight struct{ all, more float64 }

// meets is what is left of it by a face that leaves such a share of either polarisation.
func (l thrownLight) meets(left polarised, cos2Twist float64) thrownLight {
	mean, half, more := left.unpolarised(), (left.in-left.across)/2, l.more*cos2Twist
	return thrownLight{mean*l.all + half*more, half*l.all + mean*more}
}

// rest is what a face that throws back r lets through.
func (r polarised) rest() polarised { return polarised{1 - r.across, 1 - r.in} }

// front is where a ray from outside meets a body, and how.
type front struct {
	at, normal       Vec // the normal is a unit, and points outward
	unit             float64
	cosIn, cosInside float64 // of the ray to the normal, before and behind
}

// front is that of a ray; ok is false when it misses the body.
func (t *Tracer) front(r Ray) (f front, ok bool) {
	if t.hanging != nil {
		f, what := t.frontHanging(r)
		return f, what == meetsDrop
	}
	at, slope, hit := t.quadric.enter(r.From, r.Dir)
	if !hit {
		return f, false
	}
	gradient := t.quadric.weigh(at)
	f = front{at: at, unit: t.unit(gradient)}
	f.normal, f.cosIn = gradient.Scale(f.unit), slope*f.unit
	f.cosInside, ok = refract(f.cosIn, t.eta)
	return f, ok
}

// across is where a ray that runs inside, from a place of the surface, meets it again: the place, its normal as front
// has it, and the cosine of the ray to that. unit and cosInside are those where it starts. ok is false where it meets
// the holder of a drop that hangs.
func (t *Tracer) across(p, d Vec, unit, cosInside float64) (at, normal Vec, toUnit, toCos float64, ok bool) {
	if t.hanging != nil {
		at, normal, cosInside, ok = t.acrossHanging(p, d)
		return at, normal, 1, cosInside, ok
	}
	slope := cosInside / unit
	p = p.Add(d.Scale(2 * slope / d.Dot(t.quadric.weigh(d))))
	gradient := t.quadric.weigh(p)
	if t.roundMM == 0 {
		unit = t.unit(gradient)
		cosInside = slope * unit
	}
	return p, gradient.Scale(unit), unit, cosInside, true
}

// mirrors is a ray that it throws back.
func (f *front) mirrors(r Ray) Ray { return Ray{f.at, r.Dir.Add(f.normal.Scale(2 * f.cosIn))} }

// Mirrored is the ray that the body's front makes of one from outside, and the share of the light that takes it; kept
// is the share that the next face throws back inside, by as much of either polarisation as the front did (so it is for
// a ball). ok is false when the ray misses the body.
func (t *Tracer) Mirrored(r Ray) (mirrored Thrown, kept float64, ok bool) {
	f, ok := t.front(r)
	if !ok {
		return Thrown{}, 0, false
	}
	back := reflectance(f.cosIn, f.cosInside, t.eta)
	kept = (back.across*(1-back.across) + back.in*(1-back.in)) / 2
	return Thrown{f.mirrors(r), back.unpolarised()}, kept, true
}

// Thrown follows a ray from outside on each way on which the body throws it on. ok is false when it misses the body.
func (t *Tracer) Thrown(r Ray) (ways [ThrownWays]Thrown, ok bool) {
	f, ok := t.front(r)
	if !ok {
		return ways, false
	}
	if t.wall != nil {
		return t.thrownWalled(r, f), true
	}
	p, normal, unit, cosIn, cosInside := f.at, f.normal, f.unit, f.cosIn, f.cosInside
	light, outer := thrownLight{all: 1}, reflectance(cosIn, cosInside, t.eta)
	ways[ByFront] = Thrown{f.mirrors(r), outer.unpolarised()}
	light = light.meets(outer.rest(), 1)
	d := r.Dir.Scale(t.eta).Add(normal.Scale(t.eta*cosIn - cosInside))
	cosBefore := cosInside // to the face before, of the ray inside
	for inside := 0; inside < ThrownWays; inside++ {
		before := normal
		if p, normal, unit, cosInside, ok = t.across(p, d, unit, cosInside); !ok {
			return ways, true
		}
		cos2Twist := 1.0
		if !t.ball {
			cos2Twist = twist(before.Dot(normal), cosBefore, cosInside)
		}
		back := polarised{1, 1}
		if cosOut, leaves := refract(cosInside, t.index); leaves {
			back = reflectance(cosInside, cosOut, t.index)
			if inside > 0 { // else it goes through, as Trace has it
				out := d.Scale(t.index).Add(normal.Scale(cosOut - t.index*cosInside))
				ways[inside] = Thrown{Ray{p, out}, light.meets(back.rest(), cos2Twist).all}
			}
		}
		light = light.meets(back, cos2Twist)
		d = d.Sub(normal.Scale(2 * cosInside))
		cosBefore = cosInside
	}
	return ways, true
}

// OnBoard is where a ray meets the backdrop's plane, optical mm. ok is false for one that runs away from it.
func (t *Tracer) OnBoard(r Ray) (xMM, yMM float64, ok bool) {
	l, ok := t.land(r.From, r.Dir, Landing{})
	return l.XMM, l.YMM, ok
}

// MirrorsFromRad is the least incidence at which the body's front mirrors toward the backdrop's plane something that
// lies so far from the axis: a mirrored ray is turned by 180 degrees less twice its incidence, and goes to the plane
// from 45 degrees on. Against the distance the body is small.
func (s Sight) MirrorsFromRad(reachMM float64) float64 {
	return (math.Pi - math.Atan2(reachMM, s.DistanceMM)) / 2
}

// Reflectance is the share of unpolarised light, 0 to 1, that the body's surface throws back of what meets it from
// outside, at an incidence from 0, straight on, to half of pi, grazing.
func (d Drop) Reflectance(incidenceRad float64) float64 {
	cosIn := math.Max(0, math.Cos(incidenceRad))
	eta := 1 / d.skinIndex()
	cosInside, _ := refract(cosIn, eta) // never total from outside
	return reflectance(cosIn, cosInside, eta).unpolarised()
}
