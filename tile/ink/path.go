package ink

import "math"

// Point is a place on the picture, in pixels.
type Point struct{ X, Y float64 }

// Path is a line through points. When its last point equals its first, it is closed.
type Path []Point

// closed tells whether the path ends where it starts.
func (p Path) closed() bool { return len(p) > 2 && p[0] == p[len(p)-1] }

// Reversed is the path run from its end.
func (p Path) Reversed() Path {
	out := make(Path, len(p))
	for i := range p {
		out[i] = p[len(p)-1-i]
	}
	return out
}

// At is the point that share, 0 to 1, of the way along the path, which must have a point.
func (p Path) At(share float64) Point {
	left := share * p.Length()
	for i := 1; i < len(p); i++ {
		d := apart(p[i-1], p[i])
		if left < d {
			return between(p[i-1], p[i], left/d).snapped()
		}
		left -= d
	}
	return p[len(p)-1].snapped()
}

// Length is how long the path is, in pixels.
func (p Path) Length() float64 {
	sum := 0.0
	for i := 1; i < len(p); i++ {
		sum += apart(p[i-1], p[i])
	}
	return sum
}

// Snapped is a number of pixels on a grid much finer than what shows. Two processors work out places that differ in
// their last digits, since some multiply and add in one step and sines differ; on the grid they are the same.
func Snapped(px float64) float64 {
	const steps = 1 << 30 // to a pixel: finer than the rasteriser takes them
	return math.Round(px*steps) / steps
}

func (p Point) snapped() Point { return Point{Snapped(p.X), Snapped(p.Y)} }

// snapped is the path with its points on that grid.
func (p Path) snapped() Path {
	out := make(Path, len(p))
	for i, q := range p {
		out[i] = q.snapped()
	}
	return out
}

// between is the point that share (0 to 1) of the way from p to q.
func between(p, q Point, share float64) Point {
	return Point{p.X + float64((q.X-p.X)*share), p.Y + float64((q.Y-p.Y)*share)}
}

func apart(p, q Point) float64 { return math.Hypot(q.X-p.X, q.Y-p.Y) }

// Circle is a closed path, started at that angle (radians from x toward y), whose chords leave the true
// circle by under 0.02 pixels.
func Circle(centre Point, radius, from float64) Path {
	const sagitta = 0.02 // a chord over the angle t lies r(1 - cos t/2), about r t²/8, inside the circle
	n := 16
	if radius > 1 {
		n = max(n, int(math.Ceil(2*math.Pi/math.Sqrt(8*sagitta/radius))))
	}
	path := make(Path, n+1)
	for i := range n {
		sin, cos := math.Sincos(from + 2*math.Pi*float64(i)/float64(n))
		path[i] = Point{centre.X + float64(radius*cos), centre.Y + float64(radius*sin)}
	}
	path[n] = path[0]
	return path
}
