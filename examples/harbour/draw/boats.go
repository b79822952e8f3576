package main

import "math"

// farSail is a small yacht beyond the mole's end.
func farSail(pic *picture) {
	p := pic.at(760, 520)
	p.fill(poly(-5, 0, 4.5, 0, 6, 1.8, -5.5, 1.6), flat(0x4c4668))
	p.fill(poly(0.2, 2, 0.2, 15, -5.4, 2.6), flat(0xffdcb4))
	p.fill(poly(0.8, 2, 0.6, 13.5, 5.4, 2.2), flat(0xe8b49c))
}

// cutter is a gaff-rigged boat under tan sails, which the sun behind them shines through.
func cutter(pic *picture) {
	p := pic.at(1322, 75)
	wash(p, -4.2, 4.6)
	spar := flat(0x3b2a40)
	p.fill(lineTo(0.16, 4.2, 1.35, 6.7, 1.95), spar)
	sail := func(x0, x1 float64) paint {
		return func(x, h float64) ink {
			c := rgb(0x8e3540).to(rgb(0xf08a4c), (x-x0)/(x1-x0)+0.12*noise(x/2.2, h/5, 61))
			seam := (h + 0.18*x) / 1.15
			return c.times(1 - 0.16*bump((seam-math.Round(seam))/0.05))
		}
	}
	p.fill(outline(curve(0.35, 2.05, -2, 1.95, -4.7, 2.35), curve(-4.7, 2.35, -4.35, 5.8, -3.3, 9.9), curve(-3.3, 9.9, -1.4, 9, 0.35, 7.75)), sail(-4.6, 0.6))
	p.fill(outline(curve(6.5, 2.05, 3.2, 6.2, 0.75, 10.2), curve(0.75, 10.2, 1.35, 6, 2.1, 2.7), curve(2.1, 2.7, 4, 2.2, 6.5, 2.05)), sail(-0.5, 5.4))
	p.fill(outline(curve(4.3, 1.75, 2.4, 4.8, 0.75, 8.1), curve(0.75, 8.1, 0.85, 4.6, 0.95, 2.25), curve(0.95, 2.25, 2.6, 1.85, 4.3, 1.75)), sail(-1.5, 4))
	p.fill(together(lineTo(0.22, 0.55, 1, 0.55, 10.4), lineTo(0.12, 0.55, 10.3, 0.55, 12.4), lineTo(0.16, 0.4, 7.65, -3.45, 10.05), lineTo(0.17, 0.4, 1.95, -4.95, 2.2)), spar)
	p.fill(together(lineTo(0.045, 0.6, 10.2, 6.6, 1.95), lineTo(0.04, 0.5, 10, 0.1, 1.1), lineTo(0.04, 0.5, 10, 1.1, 1.1), lineTo(0.04, 0.55, 11, -1.6, 8.9)), flat(0x3b2a40))
	p.fill(poly(0.55, 12.3, -1, 12, 0.55, 11.75), flat(0xffcf7a))
	p.fill(outline(curve(-4.5, 1.3, -2, 0.98, 1, 0.98, 3.2, 1.2, 4.8, 1.65), curve(4.8, 1.65, 4.55, 0.7, 4.1, -0.05), points(-3.8, -0.05), curve(-3.8, -0.05, -4.35, 0.5, -4.5, 1.3)), upward(0, 0x1e2444, 1.3, 0x3e4268))
	p.fill(line(0.13, curve(-4.48, 1.22, -2, 0.9, 1, 0.9, 3.2, 1.12, 4.75, 1.56)), across(-4.5, 0xcbb4b6, 4.7, 0xffdfae))
	p.fill(together(box(-2.3, 1, -0.4, 1.55), blob(-3.5, 1, -3.55, 1.7, -3.35, 1.95, -3.1, 1.7, -3.05, 1), ellipse(-3.32, 2.12, 0.16, 0.18)), flat(0x2a2440))
	p.fill(box(-1.9, 1.18, -1.5, 1.38), flat(0xffcf7a))
}

