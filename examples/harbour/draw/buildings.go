package main

import "math"

// warehouse faces us with its gable: a planked front, warm light from its door and windows, and its name in letters 3 m tall.
func warehouse(pic *picture) {
	p := pic.at(3400, 70)
	const half, floor, eaves, ridge = 8.75, quayM, 11.0, 15.0
	p.fill(poly(-half, floor-0.1, half, floor-0.1, half, eaves, 0, ridge, -half, eaves), func(x, h float64) ink {
		plank := math.Floor(x / 0.7)
		c := rgb(0x1f4a60).to(rgb(0x17364f), 0.8*float64(hash(int32(plank), 3, 4)&255)/255)
		c = c.times(1 - 0.3*bump((x/0.7-math.Round(x/0.7))/0.05))
		c = c.to(rgb(0xe8875a), 0.55*bump((x+half)/0.8)) // the sun grazes the left corner
		for _, lx := range []float64{-5.4, 0, 5.4} {     // pools of the lamps over the name
			down := 11.2 - h
			wide := 0.5 + 0.62*max(0, down)
			c = c.to(rgb(0x6fa89a), 0.72*bump((x-lx-0.45)/wide)*smooth(-0.35, 0.4, down)*bump(down/4.4))
		}
		return c.to(rgb(0x10202f), 0.5*(1-smooth(floor, floor+0.7, h)))
	})
	p.fill(poly(-half, eaves, -half-0.9, eaves-0.75, -half-0.9, eaves-0.25, 0, ridge+0.75, half+0.9, eaves-0.25, half+0.9, eaves-0.75, half, eaves, 0, ridge), func(x, h float64) ink {
		return rgb(0x2b2d4d).to(rgb(0xffb47c), smooth(1, -10, x)*0.9)
	})

	name := text("QUAY 7", 0, 7, 3.1, 0.93)
	edge, dark, pale := name.bolder(0.12), flat(0x0a1c2c), upward(7, 0xffd28c, 10, 0xfff6dc)
	p.fill(name.moved(0.12, -0.1), dark) // its shadow
	p.fill(edge.moved(0.12, -0.1), dark)
	p.fill(name, pale)
	p.fill(edge, pale)
	for _, x := range []float64{-5.4, 0, 5.4} { // its lamps, on swan necks
		p.fill(line(0.09, curve(x, 10.9, x, 11.45, x+0.25, 11.6, x+0.45, 11.35)), flat(0x111d30))
		p.fill(poly(x+0.15, 11.1, x+0.75, 11.1, x+0.55, 11.42, x+0.35, 11.42), flat(0x111d30))
		p.fill(ellipse(x+0.45, 11.08, 0.2, 0.09), flat(0xfff4d0))
		p.glow(x+0.45, 11.05, 1.1, rgb(0xffcf80).alpha(0.8))
	}

	window := func(x, h, w, tall float64) {
		p.fill(box(x-0.14, h-0.14, x+w+0.14, h+tall+0.14), flat(0xd8c4b0))
		p.fill(box(x, h, x+w, h+tall), upward(h, 0xff9f45, h+tall, 0xffe29a))
		p.fill(together(lineTo(0.1, x+w/2, h, x+w/2, h+tall), lineTo(0.1, x, h+tall/2, x+w, h+tall/2)), flat(0x6b3a34))
		p.glow(x+w/2, h+tall/2, 1.6, rgb(0xff9a40).alpha(0.35))
	}
	window(-7.3, 4, 1.5, 1.9)
	window(-4.6, 4, 1.5, 1.9)
	window(3.2, 4, 1.5, 1.9)
	window(5.9, 4, 1.5, 1.9)
	p.fill(ellipse(0, 12.75, 0.98, 0.98), flat(0xd8c4b0))
	p.fill(ellipse(0, 12.75, 0.8, 0.8), flat(0xffc96e))
	p.fill(together(lineTo(0.1, -0.8, 12.75, 0.8, 12.75), lineTo(0.1, 0, 11.95, 0, 13.55)), flat(0x6b3a34))
	p.glow(0, 12.75, 2, rgb(0xff9a40).alpha(0.4))

	p.fill(box(-2.25, floor, 2.25, 6.2), flat(0xd8c4b0)) // the door, one leaf slid open
	p.fill(box(-2.05, floor, 2.05, 6), func(x, h float64) ink {
		return rgb(0xff9436).to(rgb(0xffe9a6), 1.1-math.Hypot((x+0.9)/2, (h-4.4)/3))
	})
	p.fill(box(0.1, floor, 2.05, 6), across(0.1, 0x8e3f3c, 2.05, 0x652c3e))
	p.fill(together(lineTo(0.12, 0.2, 2.1, 1.95, 5.9), lineTo(0.12, 0.15, 4, 2, 4)), flat(0x4a2034))
	p.fill(together(box(-1.75, floor, -0.95, 2.9), box(-1.5, 2.9, -0.85, 3.5)), flat(0x8a4a2c))
	p.glow(-0.9, 4, 4, rgb(0xff9a40).alpha(0.45))
	if !pic.mirror { // the light that falls out on the ground
		p.light(poly(-2.1, 2, 0.1, 2, 1.2, 1.45, -3.2, 1.45), func(_, h float64) ink { return rgb(0xffa850).alpha(float32(0.75 * smooth(1.4, 2, h))) })
	}
}

