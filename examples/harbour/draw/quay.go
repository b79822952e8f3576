package main

import (
	"math"

	"dropsheet/examples/paint"
)

// The quay's edge is quayDepthM away and quayM above the water; its left end is at quayX.
const (
	quayDepthM = 60.0
	quayM      = 2.0
	quayX      = 2545.0
)

// quay is the stone quay with its deck, from quayX past the picture's right edge.
func quay(pic *picture) {
	if !pic.mirror { // the deck can't be seen from the water
		p := pic.far()
		y := func(z float64) float64 { return -(eyeM - quayM) * focalU / z }
		left := (quayX - canvasW/2) * quayDepthM // the end runs straight away from us
		p.Fill(paint.Poly(quayX, y(60), canvasW/2+left/90, y(90), 6100, y(90), 6100, y(60)),
			paint.Upward(y(60), 0x8a6a6c, y(78), 0x4d4a66))
	}
	p := pic.at(quayX, quayDepthM)
	p.Fill(box(0, -0.05, 36, quayM), func(x, h float64) paint.Ink {
		row := math.Floor(h / 0.5)
		stone := int32(math.Floor(x/1.25 + 0.5*math.Mod(row+4, 2)))
		tone := float64(paint.Hash(stone, int32(row), 9)&255) / 255
		c := paint.RGB(0x3c4360).To(paint.RGB(0x55536e), tone*0.7).To(paint.RGB(0xb5775c),
			0.35*paint.Bump(x/1.8)*paint.Smooth(0.3, 2, h))
		joint := max(paint.Bump((h-0.5*math.Round(h/0.5))/0.02),
			paint.Bump((x/1.25+0.5*math.Mod(row+4, 2)-math.Round(x/1.25+0.5*math.Mod(row+4, 2)))/0.02))
		c = c.To(paint.RGB(0x1d2340), 0.55*joint)
		return c.To(paint.RGB(0x16233a), 0.85*(1-paint.Smooth(0.35, 0.75, h+0.12*noise(x/1.7, 1, 12))))
	})
	p.Fill(box(-0.08, quayM-0.24, 36, quayM+0.04), paint.Upward(quayM-0.24, 0x6d6379, quayM, 0xd9a888))
	for _, x := range []float64{5.4, 10.9} { // ladders and tyres
		p.Fill(paint.Together(lineTo(0.07, x, 0, x, 2.2), lineTo(0.07, x+0.5, 0, x+0.5, 2.2)), paint.Flat(0x141b34))
		for h := 0.25; h < 2; h += 0.3 {
			p.Fill(lineTo(0.06, x, h, x+0.5, h), paint.Flat(0x141b34))
		}
	}
	for _, x := range []float64{2.4, 4.1, 8.1, 9.6} {
		p.Fill(lineTo(0.04, x, 1.2, x, 1.9), paint.Flat(0x141b34))
		p.Fill(ellipse(x, 0.95, 0.42, 0.45), paint.Flat(0x12172c))
		p.Fill(ellipse(x, 0.97, 0.17, 0.19), paint.Flat(0x3a3f5a))
	}
}

// quayside is what stands on the quay before the warehouse: lamps, bollards, people, cargo.
func quayside(pic *picture) {
	for _, x := range []float64{2585, 4235, 5115} {
		lamp(pic.at(x, 62))
	}
	p := pic.at(quayX, quayDepthM+0.6)
	for _, x := range []float64{0.7, 6.6, 12.2} {
		bollard(p, x)
	}
	gullAtRest(p, 0.72, 2.62, 0.42)

	cargo := pic.at(3960, 64)
	for _, b := range []struct{ x, h, w, tall float64 }{{-0.6, 2, 1.1, 1}, {0.55, 2, 1.1, 1.1}, {-0.1, 3, 1, 0.8}} {
		cargo.Fill(box(b.x, b.h, b.x+b.w, b.h+b.tall), across(b.x, 0xb07a52, b.x+b.w, 0x6d4a48))
		cargo.Fill(paint.Together(lineTo(0.07, b.x, b.h+0.1, b.x+b.w, b.h+b.tall-0.1),
			lineTo(0.07, b.x, b.h+0.08, b.x+b.w, b.h+0.08), lineTo(0.07, b.x, b.h+b.tall-0.08, b.x+b.w, b.h+b.tall-0.08)),
			paint.Flat(0x49333f))
	}
	angler(p, 2.1)
	people := pic.at(0, 63)
	person(people.shift(2905), 1.78, 1, 0x20233f)
	person(people.shift(2985), 1.64, -1, 0x5a2440)
	person(people.shift(3690), 1.74, -1, 0x222a4a)
}

// shift is the same place, but at xU across the canvas.
func (p place) shift(xU float64) place { p.XU = xU; return p }

