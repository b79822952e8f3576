package main

import (
	"math"

	"dropsheet/examples/paint"
)

// rowingBoat goes home in the foreground: we look down into it. The rower faces back; a lantern hangs at the bow.
func rowingBoat(pic *picture) {
	p := pic.at(2930, 24)
	wash(p, -1.75, 1.9)
	near := paint.Curve(-2.05, 0.74, -1.2, 0.52, 0, 0.44, 1.2, 0.56, 2.25, 0.98)
	far := paint.Curve(2.25, 0.98, 1.3, 0.92, 0.1, 0.86, -1, 0.9, -1.9, 1.02)
	if !pic.mirror { // the water sees only its outside
		p.Fill(paint.Outline(near, far), paint.Upward(0.5, 0x6a4444, 0.95, 0x2c2440))
		for _, x := range []float64{-1.2, 0.15, 1.15} {
			p.Fill(paint.Poly(x-0.13, 0.5, x+0.16, 0.5, x+0.2, 0.87, x-0.06, 0.87), across(x-0.1, 0xb07850, x+0.2, 0x7d5448))
		}
		p.Fill(line(0.05, far), across(-2, 0x8c6a70, 2.2, 0xffb868))
	}

	oar := paint.Flat(0xc99a6c)
	p.Fill(lineTo(0.05, 0.2, 1.05, -0.35, 0.86), paint.Flat(0x8a6454))
	rower(p)
	p.Fill(paint.Outline(near, paint.Curve(2.25, 0.98, 2.05, 0.45, 1.75, -0.04), paint.Points(-1.6, -0.04),
		paint.Curve(-1.6, -0.04, -1.95, 0.3, -2.05, 0.74)), func(x, h float64) paint.Ink {
		c := paint.RGB(0x1d3a52).To(paint.RGB(0x2f5a6c), (x+2)/4)
		c = c.To(paint.RGB(0xffa860), 0.4*paint.Bump((x-2.3)/0.9))
		strake := (h - 0.1*x*x*0.9) / 0.16
		return c.Times(1 - 0.3*paint.Bump((strake-math.Round(strake))/0.12) - 0.35*paint.Smooth(0.3, 0, h))
	})
	p.Fill(line(0.075, near), across(-2, 0xd8a488, 2.2, 0xffd49a))
	blade := pic.at(2930, 21.8) // where the near oar dips in
	blade.Fill(lineTo(0.048, 0.2, 1.5, -0.62, 0.22), oar)
	blade.Fill(paint.Outline(paint.Curve(-0.58, 0.3, -0.64, 0.08, -0.74, 0),
		paint.Curve(-0.9, 0, -0.8, 0.16, -0.64, 0.3)), oar)
	if !pic.mirror {
		ripples(blade, -0.82, 0)
	}

	p.Fill(lineTo(0.05, 1.95, 0.9, 1.95, 1.75, 2.2, 1.78), paint.Flat(0x2a2238)) // the lantern
	p.Fill(box(2.1, 1.42, 2.3, 1.7), paint.Flat(0xfff1c0))
	p.Fill(paint.Together(box(2.07, 1.68, 2.33, 1.74), box(2.07, 1.38, 2.33, 1.43)), paint.Flat(0x2a2238))
	p.glow(2.2, 1.55, 1.5, paint.RGB(0xffb450).Alpha(0.8))
	p.glow(2.2, 1.55, 0.45, paint.RGB(0xfff0c0).Alpha(0.9))
}

func rower(p place) {
	coat := across(-0.7, 0x24304f, 0.1, 0xc2503c)
	p.Fill(paint.Together(lineTo(0.2, 0.1, 0.82, -0.35, 0.95, -0.6, 0.72)), paint.Flat(0x1b2440))
	p.Fill(blob(-0.12, 0.72, -0.18, 1.2, -0.02, 1.52, 0.2, 1.5, 0.34, 1.2, 0.34, 0.72),
		across(-0.2, 0x7a2c3c, 0.36, 0xe8683c))
	p.Fill(paint.Together(lineTo(0.13, 0.06, 1.42, -0.2, 1.12, 0.2, 1.06)), coat)
	p.Fill(ellipse(0.04, 1.7, 0.135, 0.16), across(-0.1, 0x8a5a52, 0.16, 0xffb98a))
	p.Fill(paint.Together(paint.Outline(paint.Curve(-0.14, 1.74, -0.1, 1.88, 0.06, 1.92, 0.2, 1.85, 0.22, 1.72)),
		lineTo(0.05, -0.24, 1.74, 0.2, 1.74)), paint.Flat(0x232a48))
}

// ripples are rings where something dips into the water.
func ripples(p place, x, h float64) {
	for i, r := range []float64{0.2, 0.36, 0.56} {
		var ring []paint.Point
		for k := range 49 {
			s, c := math.Sincos(2 * math.Pi * float64(k) / 48)
			ring = append(ring, paint.Point{X: x + r*c, Y: h + 0.27*r*s})
		}
		p.Light(line(0.022, ring), func(_, _ float64) paint.Ink { return paint.RGB(0xffd9b0).Alpha(0.5 - 0.13*float32(i)) })
	}
}
