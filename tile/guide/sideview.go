package guide

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/pdf"
)

const sideViewMM = 69.0

// sideView draws camera, drop, board and lamp from the side, not to scale, with the real figures.
func (b *book) sideView(box layout.Rect) {
	p := b.job.Plan
	const boardHalf, dimsMM = 23.0, 10.0
	axisY := box.YMM + 29
	camera := box.XMM + 2
	pupil := camera + 27
	board := box.RightMM() - 24
	drop := pupil + 0.44*(board-pupil)
	top := p.Backdrop.LightFrom.Top()
	lampSide := -1.0 // up the page
	if !top {
		lampSide = 1
	}

	b.Line(camera, axisY, board+6, axisY, axis)
	if p.Drop.Reverses.Turn().ReverseY {
		b.bentRays(pupil, drop, board, axisY, boardHalf)
	}
	b.Line(pupil, axisY+6.2, pupil, axisY+boardHalf+dimsMM+3, dashed)
	if b.job.eye() {
		b.eye(pupil, axisY, 6.5)
		b.Put(captionStyle, pupil-captionStyle.Width("eye")/2-6.5, axisY-9, "eye")
	} else {
		b.camera(camera, axisY)
		b.Line(pupil, axisY-6.2, pupil, axisY+6.2, pen(accent, 0.6))
		b.Put(captionStyle, pupil-captionStyle.Width("entrance pupil")+6, axisY-12.5, "entrance pupil")
		b.Line(pupil, axisY-11.6, pupil, axisY-6.6, mark)
	}

	b.bodyFromSide(drop, axisY, boardHalf)
	b.Line(drop, axisY+5, drop, axisY+boardHalf+dimsMM+3, dashed)

	b.Fill(layout.Rect{XMM: board, YMM: axisY - boardHalf - 3, WidthMM: 2.6, HeightMM: 2*boardHalf + 6}, pale)
	b.Fill(layout.Rect{XMM: board - 0.5, YMM: axisY - boardHalf, WidthMM: 0.9, HeightMM: 2 * boardHalf}, accent)
	b.Line(board, axisY+boardHalf+3, board, axisY+boardHalf+dimsMM+3, dashed)
	b.down(board+12, axisY-boardHalf, axisY+boardHalf, "print "+b.length(p.Backdrop.HeightMM)+" high")

	lampX, lampY := board-25, axisY+lampSide*(boardHalf+3)
	toX, toY := board-lampX, axisY-lampY
	long := math.Hypot(toX, toY)
	b.lamp(lampX, lampY, toX/long, toY/long)
	words := "lamp, toward the board\u2019s " + b.cutCorner()
	if b.lampsNamed() {
		words = many(len(p.Lamps), "lamp", "lamps") + ": where the section Light has " + many(len(p.Lamps), "it", "them")
	}
	b.tag(captionStyle, lampX-4-captionStyle.Width(words)/2, lampY, words)

	dims := axisY + boardHalf + dimsMM
	b.across(pupil, drop, dims, b.length(p.Drop.CameraMM))
	b.across(drop, board, dims, b.length(p.Drop.DistanceMM))
	b.PutMiddle(captionStyle, (pupil+drop)/2, dims+6.4, b.job.looker()+" distance")
	b.PutMiddle(captionStyle, (drop+board)/2, dims+6.4, "distance")
}

// bentRays draws, in a sketch, a ray above and one below the axis that the drop bends across it to the board's edges.
func (b *book) bentRays(pupil, drop, board, axisY, boardHalf float64) {
	const at = 3.2 // from the axis, where they pass the drop
	for _, side := range []float64{-1, 1} {
		b.Line(pupil, axisY, drop, axisY+side*at, mark)
		b.arrow(drop, axisY+side*at, board-0.6, axisY-side*(boardHalf-0.4), 2, mark)
	}
}

// camera draws a camera whose lens looks along the axis; its entrance pupil lies 27 mm from its back.
func (b *book) camera(x, axisY float64) {
	outline := pen(black, 0.4)
	for _, part := range []layout.Rect{
		{XMM: x, YMM: axisY - 9, WidthMM: 13, HeightMM: 18},
		{XMM: x + 3, YMM: axisY - 12, WidthMM: 7, HeightMM: 3},
		{XMM: x + 13, YMM: axisY - 6.5, WidthMM: 20, HeightMM: 13},
	} {
		b.Frame(part, outline)
	}
	b.Line(x+33, axisY-5.5, x+34.4, axisY-3, outline)
	b.Line(x+34.4, axisY-3, x+34.4, axisY+3, outline)
	b.Line(x+34.4, axisY+3, x+33, axisY+5.5, outline)
}

// eye draws an eye that looks along the axis, its pupil at x.
func (b *book) eye(x, axisY, radius float64) {
	outline := pen(black, 0.4)
	b.ring(x-0.8*radius, axisY, radius, white, outline)
	b.Fill(layout.Rect{XMM: x - 0.2, YMM: axisY - 0.45*radius, WidthMM: 0.4, HeightMM: 0.9 * radius}, accent)
}

// bodyFromSide draws the drop, or the rod as it looks from the side, and names it on the side away from the lamp.
func (b *book) bodyFromSide(x, axisY, boardHalf float64) {
	p := b.job.Plan
	outline := pen(accent, 0.5)
	name := b.job.body() + ", " + set(report.Measures(p))
	nameY := axisY - 10
	switch p.Drop.Body {
	case flip.UprightRod:
		const half = 12
		b.Fill(layout.Rect{XMM: x - 3, YMM: axisY - half, WidthMM: 6, HeightMM: 2 * half}, tint)
		b.Frame(layout.Rect{XMM: x - 3, YMM: axisY - half, WidthMM: 6, HeightMM: 2 * half}, outline)
		nameY = axisY - half - 4
	case flip.Hanging:
		d := p.Sight().Drop
		k := 4.2 / d.RadiusMM()
		nameY = axisY - k*d.AboveMM() - holderMM - 2
		b.hangingDrop(x, axisY, k, outline)
	default:
		d := p.Sight().Drop
		b.Oval(x, axisY, 4.2, 4.2*d.HalfHeightMM()/d.RadiusMM(), tint, outline)
	}
	b.PutMiddle(captionStyle, x, nameY, name)
}

// holderMM is how much of a hanging drop's holder is drawn, on the page.
const holderMM = 3.0

// hangingDrop draws a hanging drop from the side, k times as large as it is, and its holder.
func (b *book) hangingDrop(x, axisY, k float64, outline pdf.Pen) {
	d := b.job.Plan.Sight().Drop
	const steps = 60
	var points []layout.Point
	for _, side := range []float64{1, -1} {
		for i := range steps + 1 {
			share := (1-side)/2 + side*float64(i)/steps // down on the right, and up again
			below := share*(d.AboveMM()+d.BelowMM()) - d.AboveMM()
			points = append(points, layout.Point{XMM: x + side*k*d.HalfWidthAtMM(below), YMM: axisY + k*below})
		}
	}
	b.Polygon(tint, outline, points...)
	b.Fill(layout.Rect{XMM: x - k*d.HeldMM/2, YMM: axisY - k*d.AboveMM() - holderMM, WidthMM: k * d.HeldMM,
		HeightMM: holderMM}, grey)
}
