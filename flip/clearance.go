package flip

import "math"

// ClearanceMM is how far a ray passes outside the body's surface, in mm; below zero it meets the body. A rod is passed at right angles to its axis.
func (d Drop) ClearanceMM(r Ray) float64 {
	from, dir := r.From, r.Dir
	x, y := d.bends()
	if !x {
		from.X, dir.X = 0, 0
	}
	if !y {
		from.Y, dir.Y = 0, 0
	}
	along := from.Dot(dir)
	return math.Sqrt(max(0, from.Dot(from)-along*along/dir.Dot(dir))) - d.RadiusMM()
}