func lamp(p place) {
	iron := paint.Flat(0x1a2038)
	p.Fill(paint.Together(box(-0.2, 2, 0.2, 2.7), box(-0.09, 2.6, 0.09, 6.9), box(-0.42, 6.85, 0.42, 6.97)), iron)
	p.Fill(paint.Poly(-0.26, 6.97, 0.26, 6.97, 0.4, 7.75, -0.4, 7.75), paint.Flat(0xfff2c4))
	p.Fill(paint.Together(paint.Poly(-0.5, 7.72, 0.5, 7.72, 0.12, 8.12, -0.12, 8.12), ellipse(0, 8.2, 0.1, 0.12)), iron)
	p.Fill(paint.Together(lineTo(0.05, -0.26, 6.97, -0.4, 7.75), lineTo(0.05, 0.26, 6.97, 0.4, 7.75)), iron)
	p.glow(0, 7.35, 4.2, paint.RGB(0xffb04c).Alpha(0.75))
	p.glow(0, 7.35, 1.3, paint.RGB(0xffe9b4).Alpha(0.9))
	if p.pic.mirror {
		return // the ground can't be seen from the water
	}
	p.Light(ellipse(0, 2, 3.4, 0.35), func(x, h float64) paint.Ink { // its pool on the ground
		return paint.RGB(0xffb860).Alpha(float32(0.6 * max(0, 1-math.Hypot(x/3.4, (h-2)/0.35))))
	})
}

func bollard(p place, x float64) {
	p.Fill(paint.Together(box(x-0.22, 2, x+0.22, 2.5), ellipse(x, 2.52, 0.34, 0.13), ellipse(x, 2, 0.26, 0.06)),
		across(x-0.3, 0x8d6a62, x+0.3, 0x151a30))
}

func gullAtRest(p place, x, h, size float64) {
	at := func(xy ...float64) []float64 {
		out := make([]float64, len(xy))
		for i := range xy {
			out[i] = [2]float64{x, h}[i%2] + size*xy[i]
		}
		return out
	}
	p.Fill(paint.Together(blob(at(-.75, .55, -.2, .62, .3, .95, .52, 1.08, .66, .92, .5, .55, .1, .28, -.3, .36)...),
		lineTo(0.05*size, at(.1, .3, .1, 0)...)), across(x-0.5*size, 0xffe6cc, x+0.5*size, 0xb9b4cb))
	p.Fill(blob(at(-.95, .52, -.3, .64, .15, .68, .2, .5, -.3, .42)...), paint.Flat(0x5d6286))
	p.Fill(paint.Poly(at(.64, 1, .88, .9, .64, .88)...), paint.Flat(0xe8963c))
}

// angler sits on the quay's edge at x, rod in hand.
func angler(p place, x float64) {
	at := func(xy ...float64) []float64 {
		for i := range xy {
			xy[i] += [2]float64{x, 2}[i%2]
		}
		return xy
	}
	p.Fill(lineTo(0.035, at(-0.25, 0.62, -1.5, 1.5, -2.6, 1.95)...), paint.Flat(0x2a2138))
	p.Fill(lineTo(0.012, at(-2.6, 1.95, -2.62, -2)...),
		func(_, _ float64) paint.Ink { return paint.RGB(0xffe9cc).Alpha(0.8) })
	p.Fill(paint.Together(lineTo(0.17, at(0.1, 0.12, -0.32, 0.1, -0.36, -0.5)...),
		lineTo(0.15, at(-0.36, -0.42, -0.5, -0.48)...)), paint.Flat(0x171a33))
	p.Fill(paint.Together(blob(at(-0.14, 0.05, -0.16, 0.5, 0, 0.78, 0.2, 0.7, 0.26, 0.3, 0.2, 0.02)...),
		lineTo(0.1, at(0.03, 0.68, -0.12, 0.42, -0.35, 0.62)...)), across(x-0.25, 0xe0a050, x+0.1, 0x5a4a3c))
	p.Fill(ellipse(x-0.02, 2.92, 0.115, 0.135), across(x-0.12, 0xf0b080, x+0.06, 0x5a4250))
	p.Fill(paint.Together(lineTo(0.04, at(-0.26, 0.97, 0.16, 1)...),
		paint.Outline(paint.Curve(at(-0.14, 0.98, -0.08, 1.1, 0.06, 1.11, 0.13, 0.99)...))), paint.Flat(0x2b3350))
}

// person stands on the quay, tallM tall, facing right (1) or left (-1); the sun lights the left edge.
func person(p place, tallM, faces float64, coat uint32) {
	s := tallM / 1.75
	at := func(xy ...float64) []float64 {
		out := make([]float64, len(xy))
		for i := range xy {
			if i%2 == 0 {
				out[i] = faces * s * xy[i]
			} else {
				out[i] = 2 + s*xy[i]
			}
		}
		return out
	}
	legs := paint.Together(lineTo(0.17*s, at(-.08, .8, -.17, .04)...), lineTo(0.17*s, at(.08, .8, .2, .04)...))
	p.Fill(legs, paint.Flat(0x15182e))
	p.Fill(paint.Together(blob(at(-.2, .7, -.23, 1.2, -.15, 1.45, .12, 1.46, .22, 1.2, .24, .7)...),
		lineTo(0.12*s, at(-.1, 1.35, -.2, 1, -.05, .78)...)), across(-0.28, 0xd98a62, -0.02, coat))
	p.Fill(ellipse(faces*0.02*s, 2+1.6*s, 0.115*s, 0.135*s), across(-0.12, 0xf0b080, 0.06, 0x5a4250))
	p.Fill(paint.Together(box(-0.15*s, 2+1.68*s, 0.15*s, 2+1.72*s),
		paint.Outline(paint.Curve(-0.12*s, 2+1.69*s, -0.08*s, 2+1.79*s, 0.08*s, 2+1.79*s, 0.12*s, 2+1.69*s))),
		paint.Flat(0x1b1d36))
}
