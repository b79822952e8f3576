package main

import (
	"math"

	"dropsheet/examples/paint"
)

// across goes from one colour at x0 to another at x1.
func across(x0 float64, left uint32, x1 float64, right uint32) paint.Paint {
	a, b := paint.RGB(left), paint.RGB(right)
	return func(x, _ float64) paint.Ink { return a.To(b, (x-x0)/(x1-x0)) }
}

// stop is a colour at a place along a ramp.
type stop struct {
	at float64
	c  paint.Ink
}

// ramp reads a gradient, smooth at its stops.
func ramp(stops []stop, t float64) paint.Ink {
	for i := 1; i < len(stops); i++ {
		if a, b := stops[i-1], stops[i]; t < b.at {
			return a.c.To(b.c, (t-a.at)/(b.at-a.at))
		}
	}
	return stops[len(stops)-1].c
}

// chance is a number in 0..1 for item i of the list that seed names.
func chance(i int, seed uint32) float64 { return float64(paint.Hash(int32(i), 0, seed)) / (1 << 32) }

// noise is smooth gradient noise, about -1..1, with features about 1 wide.
func noise(x, y float64, seed uint32) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	ix, iy := int32(fx), int32(fy)
	x, y = x-fx, y-fy
	sx, sy := x*x*x*(x*(x*6-15)+10), y*y*y*(y*(y*6-15)+10)
	a := slope(paint.Hash(ix, iy, seed), x, y)
	b := slope(paint.Hash(ix+1, iy, seed), x-1, y)
	c := slope(paint.Hash(ix, iy+1, seed), x, y-1)
	d := slope(paint.Hash(ix+1, iy+1, seed), x-1, y-1)
	top, low := a+(b-a)*sx, c+(d-c)*sx
	return 1.5 * (top + (low-top)*sy)
}

// slope is the height at x, y of a plane through the origin that tilts in one of 16 directions.
func slope(h uint32, x, y float64) float64 {
	const step = 2.0 / 15
	gx := float64(h&15)*step - 1
	gy := float64(h>>4&15)*step - 1
	return gx*x + gy*y
}

// clouded is noise with finer noise on it, octaves in all.
func clouded(x, y float64, octaves int, seed uint32) float64 {
	sum, size := 0.0, 1.0
	for i := range octaves {
		sum += size * noise(x, y, seed+uint32(i))
		x, y, size = 2.03*x+17.1, 2.03*y-9.7, size/2
	}
	return sum
}
