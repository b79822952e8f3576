package flip

import "math"

// Rays through a drop that hangs. Its surface is X² + Z² = q(equator - Y), by pendant; half the gradient of what the
// left side is more than the right, (X, p, Z), points outward and has the length w of the normal. Above the held circle
// stands the holder, a cylinder as wide as that, which lets no light through.
//
// Along a ray the left side less the right is a function f of the way t, below 0 inside. It opens upward but where the
// side bends sharply toward a thin neck, for rays that are steep there: from without Newton's steps go straight to
// where it is 0.

// Steps of a search along a ray.
const (
	surfaceTries = 60
	surfaceWay   = 1e-13 // of half the width: where steps have nothing left to mend
)

// alongRay is f and its slope at a way along a ray.
func (p *pendant) alongRay(from, d Vec, t float64) (f, slope float64) {
	x, z := from.X+t*d.X, from.Z+t*d.Z
	q, qSlope := p.at(p.equatorMM - from.Y - t*d.Y)
	return x*x + z*z - q, 2*(x*d.X+z*d.Z) + qSlope*d.Y
}

// root is where f is 0 between a way inside and one outside, in either order: by Newton's steps from without, and by
// halves where those leave the stretch.
func (p *pendant) root(from, d Vec, inside, outside float64) float64 {
	t := outside
	for range surfaceTries {
		f, slope := p.alongRay(from, d, t)
		if f < 0 {
			inside = t
		} else {
			outside = t
		}
		next := t - f/slope
		if !(next > min(inside, outside) && next < max(inside, outside)) {
			next = (inside + outside) / 2
		}
		if math.Abs(next-t) <= surfaceWay*p.halfWidthMM {
			return next
		}
		t = next
	}
	return t
}

// lowest is the way at which a ray passes deepest inside, or nearest to, the drop or its holder.
func (p *pendant) lowest(from, d Vec) (t, f float64) {
	level := d.X*d.X + d.Z*d.Z
	if level == 0 {
		return 0, math.Inf(1) // straight up
	}
	t = -(from.X*d.X + from.Z*d.Z) / level
	const tries, alike = 8, 1e-9
	f, slope := p.alongRay(from, d, t)
	for range tries { // q changes little on a ray that is nearly level
		q2 := p.bendAt(p.equatorMM - from.Y - t*d.Y)
		next := t - slope/max(2*level-q2*d.Y*d.Y, level)
		nextF, nextSlope := p.alongRay(from, d, next)
		if !(nextF < f) || math.Abs(next-t) < alike*p.halfWidthMM {
			break
		}
		t, f, slope = next, nextF, nextSlope
	}
	return t, f
}

// bendAt is q” at a height; 0 past the ends.
func (p *pendant) bendAt(h float64) float64 {
	if h <= 0 || h >= p.topMM {
		return 0
	}
	c := &p.pieces[min(int(math.Sqrt(h)*p.steps), pendantPieces-1)]
	t, w := (h-c.fromMM)*c.perMM, &c.power
	return (2*w[2] + t*(6*w[3]+t*(12*w[4]+t*20*w[5]))) * c.perMM * c.perMM
}

// slab is the stretch of a ray that lies beside the drop, from the level of the held circle to that of the tip, and
// within half its width of the axis and a hair more.
func (p *pendant) slab(from, d Vec) (enter, leave float64) {
	a, b := d.X*d.X+d.Z*d.Z, from.X*d.X+from.Z*d.Z
	const hair = 1e-6
	c := from.X*from.X + from.Z*from.Z - p.halfWidthMM*p.halfWidthMM*(1+hair)
	enter, leave = math.Inf(-1), math.Inf(1)
	if a > 0 {
		root := math.Sqrt(max(0, b*b-a*c))
		enter, leave = (-b-root)/a, (-b+root)/a
	}
	if d.Y != 0 {
		top, tip := (p.equatorMM-p.topMM-from.Y)/d.Y, (p.equatorMM-from.Y)/d.Y
		enter, leave = max(enter, min(top, tip)), min(leave, max(top, tip))
	}
	return enter, leave
}

// gradient is (X, p, Z) at a place of the surface, and its length.
func (p *pendant) gradient(at Vec) (gradient Vec, length float64) {
	_, slope := p.at(p.equatorMM - at.Y)
	gradient = Vec{at.X, slope / 2, at.Z}
	return gradient, math.Sqrt(gradient.Dot(gradient))
}

// meeting is what a ray from outside first meets.
type meeting int

const (
	meetsNothing meeting = iota
	meetsDrop
	meetsHolder
)

