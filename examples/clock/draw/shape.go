package main

import (
	"math"
	"slices"

	"dropsheet/examples/paint"
)

// arc runs along an ellipse from angle a0 to a1.
func arc(cx, cy, rx, ry, a0, a1 float64) []paint.Point {
	n := max(2, int(math.Ceil(math.Abs(a1-a0)/(2*math.Pi)*360)))
	out := make([]paint.Point, n+1)
	for i := range out {
		s, c := math.Sincos(a0 + (a1-a0)*float64(i)/float64(n))
		out[i] = paint.Point{X: cx + rx*c, Y: cy + ry*s}
	}
	return out
}

func disc(cx, cy, r float64) paint.Shape { return paint.Shape{arc(cx, cy, r, r, 0, -2*math.Pi)} }

// ring lies round the dial's centre, from radius r0 out to r1.
func ring(r0, r1 float64) paint.Shape {
	return paint.Shape{arc(0, 0, r1, r1, 0, -2*math.Pi), arc(0, 0, r0, r0, 0, 2*math.Pi)}
}

// stroke draws along the points, width wide, with round ends, and round joints where the way turns sharply.
func stroke(width float64, parts ...[]paint.Point) paint.Shape {
	along := slices.CompactFunc(slices.Concat(parts...),
		func(a, b paint.Point) bool { return math.Hypot(a.X-b.X, a.Y-b.Y) < 1e-6 })
	last := len(along) - 1
	ends := paint.Together(disc(along[0].X, along[0].Y, width/2), disc(along[last].X, along[last].Y, width/2))
	return paint.Together(ends, paint.Line(width, along, disc))
}

// bar is a straight line with square ends.
func bar(width, x0, y0, x1, y1 float64) paint.Shape {
	return paint.Line(width, paint.Points(x0, y0, x1, y1), disc)
}
