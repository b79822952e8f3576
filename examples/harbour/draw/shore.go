package main

import (
	"math"

	"dropsheet/examples/paint"
)

const lighthouseX, moleDepthM = 1850.0, 150.0

// mole is the stone pier that comes in from far left, with its head at the lighthouse.
func mole(pic *picture) {
	far := pic.far()
	far.Near = float32(nearestM / moleDepthM)
	// spot finds a height on the mole's face, along it from the head (t = 0) past the picture's edge (t = 4).
	spot := func(t, h float64) paint.Point {
		depthM := moleDepthM + 300*t
		up := h - eyeM
		if pic.mirror {
			up = h + eyeM
		}
		return paint.Point{X: canvasW/2 + (-19.5-185*t)*focalU/depthM, Y: up * focalU / depthM}
	}
	band := func(h0, h1, from, to float64) paint.Shape {
		var low, high []paint.Point
		for i := range 121 {
			t := float64(i) / 120
			low = append(low, spot(from+(to-from)*t, h0))
			high = append(high, spot(to+(from-to)*t, h1))
		}
		return paint.Outline(low, high)
	}
	far.Fill(band(4, 5.1, 0.06, 4), across(0, 0x8a7490, 2200, 0x5b5a7d))
	far.Fill(band(-0.1, 4, 0, 4), across(0, 0x77688a, 2150, 0x3c4266))
	far.Fill(band(3.75, 4.05, 0, 4), across(300, 0xb08f96, 2200, 0xffc890))
	for i, h := range []float64{0.9, 1.85, 2.8} {
		far.Fill(band(h, h+0.07, 0, 4), func(_, _ float64) paint.Ink { return paint.RGB(0x262b4c).Alpha(0.5) })
		for k := range 30 {
			t := 0.012 + math.Pow(float64(k)/30+0.012*float64(i%2)+0.008*chance(k, uint32(i)), 1.6)
			a, b := spot(t, h), spot(t, h+0.95)
			far.Fill(lineTo(2.2, a.X, a.Y, b.X, b.Y), func(_, _ float64) paint.Ink { return paint.RGB(0x262b4c).Alpha(0.38) })
		}
	}
	far.Fill(band(-0.1, 0.55, 0, 4), across(0, 0x4f4a6c, 2150, 0x20284a))

	head := pic.at(canvasW/2-19.5*focalU/moleDepthM, moleDepthM) // boulders against the swell
	const boulders = 46
	for i := range boulders {
		low := float64(i) / boulders // the upper ones lie behind
		x := 2.6*low + 0.6 - (4+13*low)*chance(i, 21)*chance(i, 22)
		r := 0.55 + 0.75*chance(i, 23)
		h := 3.1*(1-low)*paint.Smooth(5.2, -1, x) - 0.1
		j := func(k int) float64 { return r * (0.8 + 0.4*chance(10*i+k, 25)) }
		head.Fill(paint.Poly(x-j(0), max(h-r, -0.1), x-j(1), h+0.2*r, x-0.45*j(2), h+0.8*j(3), x+0.4*j(4), h+0.75*j(5),
			x+j(6), h+0.1*r, x+0.9*j(7), max(h-r, -0.1)), across(x-r, 0x262c50, x+1.3*r, 0x6d5872))
		head.Fill(paint.Poly(x-0.45*j(2), h+0.8*j(3), x+0.4*j(4), h+0.75*j(5), x+j(6), h+0.1*r, x+0.15*r, h+0.3*r),
			across(x-0.3*r, 0x4c4a6e, x+r, 0xc98a78))
	}
}