// fishingBoat lies at the quay, its bow toward the warehouse.
func fishingBoat(pic *picture) {
	p := pic.at(4340, 49)
	wash(p, -3.9, 4.4)
	p.fill(line(0.055, curve(-4.7, 2.34, -7.3, 2.34, -9.33, 3.12)), flat(0xe2bd94)) // its warp to a bollard
	p.fill(together(lineTo(0.2, 1.2, 1.2, 1.2, 8.8), lineTo(0.14, 1.2, 3.4, 4.4, 6.3)), flat(0x4a3148))
	p.fill(together(lineTo(0.04, 1.2, 8.6, -4.6, 2.5), lineTo(0.04, 1.2, 8.6, 4.6, 1.9), lineTo(0.04, 1.2, 7.2, 4.4, 6.3), lineTo(0.04, 4.4, 6.3, 4.1, 2.6)), flat(0x1b1b34))

	p.fill(box(-1.9, 1.4, 0.7, 3.9), across(-1.9, 0xffdcb0, 0, 0xc9b8bd)) // wheelhouse
	p.fill(box(-2.15, 3.85, 0.95, 4.12), across(-2.1, 0xff9a5c, 0.9, 0x8a3d48))
	p.fill(together(box(-1.7, 2.75, -1.1, 3.5), box(-0.85, 2.75, -0.2, 3.5), box(0.05, 2.75, 0.5, 3.5)), upward(2.7, 0xff9f45, 3.5, 0xffe7a8))
	p.fill(box(-0.15, 1.4, 0.45, 2.6), flat(0x5d3a48))
	p.fill(ellipse(-0.95, 2.12, 0.34, 0.34), flat(0xf0653c)) // lifebuoy
	p.fill(ellipse(-0.95, 2.12, 0.17, 0.17), across(-1.9, 0xffdcb0, 0, 0xc9b8bd))
	p.fill(together(box(-1.3, 4.1, -0.75, 5.1)), across(-1.3, 0xf08a54, -0.75, 0x6d2c3c))
	p.glow(-0.6, 3.1, 2.2, rgb(0xffa24a).alpha(0.45))

	p.fill(together(ellipse(3.3, 1.75, 0.62, 0.62)), flat(0x2c4a50)) // net drum, fish boxes
	p.fill(ellipse(3.3, 1.75, 0.25, 0.25), flat(0xc08050))
	p.fill(together(box(2, 1.2, 2.6, 1.75), box(-3, 1.6, -2.3, 2.1)), flat(0x3f7f86))

	hull := outline(curve(-4.95, 2.5, -3.4, 1.95, -1, 1.45, 2, 1.3, 4.7, 1.55), curve(4.7, 1.55, 4.75, 0.8, 4.4, -0.05), points(-3.9, -0.05), curve(-3.9, -0.05, -4.5, 1.1, -4.95, 2.5))
	p.fill(hull, func(x, h float64) ink {
		sheer := 1.3 + 0.04*(x-1.6)*(x-1.6)*smooth(1.6, 0, x) + 0.03*max(0, x-2)
		c := rgb(0xd2502f).to(rgb(0x8e2a35), (x+4.8)/8)
		c = c.to(rgb(0xffe2bc).to(rgb(0xb9a3ad), (x+4.8)/8), smooth(-0.32, -0.29, h-sheer)-smooth(-0.14, -0.11, h-sheer))
		c = c.times(1 - 0.35*smooth(1.1, 0.1, h))
		return c.to(rgb(0x14233c), 1-smooth(0.26, 0.29, h))
	})
	p.fill(line(0.1, curve(-5, 2.52, -3.4, 1.97, -1, 1.47, 2, 1.32, 4.75, 1.57)), across(-5, 0xffd9a4, 4, 0x6a4c5c))
	p.fill(text("HD 27", -3.08, 0.8, 0.5, 1), flat(0xffeccc))
	p.fill(ellipse(1.2, 8.9, 0.12, 0.12), flat(0xffffff))
	p.glow(1.2, 8.9, 1.1, rgb(0xfff0d0).alpha(0.9))
	p.fill(together(lineTo(0.05, 2.9, 1.4, 2.9, 2.3), lineTo(0.05, 3.8, 1.4, 3.8, 2.35), lineTo(0.05, 4.6, 1.5, 4.6, 2.45), line(0.06, curve(2.9, 2.3, 3.8, 2.33, 4.65, 2.45))), flat(0x2a2440))
}

// rowingBoat goes home in the foreground: we look down into it. The rower faces back; a lantern hangs at the bow.
func rowingBoat(pic *picture) {
	p := pic.at(2930, 24)
	wash(p, -1.75, 1.9)
	near := curve(-2.05, 0.74, -1.2, 0.52, 0, 0.44, 1.2, 0.56, 2.25, 0.98)
	far := curve(2.25, 0.98, 1.3, 0.92, 0.1, 0.86, -1, 0.9, -1.9, 1.02)
	if !pic.mirror { // the water sees only its outside
		p.fill(outline(near, far), upward(0.5, 0x6a4444, 0.95, 0x2c2440))
		for _, x := range []float64{-1.2, 0.15, 1.15} {
			p.fill(poly(x-0.13, 0.5, x+0.16, 0.5, x+0.2, 0.87, x-0.06, 0.87), across(x-0.1, 0xb07850, x+0.2, 0x7d5448))
		}
		p.fill(line(0.05, far), across(-2, 0x8c6a70, 2.2, 0xffb868))
	}

	oar := flat(0xc99a6c)
	p.fill(lineTo(0.05, 0.2, 1.05, -0.35, 0.86), flat(0x8a6454))
	rower(p)
	p.fill(outline(near, curve(2.25, 0.98, 2.05, 0.45, 1.75, -0.04), points(-1.6, -0.04), curve(-1.6, -0.04, -1.95, 0.3, -2.05, 0.74)), func(x, h float64) ink {
		c := rgb(0x1d3a52).to(rgb(0x2f5a6c), (x+2)/4)
		c = c.to(rgb(0xffa860), 0.4*bump((x-2.3)/0.9))
		strake := (h - 0.1*x*x*0.9) / 0.16
		return c.times(1 - 0.3*bump((strake-math.Round(strake))/0.12) - 0.35*smooth(0.3, 0, h))
	})
	p.fill(line(0.075, near), across(-2, 0xd8a488, 2.2, 0xffd49a))
	blade := pic.at(2930, 21.8) // where the near oar dips in
	blade.fill(lineTo(0.048, 0.2, 1.5, -0.62, 0.22), oar)
	blade.fill(outline(curve(-0.58, 0.3, -0.64, 0.08, -0.74, 0), curve(-0.9, 0, -0.8, 0.16, -0.64, 0.3)), oar)
	if !pic.mirror {
		ripples(blade, -0.82, 0)
	}

	p.fill(lineTo(0.05, 1.95, 0.9, 1.95, 1.75, 2.2, 1.78), flat(0x2a2238)) // the lantern
	p.fill(box(2.1, 1.42, 2.3, 1.7), flat(0xfff1c0))
	p.fill(together(box(2.07, 1.68, 2.33, 1.74), box(2.07, 1.38, 2.33, 1.43)), flat(0x2a2238))
	p.glow(2.2, 1.55, 1.5, rgb(0xffb450).alpha(0.8))
	p.glow(2.2, 1.55, 0.45, rgb(0xfff0c0).alpha(0.9))
}

