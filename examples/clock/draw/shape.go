package main

import (
	"math"
	"slices"
)

type pt struct{ x, y float64 }

// shape is a set of closed outlines. All but text and holes run clockwise, so that overlapping outlines add up to one form.
type shape [][]pt

// points pairs up x, y, x, y, ...
func points(xy ...float64) []pt {
	out := make([]pt, 0, len(xy)/2)
	for i := 0; i+1 < len(xy); i += 2 {
		out = append(out, pt{xy[i], xy[i+1]})
	}
	return out
}

// outline closes the points into a shape.
func outline(parts ...[]pt) shape {
	all := slices.Concat(parts...)
	area := 0.0
	for i, p := range all {
		q := all[(i+1)%len(all)]
		area += p.x*q.y - q.x*p.y
	}
	if area > 0 {
		slices.Reverse(all)
	}
	return shape{all}
}

func poly(xy ...float64) shape { return outline(points(xy...)) }

// arc runs along an ellipse from angle a0 to a1.
func arc(cx, cy, rx, ry, a0, a1 float64) []pt {
	n := max(2, int(math.Ceil(math.Abs(a1-a0)/(2*math.Pi)*360)))
	out := make([]pt, n+1)
	for i := range out {
		s, c := math.Sincos(a0 + (a1-a0)*float64(i)/float64(n))
		out[i] = pt{cx + rx*c, cy + ry*s}
	}
	return out
}

func disc(cx, cy, r float64) shape { return shape{arc(cx, cy, r, r, 0, -2*math.Pi)} }

// ring lies round the dial's centre, from radius r0 out to r1.
func ring(r0, r1 float64) shape {
	return shape{arc(0, 0, r1, r1, 0, -2*math.Pi), arc(0, 0, r0, r0, 0, 2*math.Pi)}
}

// curve runs smoothly through all the points (a Catmull-Rom spline).
func curve(xy ...float64) []pt {
	p := points(xy...)
	out := []pt{p[0]}
	for i := 0; i+1 < len(p); i++ {
		a, b, c, d := p[max(i-1, 0)], p[i], p[i+1], p[min(i+2, len(p)-1)]
		for k := 1; k <= 16; k++ {
			t := float64(k) / 16
			out = append(out, pt{spline(a.x, b.x, c.x, d.x, t), spline(a.y, b.y, c.y, d.y, t)})
		}
	}
	return out
}

func spline(a, b, c, d, t float64) float64 {
	return b + 0.5*t*(c-a+t*(2*a-5*b+4*c-d+t*(3*(b-c)+d-a)))
}

// stroke draws along the points, width wide, with round ends, and round joints where the way turns sharply.
func stroke(width float64, parts ...[]pt) shape {
	along := slices.CompactFunc(slices.Concat(parts...), func(a, b pt) bool { return math.Hypot(a.x-b.x, a.y-b.y) < 1e-6 })
	last := len(along) - 1
	out := together(disc(along[0].x, along[0].y, width/2), disc(along[last].x, along[last].y, width/2))
	start := 0
	for i := 1; i <= last; i++ {
		if i < last && !turns(along[i-1], along[i], along[i+1]) {
			continue
		}
		out = append(out, ribbon(width, along[start:i+1]))
		if i < last {
			out = append(out, disc(along[i].x, along[i].y, width/2)...)
		}
		start = i
	}
	return out
}

// bar is a straight line with square ends.
func bar(width, x0, y0, x1, y1 float64) shape { return shape{ribbon(width, points(x0, y0, x1, y1))} }

// ribbon is the outline of a line that bends gently: out along its left side, back along its right.
func ribbon(width float64, along []pt) []pt {
	n := len(along)
	out := make([]pt, 2*n)
	for i, p := range along {
		a, b := along[max(i-1, 0)], along[min(i+1, n-1)]
		d := max(math.Hypot(b.x-a.x, b.y-a.y), 1e-12)
		nx, ny := -(b.y-a.y)/d*width/2, (b.x-a.x)/d*width/2
		out[i], out[2*n-1-i] = pt{p.x + nx, p.y + ny}, pt{p.x - nx, p.y - ny}
	}
	return out
}

// turns tells whether the way from a to b to c bends by more than 10 degrees.
func turns(a, b, c pt) bool {
	ux, uy, vx, vy := b.x-a.x, b.y-a.y, c.x-b.x, c.y-b.y
	return ux*vx+uy*vy < 0.985*math.Hypot(ux, uy)*math.Hypot(vx, vy)
}

func together(shapes ...shape) shape { return slices.Concat(shapes...) }

func (s shape) each(change func(pt) pt) shape {
	out := make(shape, len(s))
	for i, c := range s {
		for _, p := range c {
			out[i] = append(out[i], change(p))
		}
	}
	return out
}

func (s shape) moved(dx, dy float64) shape {
	return s.each(func(p pt) pt { return pt{p.x + dx, p.y + dy} })
}

func (s shape) scaled(f float64) shape { return s.each(func(p pt) pt { return pt{f * p.x, f * p.y} }) }

// turned turns the shape clockwise about the dial's centre.
func (s shape) turned(angle float64) shape {
	sin, cos := math.Sincos(angle)
	return s.each(func(p pt) pt { return pt{p.x*cos + p.y*sin, p.y*cos - p.x*sin} })
}
