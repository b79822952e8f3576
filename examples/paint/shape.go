package paint

import (
	"math"
	"slices"
)

// Point is a place in the units of whatever is drawn, x right, y up.
type Point struct{ X, Y float64 }

// Shape is a set of closed outlines. All but text and holes run clockwise, so that overlapping outlines add
// up to one form.
type Shape [][]Point

// Points pairs up x, y, x, y, ...
func Points(xy ...float64) []Point {
	out := make([]Point, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		out = append(out, Point{xy[i], xy[i+1]})
	}
	return out
}

// Outline closes the points into a shape.
func Outline(parts ...[]Point) Shape {
	all := slices.Concat(parts...)
	area := 0.0
	for i, p := range all {
		q := all[(i+1)%len(all)]
		area += p.X*q.Y - q.X*p.Y
	}
	if area > 0 {
		slices.Reverse(all)
	}
	return Shape{all}
}

// Poly is the shape with these corners: x, y, x, y, ...
func Poly(xy ...float64) Shape { return Outline(Points(xy...)) }

// Curve runs smoothly through all the points (a Catmull-Rom spline).
func Curve(xy ...float64) []Point {
	p := Points(xy...)
	out := []Point{p[0]}
	for i := 0; i+1 < len(p); i++ {
		a, b, c, d := p[max(i-1, 0)], p[i], p[i+1], p[min(i+2, len(p)-1)]
		for k := 1; k <= 16; k++ {
			t := float64(k) / 16
			out = append(out, Point{spline(a.X, b.X, c.X, d.X, t), spline(a.Y, b.Y, c.Y, d.Y, t)})
		}
	}
	return out
}

func spline(a, b, c, d, t float64) float64 {
	return b + 0.5*t*(c-a+t*(2*a-5*b+4*c-d+t*(3*(b-c)+d-a)))
}

// Line draws along the points, width wide, with square ends; joint draws the disc (centre, radius) that fills
// in where the way turns sharply.
func Line(width float64, along []Point, joint func(x, y, r float64) Shape) Shape {
	var out Shape
	start := 0
	for i := 1; i < len(along); i++ {
		last := i == len(along)-1
		if !last && !turns(along[i-1], along[i], along[i+1]) {
			continue
		}
		out = append(out, ribbon(width, along[start:i+1]))
		if !last {
			out = append(out, joint(along[i].X, along[i].Y, width/2)...)
		}
		start = i
	}
	return out
}

// ribbon is the outline of a line that bends gently: out along its left side, back along its right.
func ribbon(width float64, along []Point) []Point {
	n := len(along)
	out := make([]Point, 2*n)
	for i, p := range along {
		a, b := along[max(i-1, 0)], along[min(i+1, n-1)]
		d := max(math.Hypot(b.X-a.X, b.Y-a.Y), 1e-12)
		nx, ny := -(b.Y-a.Y)/d*width/2, (b.X-a.X)/d*width/2
		out[i], out[2*n-1-i] = Point{p.X + nx, p.Y + ny}, Point{p.X - nx, p.Y - ny}
	}
	return out
}

// turns tells whether the way from a to b to c bends by more than 10 degrees.
func turns(a, b, c Point) bool {
	ux, uy, vx, vy := b.X-a.X, b.Y-a.Y, c.X-b.X, c.Y-b.Y
	return ux*vx+uy*vy < 0.985*math.Hypot(ux, uy)*math.Hypot(vx, vy)
}

// Together is all the shapes as one.
func Together(shapes ...Shape) Shape { return slices.Concat(shapes...) }

func (s Shape) each(change func(Point) Point) Shape {
	out := make(Shape, len(s))
	for i, c := range s {
		for _, p := range c {
			out[i] = append(out[i], change(p))
		}
	}
	return out
}

// Moved shifts the shape.
func (s Shape) Moved(dx, dy float64) Shape {
	return s.each(func(p Point) Point { return Point{p.X + dx, p.Y + dy} })
}

// Scaled makes the shape f times as large about the origin; -1 turns it half round.
func (s Shape) Scaled(f float64) Shape {
	return s.each(func(p Point) Point { return Point{f * p.X, f * p.Y} })
}

// Turned turns the shape clockwise about the origin, by radians.
func (s Shape) Turned(angle float64) Shape {
	sin, cos := math.Sincos(angle)
	return s.each(func(p Point) Point { return Point{p.X*cos + p.Y*sin, p.Y*cos - p.X*sin} })
}
