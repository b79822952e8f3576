package main

import (
	"math"

	"dropsheet/examples/paint"
)

// farSail is a small yacht beyond the mole's end.
func farSail(pic *picture) {
	p := pic.at(760, 520)
	p.Fill(paint.Poly(-5, 0, 4.5, 0, 6, 1.8, -5.5, 1.6), paint.Flat(0x4c4668))
	p.Fill(paint.Poly(0.2, 2, 0.2, 15, -5.4, 2.6), paint.Flat(0xffdcb4))
	p.Fill(paint.Poly(0.8, 2, 0.6, 13.5, 5.4, 2.2), paint.Flat(0xe8b49c))
}

// cutter is a gaff-rigged boat under tan sails, which the sun behind them shines through.
func cutter(pic *picture) {
	p := pic.at(1322, 75)
	wash(p, -4.2, 4.6)
	spar := paint.Flat(0x3b2a40)
	p.Fill(lineTo(0.16, 4.2, 1.35, 6.7, 1.95), spar)
	sail := func(x0, x1 float64) paint.Paint {
		return func(x, h float64) paint.Ink {
			c := paint.RGB(0x8e3540).To(paint.RGB(0xf08a4c), (x-x0)/(x1-x0)+0.12*noise(x/2.2, h/5, 61))
			seam := (h + 0.18*x) / 1.15
			return c.Times(1 - 0.16*paint.Bump((seam-math.Round(seam))/0.05))
		}
	}
	p.Fill(paint.Outline(paint.Curve(0.35, 2.05, -2, 1.95, -4.7, 2.35), paint.Curve(-4.7, 2.35, -4.35, 5.8, -3.3, 9.9),
		paint.Curve(-3.3, 9.9, -1.4, 9, 0.35, 7.75)), sail(-4.6, 0.6))
	p.Fill(paint.Outline(paint.Curve(6.5, 2.05, 3.2, 6.2, 0.75, 10.2), paint.Curve(0.75, 10.2, 1.35, 6, 2.1, 2.7),
		paint.Curve(2.1, 2.7, 4, 2.2, 6.5, 2.05)), sail(-0.5, 5.4))
	p.Fill(paint.Outline(paint.Curve(4.3, 1.75, 2.4, 4.8, 0.75, 8.1), paint.Curve(0.75, 8.1, 0.85, 4.6, 0.95, 2.25),
		paint.Curve(0.95, 2.25, 2.6, 1.85, 4.3, 1.75)), sail(-1.5, 4))
	p.Fill(paint.Together(lineTo(0.22, 0.55, 1, 0.55, 10.4), lineTo(0.12, 0.55, 10.3, 0.55, 12.4),
		lineTo(0.16, 0.4, 7.65, -3.45, 10.05), lineTo(0.17, 0.4, 1.95, -4.95, 2.2)), spar)
	p.Fill(paint.Together(lineTo(0.045, 0.6, 10.2, 6.6, 1.95), lineTo(0.04, 0.5, 10, 0.1, 1.1),
		lineTo(0.04, 0.5, 10, 1.1, 1.1), lineTo(0.04, 0.55, 11, -1.6, 8.9)), paint.Flat(0x3b2a40))
	p.Fill(paint.Poly(0.55, 12.3, -1, 12, 0.55, 11.75), paint.Flat(0xffcf7a))
	p.Fill(paint.Outline(paint.Curve(-4.5, 1.3, -2, 0.98, 1, 0.98, 3.2, 1.2, 4.8, 1.65),
		paint.Curve(4.8, 1.65, 4.55, 0.7, 4.1, -0.05), paint.Points(-3.8, -0.05),
		paint.Curve(-3.8, -0.05, -4.35, 0.5, -4.5, 1.3)), paint.Upward(0, 0x1e2444, 1.3, 0x3e4268))
	p.Fill(line(0.13, paint.Curve(-4.48, 1.22, -2, 0.9, 1, 0.9, 3.2, 1.12, 4.75, 1.56)),
		across(-4.5, 0xcbb4b6, 4.7, 0xffdfae))
	p.Fill(paint.Together(box(-2.3, 1, -0.4, 1.55), blob(-3.5, 1, -3.55, 1.7, -3.35, 1.95, -3.1, 1.7, -3.05, 1),
		ellipse(-3.32, 2.12, 0.16, 0.18)), paint.Flat(0x2a2440))
	p.Fill(box(-1.9, 1.18, -1.5, 1.38), paint.Flat(0xffcf7a))
}

