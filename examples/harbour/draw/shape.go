package main

import (
	"math"
	"slices"
)

type pt struct{ x, y float64 }

// shape is a set of closed outlines, y upward. All but text run clockwise, so that overlapping outlines add up to one form.
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

func box(x0, y0, x1, y1 float64) shape { return poly(x0, y0, x1, y0, x1, y1, x0, y1) }

func ellipse(cx, cy, rx, ry float64) shape {
	const n = 96
	out := make([]pt, n)
	for i := range out {
		s, c := math.Sincos(-2 * math.Pi * float64(i) / n)
		out[i] = pt{cx + rx*c, cy + ry*s}
	}
	return shape{out}
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

// blob is a smooth closed form through the points.
func blob(xy ...float64) shape {
	n := len(xy)
	round := slices.Concat(xy[n-2:], xy, xy[:4])
	line := curve(round...)
	return outline(line[16 : len(line)-17])
}

// line draws along the points, width wide, with round joints where the way turns sharply.
func line(width float64, along []pt) shape {
	var out shape
	start := 0
	for i := 1; i < len(along); i++ {
		last := i == len(along)-1
		if !last && !turns(along[i-1], along[i], along[i+1]) {
			continue
		}
		out = append(out, ribbon(width, along[start:i+1]))
		if !last {
			out = append(out, ellipse(along[i].x, along[i].y, width/2, width/2)...)
		}
		start = i
	}
	return out
}

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

func lineTo(width float64, xy ...float64) shape { return line(width, points(xy...)) }

func together(shapes ...shape) shape { return slices.Concat(shapes...) }

func (s shape) moved(dx, dy float64) shape {
	out := make(shape, len(s))
	for i, c := range s {
		for _, p := range c {
			out[i] = append(out[i], pt{p.x + dx, p.y + dy})
		}
	}
	return out
}
