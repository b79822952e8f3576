package paint

import "math"

// Ink is a colour, sRGB-encoded 0..1, and how much of it is laid on.
type Ink struct{ R, G, B, A float32 }

// RGB is the opaque colour 0xRRGGBB.
func RGB(v uint32) Ink {
	return Ink{float32(v>>16&255) / 255, float32(v>>8&255) / 255, float32(v&255) / 255, 1}
}

// Alpha lays on only a, 0..1, of the colour.
func (c Ink) Alpha(a float32) Ink { c.A *= a; return c }

// To goes from c (t = 0) to d (t = 1).
func (c Ink) To(d Ink, t float64) Ink {
	f := float32(min(max(t, 0), 1))
	return Ink{over(c.R, d.R, f), over(c.G, d.G, f), over(c.B, d.B, f), over(c.A, d.A, f)}
}

// Times makes the colour lighter or darker.
func (c Ink) Times(f float64) Ink {
	g := float32(f)
	return Ink{c.R * g, c.G * g, c.B * g, c.A}
}

// Shine adds light of colour d, as much of it as a says, 0..1.
func (c Ink) Shine(d Ink, a float64) Ink {
	f := float32(a)
	return Ink{screen(c.R, d.R, f), screen(c.G, d.G, f), screen(c.B, d.B, f), 1}
}

func over(have, want, a float32) float32   { return have + (want-have)*a }
func screen(have, want, a float32) float32 { return 1 - (1-have)*(1-want*a) }

// Paint gives the colour at x, y of the place where it is laid on.
type Paint func(x, y float64) Ink

// Flat is the one colour 0xRRGGBB everywhere.
func Flat(v uint32) Paint { c := RGB(v); return func(_, _ float64) Ink { return c } }

// Upward goes from one colour at height y0 to another at y1.
func Upward(y0 float64, low uint32, y1 float64, high uint32) Paint {
	a, b := RGB(low), RGB(high)
	return func(_, y float64) Ink { return a.To(b, (y-y0)/(y1-y0)) }
}

// Smooth rises from 0 at a to 1 at b, level at both ends.
func Smooth(a, b, t float64) float64 {
	t = min(max((t-a)/(b-a), 0), 1)
	return t * t * (3 - 2*t)
}

// Bump is a bell, 1 at 0 and nearly 0 beyond -2 and 2.
func Bump(t float64) float64 { return math.Exp(-t * t) }

// Hash scatters whole numbers over all of uint32: the only chance in the artworks, and the same every time.
func Hash(x, y int32, seed uint32) uint32 {
	h := uint32(x)*0x9e3779b1 ^ uint32(y)*0x85ebca77 ^ seed*0xc2b2ae3d
	h ^= h >> 15
	h *= 0x2c1b3c6d
	h ^= h >> 12
	h *= 0x297a2d39
	return h ^ h>>15
}
