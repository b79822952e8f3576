package flip

import "math"

// ClearanceMM is what Drop.ClearanceMM is, for many rays.
func (t *Tracer) ClearanceMM(r Ray) float64 {
	if t.hanging != nil {
		return t.hanging.clearanceMM(r)
	}
	return t.drop.ClearanceMM(r)
}

// ClearanceMM is how far a ray passes outside the body's surface, in mm; below zero it meets the body. A rod
// is passed at right angles to its axis. For a spheroid it is exact at the surface, and its slope there: the
// ray is looked at in a space in which the spheroid is a ball, and what it misses that by is turned back by
// the local scale. A drop that hangs counts with its holder.
func (d Drop) ClearanceMM(r Ray) float64 {
	if p := d.hanging(); p != nil {
		return p.clearanceMM(r)
	}
	from, dir := r.From, r.Dir
	x, y := d.bends()
	if !x {
		from.X, dir.X = 0, 0
	}
	if !y {
		from.Y, dir.Y = 0, 0
	}
	k := d.heightOverWidth()
	from.Y, dir.Y = from.Y/k, dir.Y/k
	nearest := from.Sub(dir.Scale(from.Dot(dir) / dir.Dot(dir)))
	away := math.Sqrt(nearest.Dot(nearest))
	if k == 1 || away == 0 {
		return away - d.RadiusMM()
	}
	slope := Vec{nearest.X, nearest.Y / k, nearest.Z}
	return (away - d.RadiusMM()) * away / math.Sqrt(slope.Dot(slope))
}

// Meeting is which of the rays from a straight line before the body through a point meet the body: those that start
// at from + t along, with t between low and high, infinite where there is no end. Where they do on either side of a
// stretch that does not, it is the side nearer to from. ok is false where none meets it. Of a drop that hangs it is
// told by the spheroid that is curved as it is at its equator, near which such rays pass.
//
// A line through p along w meets the quadric W where (w.Wp)² is at least w.Ww (p.Wp - 1). Here w is p - from - t
// along, so that this is a square in t; where the line through p along the row meets the body, it opens the other
// way.
func (d Drop) Meeting(from, along, through Vec) (low, high float64, ok bool) {
	q, p := d.quadric(), through
	outside := p.Dot(q.weigh(p)) - 1
	if outside <= 0 {
		return math.Inf(-1), math.Inf(1), true
	}
	w, wp := p.Sub(from), q.weigh(p)
	a := outside*along.Dot(q.weigh(along)) - along.Dot(wp)*along.Dot(wp)
	b := outside*along.Dot(q.weigh(w)) - along.Dot(wp)*w.Dot(wp)
	c := outside*w.Dot(q.weigh(w)) - w.Dot(wp)*w.Dot(wp)
	discriminant := b*b - a*c
	if a == 0 || discriminant <= 0 {
		return math.Inf(-1), math.Inf(1), a < 0
	}
	middle, apart := b/a, math.Sqrt(discriminant)/math.Abs(a)
	switch {
	case a > 0:
		return middle - apart, middle + apart, true
	case middle > 0:
		return math.Inf(-1), middle - apart, true
	}
	return middle + apart, math.Inf(1), true
}
