package main

import "math"

// ink is a colour, sRGB-encoded 0..1, and how much of it is laid on.
type ink struct{ r, g, b, a float32 }

// rgb is the opaque colour 0xRRGGBB.
func rgb(v uint32) ink {
	return ink{float32(v>>16&255) / 255, float32(v>>8&255) / 255, float32(v&255) / 255, 1}
}

func (c ink) alpha(a float32) ink { c.a *= a; return c }

// to goes from c (t = 0) to d (t = 1).
func (c ink) to(d ink, t float64) ink {
	f := float32(min(max(t, 0), 1))
	return ink{over(c.r, d.r, f), over(c.g, d.g, f), over(c.b, d.b, f), over(c.a, d.a, f)}
}

// times makes the colour lighter or darker.
func (c ink) times(f float64) ink {
	g := float32(f)
	return ink{c.r * g, c.g * g, c.b * g, c.a}
}

func flat(v uint32) paint { c := rgb(v); return func(_, _ float64) ink { return c } }

// upward goes from one colour at height h0 to another at h1.
func upward(h0 float64, low uint32, h1 float64, high uint32) paint {
	a, b := rgb(low), rgb(high)
	return func(_, h float64) ink { return a.to(b, (h-h0)/(h1-h0)) }
}

// across goes from one colour at x0 to another at x1.
func across(x0 float64, left uint32, x1 float64, right uint32) paint {
	a, b := rgb(left), rgb(right)
	return func(x, _ float64) ink { return a.to(b, (x-x0)/(x1-x0)) }
}

// stop is a colour at a place along a ramp.
type stop struct {
	at float64
	c  ink
}

// ramp reads a gradient, smooth at its stops.
func ramp(stops []stop, t float64) ink {
	for i := 1; i < len(stops); i++ {
		if a, b := stops[i-1], stops[i]; t < b.at {
			return a.c.to(b.c, (t-a.at)/(b.at-a.at))
		}
	}
	return stops[len(stops)-1].c
}

// smooth rises from 0 at a to 1 at b, level at both ends.
func smooth(a, b, t float64) float64 {
	t = min(max((t-a)/(b-a), 0), 1)
	return t * t * (3 - 2*t)
}

func bump(t float64) float64 { return math.Exp(-t * t) }

// hash scatters whole numbers over all of uint32: the only chance in this picture, and the same every time.
func hash(x, y int32, seed uint32) uint32 {
	h := uint32(x)*0x9e3779b1 ^ uint32(y)*0x85ebca77 ^ seed*0xc2b2ae3d
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 12
	h *= 0x297a2d39
	return h ^ h>>15
}

// chance is a number in 0..1 for item i of the list that seed names.
func chance(i int, seed uint32) float64 { return float64(hash(int32(i), 0, seed)) / (1 << 32) }

// noise is smooth gradient noise, about -1..1, with features about 1 wide.
func noise(x, y float64, seed uint32) float64 {
	fx, fy := math.Floor(x), math.Floor(y)
	ix, iy := int32(fx), int32(fy)
	x, y = x-fx, y-fy
	sx, sy := x*x*x*(x*(x*6-15)+10), y*y*y*(y*(y*6-15)+10)
	a := slope(hash(ix, iy, seed), x, y)
	b := slope(hash(ix+1, iy, seed), x-1, y)
	c := slope(hash(ix, iy+1, seed), x, y-1)
	d := slope(hash(ix+1, iy+1, seed), x-1, y-1)
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
