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
	// A step of a parabola that is no longer than this, of half the width, leaves some 1e-14 of it; and q' where it ends
	// is q' and its change where it began, but for some 1e-9.
	lastStep = 1e-5
)

// alongRay is f, its slope and its bend at a way along a ray, and q' and q” there.
func (p *pendant) alongRay(from, d Vec, t float64) (a along) {
	x, z := from.X+t*d.X, from.Z+t*d.Z
	q, q1, q2 := p.at(p.equatorMM - from.Y - t*d.Y)
	return along{x*x + z*z - q, 2*(x*d.X+z*d.Z) + q1*d.Y, 2*(d.X*d.X+d.Z*d.Z) - q2*d.Y*d.Y, q1, q2}
}

// along is what alongRay gives.
type along struct{ f, slope, bend, q1, q2 float64 }

// toZero is how far the nearer root of f + slope s + bend s²/2 lies off.
func (a along) toZero() float64 {
	return -2 * a.f / (a.slope + math.Copysign(math.Sqrt(max(0, a.slope*a.slope-2*a.f*a.bend)), a.slope))
}

// crossing is where a ray meets the surface: the way to it, and q' there.
type crossing struct{ way, q1 float64 }

// root is where f is 0 between a way inside and one outside, in either order, from a way between them on: by parabolas,
// and by halves where those leave the stretch. ok is false where the way outside is not.
func (p *pendant) root(from, d Vec, inside, outside, start float64) (c crossing, ok bool) {
	between := func(t float64) bool { return t > min(inside, outside) && t < max(inside, outside) }
	sure := false // whether the way outside is
	t := start
	if !between(t) {
		t = outside
	}
	for range surfaceTries {
		a := p.alongRay(from, d, t)
		switch {
		case a.f >= 0:
			outside, sure = t, true
		case t == outside:
			return crossing{}, false
		default:
			inside = t
		}
		next := t + a.toZero()
		c = crossing{next, a.q1 - a.q2*d.Y*(next-t)}
		switch step := math.Abs(next - t); {
		case step <= surfaceWay*p.halfWidthMM, step <= lastStep*p.halfWidthMM && between(next):
			return c, true
		case between(next):
			t = next
		case !sure:
			t = outside
		default:
			t = (inside + outside) / 2
		}
	}
	return c, true
}

// nearest is the way at which a ray passes nearest to the drop's axis.
func nearestToAxis(from, d Vec) float64 {
	return -(from.X*d.X + from.Z*d.Z) / (d.X*d.X + d.Z*d.Z)
}

// lowest is the way, near such a one, at which a ray passes deepest inside, or nearest to, the drop or its holder.
func (p *pendant) lowest(from, d Vec, t float64) (at, least float64) {
	level := d.X*d.X + d.Z*d.Z
	const tries, alike = 8, 1e-9
	a := p.alongRay(from, d, t)
	for range tries {
		next := t - a.slope/max(a.bend, level)
		there := p.alongRay(from, d, next)
		if !(there.f < a.f) {
			break
		}
		moved := math.Abs(next - t)
		t, a = next, there
		if moved < alike*p.halfWidthMM {
			break
		}
	}
	return t, a.f
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

// met is a place of the surface that a ray meets: half the gradient there, (X, p, Z), and its length.
type met struct {
	at, gradient Vec
	length       float64
}

// meets is the place of a crossing.
func (c crossing) meets(from, d Vec) (m met) {
	m.at = Vec{from.X + c.way*d.X, from.Y + c.way*d.Y, from.Z + c.way*d.Z}
	m.gradient = Vec{m.at.X, c.q1 / 2, m.at.Z}
	m.length = math.Sqrt(m.gradient.Dot(m.gradient))
	return m
}

// meeting is what a ray from outside first meets.
type meeting int

const (
	meetsNothing meeting = iota
	meetsDrop
	meetsHolder
)

// enter is where a ray from outside meets the drop. It must not run straight up or down.
func (p *pendant) enter(from, d Vec) (m met, what meeting) {
	nearMM := -from.Dot(d) // else places would be small differences of large ones
	from = from.Add(d.Scale(nearMM))
	deepest := nearestToAxis(from, d)
	middle := p.alongRay(from, d, deepest)
	if !(middle.f < 0) {
		if deepest, middle.f = p.lowest(from, d, deepest); !(middle.f < 0) {
			return met{}, meetsNothing
		}
		middle = p.alongRay(from, d, deepest)
	}
	if !(nearMM+deepest > 0) {
		return met{}, meetsNothing
	}
	enter, _ := p.slab(from, d)
	if enter > deepest && p.equatorMM-from.Y-deepest*d.Y >= p.topMM {
		return met{}, meetsHolder
	}
	// From the middle of the chord the parabola's earlier root is nearly it, where the ray is nearly level.
	guess := deepest - (middle.slope+math.Sqrt(max(0, middle.slope*middle.slope-2*middle.f*middle.bend)))/middle.bend
	c, ok := p.root(from, d, deepest, min(enter, deepest), guess)
	if m = c.meets(from, d); !ok || p.equatorMM-m.at.Y >= p.topMM { // from above, by the held circle, or beside
		return met{}, meetsHolder
	}
	return m, meetsDrop
}

// across is where a ray that starts on the surface and runs inside leaves it again; ok is false where it runs up to the
// holder.
func (p *pendant) across(from, d Vec) (m met, ok bool) {
	_, leave := p.slab(from, d)
	if !(leave > 0) || math.IsInf(leave, 0) {
		return met{}, false
	}
	const inside = 1e-9
	start := p.alongRay(from, d, 0)
	c, ok := p.root(from, d, inside*p.halfWidthMM, leave, -2*start.slope/start.bend)
	return c.meets(from, d), ok
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
	m, what := t.hanging.enter(r.From, r.Dir)
	if what != meetsDrop {
		return f, what
	}
	f = front{at: m.at, unit: 1 / m.length, normal: m.gradient.Scale(1 / m.length)}
	f.cosIn = max(0, -r.Dir.Dot(f.normal))
	f.cosInside, _ = refract(f.cosIn, t.eta) // never total from outside
	return f, meetsDrop
}

// acrossHanging is across for a drop that hangs.
func (t *Tracer) acrossHanging(from, d Vec) (at, normal Vec, cosInside float64, ok bool) {
	m, ok := t.hanging.across(from, d)
	if !ok {
		return at, normal, 0, false
	}
	normal = m.gradient.Scale(1 / m.length)
	return m.at, normal, max(0, d.Dot(normal)), true
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
