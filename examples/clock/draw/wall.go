package main

import "math"

// boardU is how high the wall's boards are.
const boardU = 120.0

// wall is boards of deep blue, lighter toward the evening sky, with the dial's light on them.
func wall(x, y float64) ink {
	c := rgb(0x0d1c38).to(rgb(0x234a72), smooth(-halfU, halfU, y))
	board := math.Floor(y / boardU)
	up := y/boardU - board // 0 at the board's lower edge, 1 at its upper
	c = c.times(0.94 + 0.12*float64(hash(int32(board), 5)&255)/255)
	c = c.times(1 - 0.5*smooth(0.1, 0.02, up) + 0.16*bump((up-0.13)/0.05)) // a groove, and light on the edge over it
	off := math.Hypot(x, y) - dialR
	return c.to(rgb(0xf2955c), 0.5*math.Exp(-max(off, 0)/105))
}

// bosses are brass stars in the corners, the heads of the bolts that hold the wall.
func bosses(pic *picture) {
	const atU = 1300.0
	for _, c := range []pt{{-atU, atU}, {atU, atU}, {-atU, -atU}, {atU, -atU}} {
		pic.fill(disc(c.x+5, c.y-8, 108), func(_, _ float64) ink { return rgb(0x050c1c).alpha(0.5) })
		pic.fill(disc(c.x, c.y, 104), upward(c.y-104, 0x9a6a3c, c.y+104, 0xffdf9e))
		pic.fill(disc(c.x, c.y, 92), flat(0x14294a))
		star(pic, c, 84, 34, rgb(0xffe2a4), rgb(0xb9793f))
	}
}

// star has eight points, four long and four short, each half light and half dark, as on a chart.
func star(pic *picture, at pt, long, short float64, light, dark ink) {
	half := func(r, waist, side float64) shape {
		return poly(0, 0, side*waist, waist, 0, r) // from the centre out along one side of a point
	}
	rays := func(r, waist, from float64) {
		for i := range 4 {
			angle := from + float64(i)*quarter
			pic.fill(half(r, waist, -1).turned(angle).moved(at.x, at.y), func(_, _ float64) ink { return light })
			pic.fill(half(r, waist, 1).turned(angle).moved(at.x, at.y), func(_, _ float64) ink { return dark })
		}
	}
	rays(short*1.6, short*0.32, quarter/2)
	rays(long, short*0.42, 0)
}