func rower(p place) {
	coat := across(-0.7, 0x24304f, 0.1, 0xc2503c)
	p.fill(together(lineTo(0.2, 0.1, 0.82, -0.35, 0.95, -0.6, 0.72)), flat(0x1b2440))
	p.fill(blob(-0.12, 0.72, -0.18, 1.2, -0.02, 1.52, 0.2, 1.5, 0.34, 1.2, 0.34, 0.72), across(-0.2, 0x7a2c3c, 0.36, 0xe8683c))
	p.fill(together(lineTo(0.13, 0.06, 1.42, -0.2, 1.12, 0.2, 1.06)), coat)
	p.fill(ellipse(0.04, 1.7, 0.135, 0.16), across(-0.1, 0x8a5a52, 0.16, 0xffb98a))
	p.fill(together(outline(curve(-0.14, 1.74, -0.1, 1.88, 0.06, 1.92, 0.2, 1.85, 0.22, 1.72)), lineTo(0.05, -0.24, 1.74, 0.2, 1.74)), flat(0x232a48))
}

// wash is the dark line and the light one where a hull meets the water between x0 and x1.
func wash(p place, x0, x1 float64) {
	if p.pic.mirror {
		return
	}
	mid, half := (x0+x1)/2, (x1-x0)/2
	p.fill(ellipse(mid, 0, half*1.02, 0.06), func(_, _ float64) ink { return rgb(0x0a182c).alpha(0.8) })
	p.light(ellipse(mid, -0.13, half*1.12, 0.03), func(x, _ float64) ink {
		return rgb(0xffd2a8).alpha(float32(0.35 * max(0, 1-math.Abs(x-mid)/half/1.12)))
	})
}

// ripples are rings where something dips into the water.
func ripples(p place, x, h float64) {
	for i, r := range []float64{0.2, 0.36, 0.56} {
		var ring []pt
		for k := range 49 {
			s, c := math.Sincos(2 * math.Pi * float64(k) / 48)
			ring = append(ring, pt{x + r*c, h + 0.27*r*s})
		}
		p.light(line(0.022, ring), func(_, _ float64) ink { return rgb(0xffd9b0).alpha(0.5 - 0.13*float32(i)) })
	}
}

// buoy marks the channel, red with a cage and a lamp.
func buoy(pic *picture) {
	p := pic.at(1330, 23)
	wash(p, -0.62, 0.62)
	p.fill(outline(curve(-0.72, -0.03, -0.78, 0.3, -0.6, 0.5), curve(0.6, 0.5, 0.78, 0.3, 0.72, -0.03)), across(-0.75, 0x7c2638, 0.75, 0xf0643c))
	p.fill(together(lineTo(0.07, -0.45, 0.5, -0.14, 1.6), lineTo(0.07, 0.45, 0.5, 0.14, 1.6), lineTo(0.05, 0, 0.5, 0, 1.6), lineTo(0.06, -0.3, 1.05, 0.3, 1.05)), across(-0.5, 0x7c2638, 0.5, 0xe0583c))
	p.fill(box(-0.22, 1.55, 0.22, 1.64), flat(0x4a1f34))
	p.fill(box(-0.1, 1.64, 0.1, 1.88), flat(0xffd0b0))
	p.fill(ellipse(0, 1.9, 0.12, 0.06), flat(0x4a1f34))
	p.glow(0, 1.76, 0.95, rgb(0xff5a3c).alpha(0.85))
	p.glow(0, 1.76, 0.3, rgb(0xffd8c0).alpha(0.9))
}
