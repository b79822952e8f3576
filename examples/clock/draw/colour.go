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

// paint gives the colour at a spot of the canvas.
type paint func(x, y float64) ink

func flat(v uint32) paint { c := rgb(v); return func(_, _ float64) ink { return c } }

// upward goes from one colour at height y0 to another at y1.
func upward(y0 float64, low uint32, y1 float64, high uint32) paint {
	a, b := rgb(low), rgb(high)
	return func(_, y float64) ink { return a.to(b, (y-y0)/(y1-y0)) }
}

// smooth rises from 0 at a to 1 at b, level at both ends.
func smooth(a, b, t float64) float64 {
	t = min(max((t-a)/(b-a), 0), 1)
	return t * t * (3 - 2*t)
}

func bump(t float64) float64 { return math.Exp(-t * t) }

// hash scatters whole numbers over all of uint32: the only chance in this picture, and the same every time.
func hash(x, y int32) uint32 {
	h := uint32(x)*0x9e3779b1 ^ uint32(y)*0x85ebca77
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 12
	h *= 0x297a2d39
	return h ^ h>>15
}
