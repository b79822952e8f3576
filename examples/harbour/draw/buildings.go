package main

import (
	"math"

	"dropsheet/examples/paint"
)

// warehouse faces us with its gable: a planked front, warm light from its door and windows, and its name in
// letters 3 m tall.
func warehouse(pic *picture) {
	p := pic.at(3400, 70)
	const half, floor, eaves, ridge = 8.75, quayM, 11.0, 15.0
	p.Fill(paint.Poly(-half, floor-0.1, half, floor-0.1, half, eaves, 0, ridge, -half, eaves),
		func(x, h float64) paint.Ink {
			plank := math.Floor(x / 0.7)
			c := paint.RGB(0x1f4a60).To(paint.RGB(0x17364f), 0.8*float64(paint.Hash(int32(plank), 3, 4)&255)/255)
			c = c.Times(1 - 0.3*paint.Bump((x/0.7-math.Round(x/0.7))/0.05))
			c = c.To(paint.RGB(0xe8875a), 0.55*paint.Bump((x+half)/0.8)) // the sun grazes the left corner
			for _, lx := range []float64{-5.4, 0, 5.4} {                 // pools of the lamps over the name
				down := 11.2 - h
				wide := 0.5 + 0.62*max(0, down)
				c = c.To(paint.RGB(0x6fa89a), 0.72*paint.Bump((x-lx-0.45)/wide)*paint.Smooth(-0.35, 0.4, down)*paint.Bump(down/4.4))
			}
			return c.To(paint.RGB(0x10202f), 0.5*(1-paint.Smooth(floor, floor+0.7, h)))
		})
	p.Fill(paint.Poly(-half, eaves, -half-0.9, eaves-0.75, -half-0.9, eaves-0.25, 0, ridge+0.75, half+0.9, eaves-0.25,
		half+0.9, eaves-0.75, half, eaves, 0, ridge), func(x, h float64) paint.Ink {
		return paint.RGB(0x2b2d4d).To(paint.RGB(0xffb47c), paint.Smooth(1, -10, x)*0.9)
	})

	name := paint.Text("QUAY 7", 0, 7, 3.1, 0.93, 0)
	edge, dark, pale := bolder(name, 0.12), paint.Flat(0x0a1c2c), paint.Upward(7, 0xffd28c, 10, 0xfff6dc)
	p.Fill(name.Moved(0.12, -0.1), dark) // its shadow
	p.Fill(edge.Moved(0.12, -0.1), dark)
	p.Fill(name, pale)
	p.Fill(edge, pale)
	for _, x := range []float64{-5.4, 0, 5.4} { // its lamps, on swan necks
		p.Fill(line(0.09, paint.Curve(x, 10.9, x, 11.45, x+0.25, 11.6, x+0.45, 11.35)), paint.Flat(0x111d30))
		p.Fill(paint.Poly(x+0.15, 11.1, x+0.75, 11.1, x+0.55, 11.42, x+0.35, 11.42), paint.Flat(0x111d30))
		p.Fill(ellipse(x+0.45, 11.08, 0.2, 0.09), paint.Flat(0xfff4d0))
		p.glow(x+0.45, 11.05, 1.1, paint.RGB(0xffcf80).Alpha(0.8))
	}

	window := func(x, h, w, tall float64) {
		p.Fill(box(x-0.14, h-0.14, x+w+0.14, h+tall+0.14), paint.Flat(0xd8c4b0))
		p.Fill(box(x, h, x+w, h+tall), paint.Upward(h, 0xff9f45, h+tall, 0xffe29a))
		p.Fill(paint.Together(lineTo(0.1, x+w/2, h, x+w/2, h+tall), lineTo(0.1, x, h+tall/2, x+w, h+tall/2)),
			paint.Flat(0x6b3a34))
		p.glow(x+w/2, h+tall/2, 1.6, paint.RGB(0xff9a40).Alpha(0.35))
	}
	window(-7.3, 4, 1.5, 1.9)
	window(-4.6, 4, 1.5, 1.9)
	window(3.2, 4, 1.5, 1.9)
	window(5.9, 4, 1.5, 1.9)
	p.Fill(ellipse(0, 12.75, 0.98, 0.98), paint.Flat(0xd8c4b0))
	p.Fill(ellipse(0, 12.75, 0.8, 0.8), paint.Flat(0xffc96e))
	p.Fill(paint.Together(lineTo(0.1, -0.8, 12.75, 0.8, 12.75), lineTo(0.1, 0, 11.95, 0, 13.55)), paint.Flat(0x6b3a34))
	p.glow(0, 12.75, 2, paint.RGB(0xff9a40).Alpha(0.4))

	p.Fill(box(-2.25, floor, 2.25, 6.2), paint.Flat(0xd8c4b0)) // the door, one leaf slid open
	p.Fill(box(-2.05, floor, 2.05, 6), func(x, h float64) paint.Ink {
		return paint.RGB(0xff9436).To(paint.RGB(0xffe9a6), 1.1-math.Hypot((x+0.9)/2, (h-4.4)/3))
	})
	p.Fill(box(0.1, floor, 2.05, 6), across(0.1, 0x8e3f3c, 2.05, 0x652c3e))
	p.Fill(paint.Together(lineTo(0.12, 0.2, 2.1, 1.95, 5.9), lineTo(0.12, 0.15, 4, 2, 4)), paint.Flat(0x4a2034))
	p.Fill(paint.Together(box(-1.75, floor, -0.95, 2.9), box(-1.5, 2.9, -0.85, 3.5)), paint.Flat(0x8a4a2c))
	p.glow(-0.9, 4, 4, paint.RGB(0xff9a40).Alpha(0.45))
	if !pic.mirror { // the light that falls out on the ground
		p.Light(paint.Poly(-2.1, 2, 0.1, 2, 1.2, 1.45, -3.2, 1.45), func(_, h float64) paint.Ink {
			return paint.RGB(0xffa850).Alpha(float32(0.75 * paint.Smooth(1.4, 2, h)))
		})
	}
}