// fishingBoat lies at the quay, its bow toward the warehouse.
func fishingBoat(pic *picture) {
	p := pic.at(4340, 49)
	wash(p, -3.9, 4.4)
	p.Fill(line(0.055, paint.Curve(-4.7, 2.34, -7.3, 2.34, -9.33, 3.12)), paint.Flat(0xe2bd94)) // its warp to a bollard
	p.Fill(paint.Together(lineTo(0.2, 1.2, 1.2, 1.2, 8.8), lineTo(0.14, 1.2, 3.4, 4.4, 6.3)), paint.Flat(0x4a3148))
	p.Fill(paint.Together(lineTo(0.04, 1.2, 8.6, -4.6, 2.5), lineTo(0.04, 1.2, 8.6, 4.6, 1.9),
		lineTo(0.04, 1.2, 7.2, 4.4, 6.3), lineTo(0.04, 4.4, 6.3, 4.1, 2.6)), paint.Flat(0x1b1b34))

	p.Fill(box(-1.9, 1.4, 0.7, 3.9), across(-1.9, 0xffdcb0, 0, 0xc9b8bd)) // wheelhouse
	p.Fill(box(-2.15, 3.85, 0.95, 4.12), across(-2.1, 0xff9a5c, 0.9, 0x8a3d48))
	p.Fill(paint.Together(box(-1.7, 2.75, -1.1, 3.5), box(-0.85, 2.75, -0.2, 3.5), box(0.05, 2.75, 0.5, 3.5)),
		paint.Upward(2.7, 0xff9f45, 3.5, 0xffe7a8))
	p.Fill(box(-0.15, 1.4, 0.45, 2.6), paint.Flat(0x5d3a48))
	p.Fill(ellipse(-0.95, 2.12, 0.34, 0.34), paint.Flat(0xf0653c)) // lifebuoy
	p.Fill(ellipse(-0.95, 2.12, 0.17, 0.17), across(-1.9, 0xffdcb0, 0, 0xc9b8bd))
	p.Fill(paint.Together(box(-1.3, 4.1, -0.75, 5.1)), across(-1.3, 0xf08a54, -0.75, 0x6d2c3c))
	p.glow(-0.6, 3.1, 2.2, paint.RGB(0xffa24a).Alpha(0.45))

	p.Fill(paint.Together(ellipse(3.3, 1.75, 0.62, 0.62)), paint.Flat(0x2c4a50)) // net drum, fish boxes
	p.Fill(ellipse(3.3, 1.75, 0.25, 0.25), paint.Flat(0xc08050))
	p.Fill(paint.Together(box(2, 1.2, 2.6, 1.75), box(-3, 1.6, -2.3, 2.1)), paint.Flat(0x3f7f86))

	hull := paint.Outline(paint.Curve(-4.95, 2.5, -3.4, 1.95, -1, 1.45, 2, 1.3, 4.7, 1.55),
		paint.Curve(4.7, 1.55, 4.75, 0.8, 4.4, -0.05), paint.Points(-3.9, -0.05),
		paint.Curve(-3.9, -0.05, -4.5, 1.1, -4.95, 2.5))
	p.Fill(hull, func(x, h float64) paint.Ink {
		sheer := 1.3 + 0.04*(x-1.6)*(x-1.6)*paint.Smooth(1.6, 0, x) + 0.03*max(0, x-2)
		c := paint.RGB(0xd2502f).To(paint.RGB(0x8e2a35), (x+4.8)/8)
		c = c.To(paint.RGB(0xffe2bc).To(paint.RGB(0xb9a3ad), (x+4.8)/8), paint.Smooth(-0.32, -0.29, h-sheer)-
			paint.Smooth(-0.14, -0.11, h-sheer))
		c = c.Times(1 - 0.35*paint.Smooth(1.1, 0.1, h))
		return c.To(paint.RGB(0x14233c), 1-paint.Smooth(0.26, 0.29, h))
	})
	p.Fill(line(0.1, paint.Curve(-5, 2.52, -3.4, 1.97, -1, 1.47, 2, 1.32, 4.75, 1.57)), across(-5, 0xffd9a4, 4, 0x6a4c5c))
	p.Fill(paint.Text("HD 27", -3.08, 0.8, 0.5, 1, 0), paint.Flat(0xffeccc))
	p.Fill(ellipse(1.2, 8.9, 0.12, 0.12), paint.Flat(0xffffff))
	p.glow(1.2, 8.9, 1.1, paint.RGB(0xfff0d0).Alpha(0.9))
	p.Fill(paint.Together(lineTo(0.05, 2.9, 1.4, 2.9, 2.3), lineTo(0.05, 3.8, 1.4, 3.8, 2.35),
		lineTo(0.05, 4.6, 1.5, 4.6, 2.45), line(0.06, paint.Curve(2.9, 2.3, 3.8, 2.33, 4.65, 2.45))), paint.Flat(0x2a2440))
}

// wash is the dark line and the light one where a hull meets the water between x0 and x1.
func wash(p place, x0, x1 float64) {
	if p.pic.mirror {
		return
	}
	mid, half := (x0+x1)/2, (x1-x0)/2
	p.Fill(ellipse(mid, 0, half*1.02, 0.06), func(_, _ float64) paint.Ink { return paint.RGB(0x0a182c).Alpha(0.8) })
	p.Light(ellipse(mid, -0.13, half*1.12, 0.03), func(x, _ float64) paint.Ink {
		return paint.RGB(0xffd2a8).Alpha(float32(0.35 * max(0, 1-math.Abs(x-mid)/half/1.12)))
	})
}

// buoy marks the channel, red with a cage and a lamp.
func buoy(pic *picture) {
	p := pic.at(1330, 23)
	wash(p, -0.62, 0.62)
	p.Fill(paint.Outline(paint.Curve(-0.72, -0.03, -0.78, 0.3, -0.6, 0.5),
		paint.Curve(0.6, 0.5, 0.78, 0.3, 0.72, -0.03)), across(-0.75, 0x7c2638, 0.75, 0xf0643c))
	p.Fill(paint.Together(lineTo(0.07, -0.45, 0.5, -0.14, 1.6), lineTo(0.07, 0.45, 0.5, 0.14, 1.6),
		lineTo(0.05, 0, 0.5, 0, 1.6), lineTo(0.06, -0.3, 1.05, 0.3, 1.05)), across(-0.5, 0x7c2638, 0.5, 0xe0583c))
	p.Fill(box(-0.22, 1.55, 0.22, 1.64), paint.Flat(0x4a1f34))
	p.Fill(box(-0.1, 1.64, 0.1, 1.88), paint.Flat(0xffd0b0))
	p.Fill(ellipse(0, 1.9, 0.12, 0.06), paint.Flat(0x4a1f34))
	p.glow(0, 1.76, 0.95, paint.RGB(0xff5a3c).Alpha(0.85))
	p.glow(0, 1.76, 0.3, paint.RGB(0xffd8c0).Alpha(0.9))
}
