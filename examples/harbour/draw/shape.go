package main

import (
	"math"
	"slices"

	"dropsheet/examples/paint"
)

func box(x0, y0, x1, y1 float64) paint.Shape { return paint.Poly(x0, y0, x1, y0, x1, y1, x0, y1) }

func ellipse(cx, cy, rx, ry float64) paint.Shape {
	const n = 96
	out := make([]paint.Point, n)
	for i := range out {
		s, c := math.Sincos(-2 * math.Pi * float64(i) / n)
		out[i] = paint.Point{X: cx + rx*c, Y: cy + ry*s}
	}
	return paint.Shape{out}
}

// blob is a smooth closed form through the points.
func blob(xy ...float64) paint.Shape {
	n := len(xy)
	round := slices.Concat(xy[n-2:], xy, xy[:4])
	line := paint.Curve(round...)
	return paint.Outline(line[16 : len(line)-17])
}

// line draws along the points, width wide, with round joints where the way turns sharply.
func line(width float64, along []paint.Point) paint.Shape {
	return paint.Line(width, along, func(x, y, r float64) paint.Shape { return ellipse(x, y, r, r) })
}

func lineTo(width float64, xy ...float64) paint.Shape { return line(width, paint.Points(xy...)) }

// bolder is the edge of the letters s, width wide: laid over them it makes them bolder by half of that all round.
func bolder(s paint.Shape, width float64) paint.Shape {
	var out paint.Shape
	for _, edge := range s {
		if edge[0] == edge[len(edge)-1] {
			edge = edge[:len(edge)-1]
		}
		out = append(out, line(width, slices.Concat(edge, edge[:2]))...) // once round and on to the first corner's far side
	}
	return out
}