// shed is the long brick building behind the fishing boat, its roof in teeth.
func shed(pic *picture) {
	p := pic.at(4330, 78)
	p.Fill(box(-1, 2, 21, 8), paint.Upward(2, 0x3a2f4c, 8, 0x5b4058))
	for i := range 4 {
		x := -0.4 + 5.2*float64(i)
		p.Fill(paint.Poly(x-0.3, 7.9, x+5, 7.9, x+5, 8.4, x+0.6, 11, x-0.3, 11), across(x, 0x7b566a, x+5, 0x38304f))
		p.Fill(paint.Poly(x+0.05, 8.6, x+0.35, 8.5, x+0.35, 10.6, x+0.05, 10.6), paint.Flat(0xffc37a))
		if i == 3 {
			continue // the crane stands there
		}
		p.Fill(box(x+0.9, 4.3, x+2.1, 6.3), paint.Upward(4.3, 0xf09a4c, 6.3, 0xffd28a))
		p.Fill(box(x+2.9, 4.3, x+4.1, 6.3), paint.Upward(4.3, 0xf09a4c, 6.3, 0xffd28a))
		p.Fill(paint.Together(lineTo(0.1, x+1.5, 4.3, x+1.5, 6.3), lineTo(0.1, x+3.5, 4.3, x+3.5, 6.3),
			lineTo(0.1, x+0.9, 5.3, x+2.1, 5.3), lineTo(0.1, x+2.9, 5.3, x+4.1, 5.3)), paint.Flat(0x3a2f4c))
	}
}

// crane stands on the quay at the right, its jib raised to the left.
func crane(pic *picture) {
	p := pic.at(5590, 72)
	steel := across(-8, 0x5a4a6a, 3, 0x2a2c50)
	p.Fill(paint.Together(lineTo(0.35, -1.9, 2, -0.9, 9.5), lineTo(0.35, 1.9, 2, 0.9, 9.5),
		lineTo(0.22, -1.5, 5, 1.5, 5), lineTo(0.18, -1.6, 4.6, 1.1, 9), lineTo(0.18, 1.6, 4.6, -1.1, 9)), steel)
	p.Fill(paint.Poly(-1.7, 9.4, 2.6, 9.4, 2.6, 11.9, -0.6, 12.4, -1.7, 11.6), steel)
	p.Fill(box(-1.35, 10.2, -0.5, 11.3), paint.Flat(0xffd48c))
	p.Fill(paint.Together(lineTo(0.3, -1, 10.2, -9, 19.4), lineTo(0.22, -0.6, 12.2, -9, 19.4),
		lineTo(0.3, 0.4, 12, 0.9, 15.4), lineTo(0.1, 0.9, 15.4, -5.2, 16.3), lineTo(0.1, 0.9, 15.4, 2.5, 11.8)), steel)
	for i := range 7 {
		t := (float64(i) + 0.5) / 8
		p.Fill(lineTo(0.12, -1-8*t, 10.2+9.2*t, -0.6-8.4*(t+0.06), 12.2+7.2*(t+0.06)), steel)
	}
	p.Fill(paint.Together(lineTo(0.08, -9, 19.4, -9, 13), ellipse(-9, 12.8, 0.28, 0.34)), steel)
	p.glow(-9, 19.5, 0.9, paint.RGB(0xff5a3c).Alpha(1))
}
