package guide

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Room of the drawing of the planes, in guide mm.
const (
	planesWideMM = 80.0 // from the picture to the drop's back, at most
	planesDropMM = 12.5 // the drop's radius at most
	overDropMM   = 9.5
	underDropMM  = 16.0
)

// planesScale is guide mm for a millimetre of the scene.
func (b *book) planesScale() float64 {
	p := b.job.Plan
	radius := b.dropRadiusMM()
	return math.Min(planesDropMM/math.Max(radius, b.dropHalfHeightMM()), planesWideMM/(p.Drop.CameraMM-p.ImageMM()+radius))
}

// planesHalfMM is how far the planes are drawn up and down from the axis.
func (b *book) planesHalfMM() float64 {
	return math.Max(b.planesScale()*b.dropHalfHeightMM(), 6) + 3
}

// dropRadiusMM is the drop's semi-axis along the optical axis.
func (b *book) dropRadiusMM() float64 { return b.job.Plan.Sight().Drop.RadiusMM() }

// dropHalfHeightMM is the one that stands upright; of a rod its radius, of a hanging drop its longer end's.
func (b *book) dropHalfHeightMM() float64 {
	d := b.job.Plan.Sight().Drop
	return max(d.AboveMM(), d.BelowMM())
}

// planesMM is the height of the drawing.
func (b *book) planesMM() float64 { return 2*b.planesHalfMM() + overDropMM + underDropMM }

// planes draws the drop from the side, to scale, with the planes of its edge, of the picture and of the
// focus, and their distances from its middle.
func (b *book) planes(box layout.Rect) {
	p := b.job.Plan
	k, half := b.planesScale(), b.planesHalfMM()
	radius, halfHeight := k*b.dropRadiusMM(), k*p.Sight().Drop.BelowMM()
	middle := box.XMM + (box.WidthMM+planesWideMM)/2 - radius
	axisY := box.YMM + overDropMM + half
	before := func(fromPupilMM float64) float64 { return middle - k*(p.Drop.CameraMM-fromPupilMM) }
	edge, focus, picture := before(p.EdgeMM()), before(p.Camera.FocusMM), before(p.ImageMM())

	top, bottom := axisY-half, axisY+half
	b.Line(box.XMM+8, axisY, middle+radius+6, axisY, axis)
	b.arrow(picture-8, axisY, box.XMM+4, axisY, 2, mark)
	b.Put(captionStyle, box.XMM+4, axisY-3, "to the "+b.job.looker())
	seen := "seen from the side, to scale"
	if p.Drop.Body == flip.UprightRod {
		seen = "seen from above, to scale"
	}
	b.Put(captionStyle, box.XMM+4, bottom+3+captionStyle.CapMM()/2, seen)
	if p.Drop.Body == flip.Hanging {
		b.hangingDrop(middle, axisY, k, pen(grey, 0.3))
	} else {
		b.Oval(middle, axisY, radius, halfHeight, tint, pen(grey, 0.3))
	}
	b.PutMiddle(captionStyle, middle+radius/2, axisY+4.6, b.job.body())

	b.Line(edge, top, edge, bottom, plain)
	b.Line(focus, top-4.8, focus, bottom, dashed)
	b.Line(picture, top, picture, bottom, plain)
	hangs := math.Max(p.BlurFill()*k*p.Sight().Drop.HalfHeightMM(), 1)
	b.Line(picture, axisY-hangs, picture, axisY+hangs, pen(accent, 1))
	for _, side := range []float64{-1, 1} {
		if side < 0 && p.Drop.Body == flip.Hanging {
			continue // its upper edge is its holder's
		}
		y := side * halfHeight / radius * math.Sqrt(math.Max(0, radius*radius-(middle-edge)*(middle-edge)))
		b.ring(edge, axisY+y, 0.9, accent, pen(white, 0.2))
	}
	b.PutMiddle(labelStyle, picture, top-1.2, "picture")
	b.PutMiddle(labelStyle, edge, top-1.2, "edge")
	b.PutMiddle(labelStyle, focus, top-5.9, b.focusName())

	b.Line(middle, axisY, middle, bottom+14.4, axis)
	rows := []struct{ x, fromPupilMM, y float64 }{{edge, p.EdgeMM(), bottom + 3}, {focus, p.Camera.FocusMM, bottom + 8},
		{picture, p.ImageMM(), bottom + 13}}
	for _, r := range rows {
		b.Line(r.x, bottom, r.x, r.y+1.4, thin)
	}
	for _, r := range rows {
		b.Line(r.x, r.y, middle, r.y, plain)
		b.Line(r.x, r.y-1.4, r.x, r.y+1.4, plain)
		b.Line(middle, r.y-1.4, middle, r.y+1.4, plain)
		text := amount(b.report.BeforeMiddle(r.fromPupilMM))
		b.tag(labelStyle, r.x-2.4-labelStyle.Width(text)/2, r.y, text)
	}
	b.Put(captionStyle, middle+2.4, bottom+3+5+captionStyle.CapMM()/2, "before the "+b.job.body()+"\u2019s middle")
}

// focusName says where the plan focuses.
func (b *book) focusName() string {
	if b.job.Plan.Camera.Focus == layout.FocusBest {
		return "best focus, plan\u2019s stop"
	}
	return "the plan\u2019s focus"
}
