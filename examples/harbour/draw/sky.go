package main

import (
	"math"

	"dropsheet/examples/paint"
)

// dusk is the sky over the horizon (0) to the top of the picture (1).
var dusk = []stop{
	{0, paint.RGB(0xffcf86)}, {0.07, paint.RGB(0xffb680)}, {0.19, paint.RGB(0xf39d8a)}, {0.34, paint.RGB(0xcf9aa8)},
	{0.53, paint.RGB(0x95a0c4)}, {0.76, paint.RGB(0x6286ba)}, {1, paint.RGB(0x4470ab)},
}

// sky gives the colour of the sky, with its clouds, at a spot of the canvas above the horizon.
func sky(x, y float64) paint.Ink {
	e := max(0, (horizonU-y)/horizonU)
	c := ramp(dusk, e)
	away := (x - sunX) / 2600
	c = c.To(paint.RGB(0x8f8fb6), (1-paint.Bump(away))*0.55*(1-paint.Smooth(0.1, 0.75, e)))
	d := math.Hypot(x-sunX, (y-sunY)*1.25)
	c = c.To(paint.RGB(0xff9a4e), 0.62*math.Exp(-d/640))
	c = c.Shine(paint.RGB(0xffb45c), 0.75*math.Exp(-d/230))

	return clouds(c, x, y, e, d)
}

// clouds lays thin streaks of cloud on c, gold beneath and violet above; fromSun is in units.
func clouds(c paint.Ink, x, y, e, fromSun float64) paint.Ink {
	away := 1 / (e + 0.16) // clouds lie in a layer, which runs together toward the horizon
	u, v := (x-3000)/3000*away, 2.1*away
	bend := 0.5 * noise(u*0.9, v*0.8, 31)
	n := clouded(u*0.42+bend, v*1.25+bend, 4, 11) + 0.35*noise(u*0.3, v*0.3, 5)
	n += 0.25*paint.Bump((e-0.42)/0.16) - 0.12*paint.Smooth(0.75, 1, e)
	thick := paint.Smooth(0.1, 0.9, n)
	lower := clouded(u*0.42+bend, (v+0.10)*1.25+bend, 3, 11)
	lit := paint.Smooth(-0.35, 0.45, n-lower)
	warm := paint.RGB(0xffe0b0).To(paint.RGB(0xf6b4a4), fromSun/1700)
	shade := paint.RGB(0xc98f9c).To(paint.RGB(0x76789f), fromSun/1900)
	return c.To(shade.To(warm, lit), 0.72*thick*paint.Smooth(0.015, 0.1, e))
}

// starry is the sky with the sun and, high up, the first stars: one in some of its 230-unit squares. Water
// shows neither as it is.
func starry(x, y float64) paint.Ink {
	c, e := sky(x, y), (horizonU-y)/horizonU
	c = c.To(paint.RGB(0xfffbe2), 1-paint.Smooth(sunR-2.5, sunR+2.5, math.Hypot(x-sunX, y-sunY)))
	if e < 0.5 {
		return c
	}
	col, row := int32(math.Floor(x/230)), int32(math.Floor(y/230))
	h := paint.Hash(col, row, 8)
	if h%5 > 2 {
		return c
	}
	sx := (float64(col) + 0.15 + 0.7*float64(h>>8&255)/255) * 230
	sy := (float64(row) + 0.15 + 0.7*float64(h>>16&255)/255) * 230
	size := 2.5 + 4*float64(h>>24)/255
	d := math.Hypot(x-sx, y-sy) / size
	return c.Shine(paint.RGB(0xfff4e0), min(1, 1.2*math.Exp(-d*d/2)+0.18*math.Exp(-d/2.5))*paint.Smooth(0.5, 0.8, e))
}

// hills are three ridges, each in less haze than the one behind it, with the lights of a town along the shore.
func hills(pic *picture) {
	p := pic.far()
	ridge := func(x float64, base, rough float64, seed uint32, tops ...float64) float64 {
		h := base + rough*clouded(x/520, 0.5, 5, seed)
		for i := 0; i+2 < len(tops); i += 3 {
			h += tops[i+1] * paint.Bump((x-tops[i])/tops[i+2])
		}
		return max(h, 6)
	}
	layer := func(peak float64, high, low uint32, height func(x float64) float64) {
		line := []paint.Point{{X: -20, Y: -1}}
		for x := -20.0; x <= canvasW+20; x += 8 {
			line = append(line, paint.Point{X: x, Y: height(x)})
		}
		line = append(line, paint.Point{X: canvasW + 20, Y: -1})
		warm := paint.RGB(0xffc58a)
		up := paint.Upward(0, low, peak, high)
		p.Fill(paint.Outline(line), func(x, h float64) paint.Ink { // haze is brightest before the sun
			return up(x, h).To(warm, 0.55*paint.Bump((x-sunX)/620)*(1-h/(2.2*peak)))
		})
	}
	layer(420, 0xa3809f, 0xe9a68d, func(x float64) float64 {
		return ridge(x, 60, 34, 3, 700, 330, 620, 1500, 120, 300, 3300, 170, 500, 4700, 380, 900)
	})
	layer(300, 0x6f6390, 0xc08a8d, func(x float64) float64 {
		return ridge(x, 30, 22, 4, 60, 300, 600, 1120, 90, 330, 3500, 90, 520, 5700, 330, 900)
	})
	layer(200, 0x484a78, 0x80688a, func(x float64) float64 {
		return ridge(x, 12, 12, 6, -150, 190, 620, 5300, 120, 900, 3000, 20, 350)
	})
	for i := range 46 {
		x := 30 + 1500*chance(i, 1)
		if i%3 == 0 {
			x = 2480 + 500*chance(i, 1)
		}
		h := 5 + 42*chance(i, 2)*chance(i, 3)*paint.Bump((x-300)/900)
		p.Fill(ellipse(x, h, 4.5, 4.5), paint.Flat(0xffe9b0))
		p.glow(x, h, 34, paint.RGB(0xffb85c).Alpha(0.55))
	}
}

// gulls wheel over the water before the warehouse.
func gulls(pic *picture) {
	p := pic.far()
	for _, g := range []struct{ x, h, size, bank float64 }{
		{2330, 820, 118, 0.18}, {2600, 975, 92, -0.12}, {2190, 610, 74, 0.1}, {2800, 1180, 66, 0.2}, {2520, 1250, 54, -0.1},
	} {
		at := func(x, y float64) []float64 { return []float64{g.x + g.size*(x-g.bank*y), g.h + g.size*(y+g.bank*x)} }
		var wing []float64
		for _, q := range paint.Points(-1, .30, -.62, .42, -.28, .22, 0, .06, .30, .26, .66, .50, 1.02, .44, .68, .40, .32,
			.12, .12, -.10, -.12, -.10, -.30, .08, -.60, .30) {
			wing = append(wing, at(q.X, q.Y)...)
		}
		p.Fill(paint.Outline(paint.Curve(wing...)), func(x, _ float64) paint.Ink {
			return paint.RGB(0xfff6e6).To(paint.RGB(0x3b3f68), paint.Smooth(0.5, 0.85, math.Abs(x-g.x)/g.size))
		})
	}
}
