package flip

import "math"

// Rays through a drop that hangs. Its surface is X² + Z² = q(equator - Y), by pendant; half the gradient of what the
// left side is more than the right, (X, p, Z), points outward and has the length w of the normal. Above the held circle
// stands the holder, a cylinder as wide as that, which lets no light through.
//
// Along a ray the left side less the right is a function f of the way t, below 0 inside. It is nearly a parabola that
// opens upward, but where the side bends sharply toward a thin neck, for rays that are steep there.

// Steps of a search along a ray.
const (
	surfaceTries = 60
	surfaceWay   = 1e-13 // of half the width: where steps have nothing left to mend
)

// alongRay is f, its slope and its bend at a way along a ray.
func (p *pendant) alongRay(from, d Vec, t float64) (f, slope, bend float64) {
	x, z := from.X+t*d.X, from.Z+t*d.Z
	q, q1, q2 := p.at(p.equatorMM - from.Y - t*d.Y)
	return x*x + z*z - q, 2*(x*d.X+z*d.Z) + q1*d.Y, 2*(d.X*d.X+d.Z*d.Z) - q2*d.Y*d.Y
}

// root is where f is 0 between a way inside and one outside, in either order: by parabolas from without, and by halves
// where those leave the stretch. ok is false where the way outside is not.
func (p *pendant) root(from, d Vec, inside, outside float64) (t float64, ok bool) {
	t = outside
	for try := range surfaceTries {
		f, slope, bend := p.alongRay(from, d, t)
		switch {
		case f >= 0:
			outside = t
		case try == 0:
			return 0, false
		default:
			inside = t
		}
		// the nearer root of f + slope s + bend s²/2
		next := t - 2*f/(slope+math.Copysign(math.Sqrt(max(0, slope*slope-2*f*bend)), slope))
		if math.Abs(next-t) <= surfaceWay*p.halfWidthMM {
			return next, true
		}
		if !(next > min(inside, outside) && next < max(inside, outside)) {
			next = (inside + outside) / 2
		}
		t = next
	}
	return t, true
}

// nearest is the way at which a ray passes nearest to the drop's axis.
func nearestToAxis(from, d Vec) float64 {
	return -(from.X*d.X + from.Z*d.Z) / (d.X*d.X + d.Z*d.Z)
}

// lowest is the way, near such a one, at which a ray passes deepest inside, or nearest to, the drop or its holder.
func (p *pendant) lowest(from, d Vec, t float64) (at, least float64) {
	level := d.X*d.X + d.Z*d.Z
	const tries, alike = 8, 1e-9
	f, slope, bend := p.alongRay(from, d, t)
	for range tries {
		next := t - slope/max(bend, level)
		nextF, nextSlope, nextBend := p.alongRay(from, d, next)
		if !(nextF < f) {
			break
		}
		moved := math.Abs(next - t)
		t, f, slope, bend = next, nextF, nextSlope, nextBend
		if moved < alike*p.halfWidthMM {
			break
		}
	}
	return t, f
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
	_, slope, _ := p.at(p.equatorMM - at.Y)
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

// enter is where a ray from outside meets the drop. It must not run straight up or down.
func (p *pendant) enter(from, d Vec) (at Vec, what meeting) {
	nearMM := -from.Dot(d) // else places would be small differences of large ones
	from = from.Add(d.Scale(nearMM))
	deepest := nearestToAxis(from, d)
	if f, _, _ := p.alongRay(from, d, deepest); !(f < 0) {
		if deepest, f = p.lowest(from, d, deepest); !(f < 0) {
			return Vec{}, meetsNothing
		}
	}
	if !(nearMM+deepest > 0) {
		return Vec{}, meetsNothing
	}
	enter, _ := p.slab(from, d)
	if enter > deepest && p.equatorMM-from.Y-deepest*d.Y >= p.topMM {
		return Vec{}, meetsHolder
	}
	t, ok := p.root(from, d, deepest, min(enter, deepest))
	at = Vec{from.X + t*d.X, from.Y + t*d.Y, from.Z + t*d.Z}
	if !ok || p.equatorMM-at.Y >= p.topMM { // from above, by the held circle, or beside
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
	t, ok := p.root(from, d, inside*p.halfWidthMM, leave)
	return Vec{from.X + t*d.X, from.Y + t*d.Y, from.Z + t*d.Z}, ok
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
	t, f := p.lowest(r.From, r.Dir, nearestToAxis(r.From, r.Dir))
	h := p.equatorMM - r.At(t).Y
	q, slope, _ := p.at(h)
	w := math.Sqrt(max(q, 0) + slope*slope/4)
	if h < 0 {
		w = p.tipRadiusMM
	}
	return f / (w + math.Sqrt(max(0, w*w+f)))
}
