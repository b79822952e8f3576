package flip

import "math"

// ClearanceMM is how far a ray passes outside the body's surface, in mm; below zero it meets the body. A rod
// is passed at right angles to its axis. For a spheroid it is exact at the surface, and its slope there: the
// ray is looked at in a space in which the spheroid is a ball, and what it misses that by is turned back by
// the local scale.
func (d Drop) ClearanceMM(r Ray) float64 {
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