// shed is the long brick building behind the fishing boat, its roof in teeth.
func shed(pic *picture) {
	p := pic.at(4330, 78)
	p.fill(box(-1, 2, 21, 8), upward(2, 0x3a2f4c, 8, 0x5b4058))
	for i := range 4 {
		x := -0.4 + 5.2*float64(i)
		p.fill(poly(x-0.3, 7.9, x+5, 7.9, x+5, 8.4, x+0.6, 11, x-0.3, 11), across(x, 0x7b566a, x+5, 0x38304f))
		p.fill(poly(x+0.05, 8.6, x+0.35, 8.5, x+0.35, 10.6, x+0.05, 10.6), flat(0xffc37a))
		if i == 3 {
			continue // the crane stands there
		}
		p.fill(box(x+0.9, 4.3, x+2.1, 6.3), upward(4.3, 0xf09a4c, 6.3, 0xffd28a))
		p.fill(box(x+2.9, 4.3, x+4.1, 6.3), upward(4.3, 0xf09a4c, 6.3, 0xffd28a))
		p.fill(together(lineTo(0.1, x+1.5, 4.3, x+1.5, 6.3), lineTo(0.1, x+3.5, 4.3, x+3.5, 6.3), lineTo(0.1, x+0.9, 5.3, x+2.1, 5.3), lineTo(0.1, x+2.9, 5.3, x+4.1, 5.3)), flat(0x3a2f4c))
	}
}

// crane stands on the quay at the right, its jib raised to the left.
func crane(pic *picture) {
	p := pic.at(5590, 72)
	steel := across(-8, 0x5a4a6a, 3, 0x2a2c50)
	p.fill(together(lineTo(0.35, -1.9, 2, -0.9, 9.5), lineTo(0.35, 1.9, 2, 0.9, 9.5), lineTo(0.22, -1.5, 5, 1.5, 5), lineTo(0.18, -1.6, 4.6, 1.1, 9), lineTo(0.18, 1.6, 4.6, -1.1, 9)), steel)
	p.fill(poly(-1.7, 9.4, 2.6, 9.4, 2.6, 11.9, -0.6, 12.4, -1.7, 11.6), steel)
	p.fill(box(-1.35, 10.2, -0.5, 11.3), flat(0xffd48c))
	p.fill(together(lineTo(0.3, -1, 10.2, -9, 19.4), lineTo(0.22, -0.6, 12.2, -9, 19.4), lineTo(0.3, 0.4, 12, 0.9, 15.4), lineTo(0.1, 0.9, 15.4, -5.2, 16.3), lineTo(0.1, 0.9, 15.4, 2.5, 11.8)), steel)
	for i := range 7 {
		t := (float64(i) + 0.5) / 8
		p.fill(lineTo(0.12, -1-8*t, 10.2+9.2*t, -0.6-8.4*(t+0.06), 12.2+7.2*(t+0.06)), steel)
	}
	p.fill(together(lineTo(0.08, -9, 19.4, -9, 13), ellipse(-9, 12.8, 0.28, 0.34)), steel)
	p.glow(-9, 19.5, 0.9, rgb(0xff5a3c).alpha(1))
}
