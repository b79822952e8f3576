package main

import (
	"math"

	"dropsheet/examples/paint"
)

// boardU is how high the wall's boards are.
const boardU = 120.0

// wall is boards of deep blue, lighter toward the evening sky, with the dial's light on them.
func wall(x, y float64) paint.Ink {
	c := paint.RGB(0x0d1c38).To(paint.RGB(0x234a72), paint.Smooth(-halfU, halfU, y))
	board := math.Floor(y / boardU)
	up := y/boardU - board // 0 at the board's lower edge, 1 at its upper
	c = c.Times(0.94 + 0.12*float64(paint.Hash(int32(board), 5, 0)&255)/255)
	// a groove, and light on the edge over it
	c = c.Times(1 - 0.5*paint.Smooth(0.1, 0.02, up) + 0.16*paint.Bump((up-0.13)/0.05))
	off := math.Hypot(x, y) - dialR
	return c.To(paint.RGB(0xf2955c), 0.5*math.Exp(-max(off, 0)/105))
}

// bosses are brass stars in the corners, the heads of the bolts that hold the wall.
func bosses(dial paint.Place) {
	const atU = 1300.0
	for _, c := range []paint.Point{{X: -atU, Y: atU}, {X: atU, Y: atU}, {X: -atU, Y: -atU}, {X: atU, Y: -atU}} {
		dial.Fill(disc(c.X+5, c.Y-8, 108), func(_, _ float64) paint.Ink { return paint.RGB(0x050c1c).Alpha(0.5) })
		dial.Fill(disc(c.X, c.Y, 104), paint.Upward(c.Y-104, 0x9a6a3c, c.Y+104, 0xffdf9e))
		dial.Fill(disc(c.X, c.Y, 92), paint.Flat(0x14294a))
		star(dial, c, 84, 34, paint.RGB(0xffe2a4), paint.RGB(0xb9793f))
	}
}

// star has eight points, four long and four short, each half light and half dark, as on a chart.
func star(dial paint.Place, at paint.Point, long, short float64, light, dark paint.Ink) {
	half := func(r, waist, side float64) paint.Shape {
		return paint.Poly(0, 0, side*waist, waist, 0, r) // from the centre out along one side of a point
	}
	rays := func(r, waist, from float64) {
		for i := range 4 {
			angle := from + float64(i)*quarter
			dial.Fill(half(r, waist, -1).Turned(angle).Moved(at.X, at.Y), func(_, _ float64) paint.Ink { return light })
			dial.Fill(half(r, waist, 1).Turned(angle).Moved(at.X, at.Y), func(_, _ float64) paint.Ink { return dark })
		}
	}
	rays(short*1.6, short*0.32, quarter/2)
	rays(long, short*0.42, 0)
}