// enter is where a ray from outside meets the drop.
func (p *pendant) enter(from, d Vec) (at Vec, what meeting) {
	nearMM := -from.Dot(d) // else places would be small differences of large ones
	from = from.Add(d.Scale(nearMM))
	deepest, f := p.lowest(from, d)
	if !(f < 0 && nearMM+deepest > 0) {
		return Vec{}, meetsNothing
	}
	enter, _ := p.slab(from, d)
	if math.IsInf(enter, 0) || p.equatorMM-from.Y-deepest*d.Y >= p.topMM && enter > deepest {
		return Vec{}, meetsHolder
	}
	if f, _ := p.alongRay(from, d, enter); f < 0 { // from above, by the held circle
		return Vec{}, meetsHolder
	}
	t := p.root(from, d, deepest, min(enter, deepest))
	at = Vec{from.X + t*d.X, from.Y + t*d.Y, from.Z + t*d.Z}
	if p.equatorMM-at.Y >= p.topMM {
		return Vec{}, meetsHolder
	}
	return at, meetsDrop
}

// across is where a ray that starts on the surface and runs inside leaves it again; ok is false where it runs up to the
// holder.
func (p *pendant) across(from, d Vec) (at Vec, ok bool) {
	_, leave := p.slab(from, d)
	if !(leave > 0) || math.IsInf(leave, 0) {
		return Vec{}, false
	}
	const inside = 1e-9
	if f, _ := p.alongRay(from, d, leave); f < 0 {
		return Vec{}, false
	}
	t := p.root(from, d, inside*p.halfWidthMM, leave)
	return Vec{from.X + t*d.X, from.Y + t*d.Y, from.Z + t*d.Z}, true
}

// traceHanging is Trace for a drop that hangs. What its holder stops never reaches the board.
func (t *Tracer) traceHanging(r Ray) (Landing, bool) {
	f, what := t.frontHanging(r)
	switch what {
	case meetsNothing:
		return t.land(r.From, r.Dir, Landing{Transmittance: 1})
	case meetsHolder:
		return Landing{}, false
	}
	d := r.Dir.Scale(t.eta).Add(f.normal.Scale(t.eta*f.cosIn - f.cosInside))
	p, normal, cosInside, ok := t.acrossHanging(f.at, d)
	if !ok {
		return Landing{}, false
	}
	cosOut, ok := refract(cosInside, t.index)
	if !ok {
		return Landing{}, false
	}
	first, second := reflectance(f.cosIn, f.cosInside, t.eta), reflectance(cosInside, cosOut, t.index)
	cos2Twist := twist(f.normal.Dot(normal), f.cosInside, cosInside)
	d = d.Scale(t.index).Add(normal.Scale(cosOut - t.index*cosInside))
	return t.land(p, d, Landing{Through: true, Transmittance: passes(first, second, cos2Twist)})
}

// frontHanging is front for a drop that hangs.
func (t *Tracer) frontHanging(r Ray) (f front, what meeting) {
	at, what := t.hanging.enter(r.From, r.Dir)
	if what != meetsDrop {
		return f, what
	}
	gradient, length := t.hanging.gradient(at)
	f = front{at: at, unit: 1 / length, normal: gradient.Scale(1 / length)}
	f.cosIn = max(0, -r.Dir.Dot(f.normal))
	f.cosInside, _ = refract(f.cosIn, t.eta) // never total from outside
	return f, meetsDrop
}

// acrossHanging is across for a drop that hangs.
func (t *Tracer) acrossHanging(from, d Vec) (at, normal Vec, cosInside float64, ok bool) {
	if at, ok = t.hanging.across(from, d); !ok {
		return at, normal, 0, false
	}
	gradient, length := t.hanging.gradient(at)
	normal = gradient.Scale(1 / length)
	return at, normal, max(0, d.Dot(normal)), true
}

// clearanceMM is how far a ray passes outside the drop and its holder: exact at the surface, and its slope there. Of a
// sphere and of a cylinder √(w² + f) is the distance from the middle.
func (p *pendant) clearanceMM(r Ray) float64 {
	t, f := p.lowest(r.From, r.Dir)
	if math.IsInf(f, 0) {
		return f
	}
	at := r.At(t)
	h := p.equatorMM - at.Y
	q, slope := p.at(h)
	w := math.Sqrt(max(q, 0) + slope*slope/4)
	if h < 0 {
		w = p.tipRadiusMM
	}
	return f / (w + math.Sqrt(max(0, w*w+f)))
}
