package guide

import (
	"fmt"
	"math"

	"dropsheet/layout"
)

const lampPlanMM = 78.0

// lampPlan draws board, drop, camera and lamps from above, to one scale: the board at the top, the camera below.
func (b *book) lampPlan(box layout.Rect) {
	const roomMM = 9.0 // for words and discs on each side
	p := b.job.Plan
	cameraMM := p.Drop.DistanceMM + p.Drop.CameraMM
	half, deep := p.Backdrop.WidthMM/2, cameraMM
	for _, l := range p.Lamps {
		half, deep = math.Max(half, math.Abs(l.XMM)), math.Max(deep, l.ZMM)
	}
	k := math.Min((box.WidthMM-2*roomMM)/(2*half), (box.HeightMM-2*roomMM)/deep)
	middle, top := box.XMM+box.WidthMM/2, box.YMM+roomMM
	at := func(xMM, zMM float64) layout.Point {
		return layout.Point{XMM: middle + k*xMM, YMM: top + k*zMM}
	}

	b.Line(middle, top, middle, at(0, cameraMM).YMM, axis)
	board := k * p.Backdrop.WidthMM
	b.Fill(layout.Rect{XMM: middle - board/2, YMM: top - 1.6, WidthMM: board, HeightMM: 1.6}, pale)
	b.Fill(layout.Rect{XMM: middle - board/2, YMM: top - 0.4, WidthMM: board, HeightMM: 0.8}, accent)
	b.PutMiddle(captionStyle, middle, top-3.2, "board, "+b.length(p.Backdrop.WidthMM)+" wide")

	drop, camera := at(0, p.Drop.DistanceMM), at(0, cameraMM)
	b.ring(drop.XMM, drop.YMM, 1.4, tint, pen(accent, 0.5))
	b.Polygon(white, pen(black, 0.4), layout.Point{XMM: camera.XMM - 1.6, YMM: camera.YMM},
		layout.Point{XMM: camera.XMM + 1.6, YMM: camera.YMM},
		layout.Point{XMM: camera.XMM + 2.6, YMM: camera.YMM + 3.4},
		layout.Point{XMM: camera.XMM - 2.6, YMM: camera.YMM + 3.4})

	var discs []layout.Point
	// aim is what a lamp points at: kept on the board, and off its own place, where it can't be drawn.
	aim := func(l layout.Lamp) layout.Point {
		to := at(max(-half, min(l.Aim.XMM, half)), 0)
		if l.Aim.AtDrop && (math.Abs(l.XMM) > 1 || math.Abs(l.ZMM-p.Drop.DistanceMM) > 1) {
			to = drop
		}
		return to
	}
	for _, l := range p.Lamps {
		stand, to := at(l.XMM, l.ZMM), aim(l)
		b.Line(stand.XMM, stand.YMM, to.XMM, to.YMM, dashed)
	}
	for i, l := range p.Lamps {
		stand, to := at(l.XMM, l.ZMM), aim(l)
		away := math.Hypot(to.XMM-stand.XMM, to.YMM-stand.YMM)
		ux, uy := (to.XMM-stand.XMM)/away, (to.YMM-stand.YMM)/away
		b.lamp(stand.XMM, stand.YMM, ux, uy)
		disc := layout.Point{XMM: stand.XMM - 5.4*ux, YMM: stand.YMM - 5.4*uy}
		for clear := false; !clear; { // lamps above one another stand in one place here
			clear = true
			for _, other := range discs {
				if math.Hypot(disc.XMM-other.XMM, disc.YMM-other.YMM) < 5 {
					disc.XMM, clear = other.XMM+math.Copysign(5.2, stand.XMM-middle), false
				}
			}
		}
		discs = append(discs, disc)
		b.disc(disc.XMM, disc.YMM, 2.4, fmt.Sprint(i+1))
	}
	b.besideAxis(drop, b.job.body(), discs)
	b.besideAxis(layout.Point{XMM: camera.XMM, YMM: camera.YMM + 1.7}, b.job.looker(), discs)
}

// besideAxis names what stands on the axis, on the side where no disc is in the way; where both sides are
// taken it stays without a name.
func (b *book) besideAxis(at layout.Point, name string, discs []layout.Point) {
	wide := captionStyle.Width(name)
	for _, side := range []float64{1, -1} {
		left := at.XMM + 4
		if side < 0 {
			left = at.XMM - 4 - wide
		}
		clear := true
		for _, d := range discs {
			clear = clear && (math.Abs(d.YMM-at.YMM) > 5 || d.XMM < left-4 || d.XMM > left+wide+4)
		}
		if clear {
			b.Put(captionStyle, left, at.YMM+captionStyle.CapMM()/2, name)
			return
		}
	}
}