// lighthouse is a banded tower with its keeper's cottage; its beam sweeps over the harbour.
func lighthouse(pic *picture) {
	p := pic.at(lighthouseX, moleDepthM)
	beam(p)
	p.glow(0, 29, 15, paint.RGB(0xffe2a0).Alpha(0.9))

	p.Fill(box(-9.8, 4, -4.2, 7), across(-9.8, 0xb3a9bd, -4.2, 0xe9c7b0)) // the cottage
	p.Fill(paint.Poly(-10.3, 6.9, -3.7, 6.9, -5, 9.3, -9, 9.3), across(-10, 0x6b3a50, -4, 0xb2554a))
	p.Fill(box(-8.7, 9, -8, 10.6), paint.Flat(0x5c4561))
	p.Fill(paint.Together(box(-8.7, 5, -7.7, 6.3), box(-6.4, 5, -5.4, 6.3)), paint.Flat(0xffd98a))
	p.glow(-8.2, 5.6, 2.2, paint.RGB(0xffb45a).Alpha(0.4))
	p.glow(-5.9, 5.6, 2.2, paint.RGB(0xffb45a).Alpha(0.4))

	p.Fill(box(-4.3, 3.9, 4.3, 6.3), across(-4.3, 0x5d5f88, 4.3, 0xf0b48c))
	p.Fill(box(-4.6, 6.1, 4.6, 6.6), across(-4.6, 0x7d7f9f, 4.6, 0xffd2a0))
	p.Fill(paint.Poly(-3.7, 6.5, 3.7, 6.5, 2.3, 26, -2.3, 26), tower)
	p.Fill(paint.Together(box(-0.75, 6.6, 0.75, 9), ellipse(0, 9, 0.75, 0.7)), paint.Flat(0x2a2c4e))
	for _, h := range []float64{12.6, 17.4, 22.2} {
		p.Fill(box(-0.9, h, -0.1, h+1.4), paint.Flat(0xffdf9c))
	}
	p.Fill(paint.Poly(-2.2, 25.6, 2.2, 25.6, 3.3, 26.9, -3.3, 26.9), across(-3.3, 0x4c4f78, 3.3, 0xf2b48e))
	p.Fill(box(-3.5, 26.8, 3.5, 27.3), across(-3.5, 0x2c3057, 3.5, 0xc98a78))
	p.Fill(box(-1.75, 27.2, 1.75, 30.6), func(x, h float64) paint.Ink { // the lantern room's glass
		return paint.RGB(0xffb95e).To(paint.RGB(0xfffbe6), 1.25-math.Hypot(x/1.7, (h-28.9)/2.2))
	})
	frame := paint.RGB(0x343659)
	for _, x := range []float64{-1.7, -0.62, 0.62, 1.7} {
		p.Fill(box(x-0.1, 27.2, x+0.1, 30.6), func(_, _ float64) paint.Ink { return frame })
	}
	for _, x := range []float64{-3.3, -2.5, 2.5, 3.3} {
		p.Fill(box(x-0.07, 27.2, x+0.07, 28.6), paint.Flat(0x2c3057))
	}
	p.Fill(paint.Together(box(-3.35, 28.5, 3.35, 28.65), box(-3.35, 27.9, 3.35, 28)), paint.Flat(0x2c3057))
	p.Fill(paint.Outline(paint.Curve(-2.25, 30.5, -1.9, 31.8, -1, 32.9, 0, 33.3, 1, 32.9, 1.9, 31.8, 2.25, 30.5)),
		across(-2.2, 0x6a2c4a, 2.2, 0xf2694a))
	p.Fill(paint.Together(box(-0.1, 33, 0.1, 35.4), ellipse(0, 33.7, 0.4, 0.4)), paint.Flat(0x3a3358))
	p.glow(0, 29, 4.2, paint.RGB(0xfff6dc).Alpha(0.85))
}

// tower gives the lighthouse's bands, which bend round it as seen from below; the low sun grazes its right side.
func tower(x, h float64) paint.Ink {
	half := 3.7 - (h-6.5)/19.5*1.4
	t := x / half
	level := h + 0.45*(math.Sqrt(max(0, 1-t*t))-1)*paint.Smooth(3, 26, h)
	// Five bands, red below; the edge between two is a centimetre or so soft.
	phase := math.Mod((level-6.5)/3.9+20, 2)
	white := paint.Smooth(0.99, 1.01, phase) - paint.Smooth(1.99, 2, phase)
	lit := paint.Smooth(0.25, 1, t)
	dark := 0.66 + 0.34*paint.Smooth(-1.05, -0.1, t) - 0.14*paint.Smooth(-0.2, 0.5, t)*(1-lit)
	red := paint.RGB(0xb03a48).Times(dark).To(paint.RGB(0xff7a4e), lit)
	pale := paint.RGB(0xc9cade).Times(dark).To(paint.RGB(0xffe9c4), lit)
	return red.To(pale, white)
}

// beam is the light's two rays: one toward us and the right, widening, one away to the left.
func beam(p place) {
	ray := func(dx, dh, half, lengthM, strength float64) {
		angle := math.Atan2(dh, dx)
		s, c := math.Sincos(angle)
		spread := half * lengthM
		wedge := paint.Poly(0, 29, lengthM*c-spread*s, 29+lengthM*s+spread*c, lengthM*c+spread*s, 29+lengthM*s-spread*c)
		p.Light(wedge, func(x, h float64) paint.Ink {
			along, off := x*c+(h-29)*s, -x*s+(h-29)*c
			t := off / (half * max(along, 0.1))
			soft := max(0, 1-t*t)
			return paint.RGB(0xfff0c8).Alpha(float32(strength * soft * soft * math.Exp(-along/(0.62*lengthM)) *
				paint.Smooth(lengthM, 0.6*lengthM, along)))
		})
	}
	ray(1, 0.125, 0.075, 108, 0.85)
	ray(-1, -0.03, 0.05, 52, 0.6)
}
