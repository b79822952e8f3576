package paint

import (
	"image"
	"math"

	"golang.org/x/image/vector"
)

// Place is a spot on a canvas with axes of its own, x right and y up from the spot: paint is laid on in these.
type Place struct {
	Canvas *Canvas
	XU, YU float64 // where the place's x = 0, y = 0 lies, in the canvas's units
	Scale  float64 // how many of the canvas's units make one of the place's
	Up     float64 // where the place's y points on the canvas: -1 up, +1 down, as in a mirror image
	Near   float32 // how near what is filled in here counts, 0..1, for Sample; without meaning to the colours
}

// Fill lays paint over what is there, within the shape.
func (p Place) Fill(s Shape, with Paint) { p.lay(s, with, over, 1) }

// Light adds paint as light to what is there, within the shape.
func (p Place) Light(s Shape, with Paint) { p.lay(s, with, screen, 0) }

// lay mixes paint into the pixels of the shape; what is solid (1) also takes its place among near and far.
func (p Place) lay(s Shape, with Paint, mix func(have, want, a float32) float32, solid float32) {
	on := p.Canvas
	moved := make(Shape, len(s))
	box := image.Rectangle{}
	for i, c := range s {
		for _, q := range c {
			m := Point{(p.XU + q.X*p.Scale) * on.pxPerU, (p.YU + p.Up*q.Y*p.Scale - on.topU) * on.pxPerU}
			moved[i] = append(moved[i], m)
			x, y := int(math.Floor(m.X)), int(math.Floor(m.Y))
			box = box.Union(image.Rect(x, y, x+1, y+1))
		}
	}
	box = box.Intersect(image.Rect(0, 0, on.wPx, on.hPx))
	if box.Empty() {
		return
	}
	mask := moved.coverage(box)
	inRows(box.Dy(), func(row int) {
		y := box.Min.Y + row
		up := ((float64(y)+0.5)/on.pxPerU + on.topU - p.YU) / (p.Up * p.Scale)
		for col := range box.Dx() {
			m := mask.Pix[row*mask.Stride+col]
			if m == 0 {
				continue
			}
			x := ((float64(box.Min.X+col)+0.5)/on.pxPerU - p.XU) / p.Scale
			c := with(x, up)
			a := c.A * float32(m) / 255
			at := on.pix[4*(y*on.wPx+box.Min.X+col):][:4]
			at[0] = store(mix(load(at[0]), c.R, a))
			at[1] = store(mix(load(at[1]), c.G, a))
			at[2] = store(mix(load(at[2]), c.B, a))
			at[3] = store(over(load(at[3]), p.Near, a*solid))
		}
	})
}

// coverage draws the shape, which is in pixels, antialiased; the mask's first pixel is the box's corner.
func (s Shape) coverage(box image.Rectangle) *image.Alpha {
	z := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, c := range s {
		for i, q := range c {
			x, y := float32(q.X)-float32(box.Min.X), float32(q.Y)-float32(box.Min.Y)
			if i == 0 {
				z.MoveTo(x, y)
			} else {
				z.LineTo(x, y)
			}
		}
		z.ClosePath()
	}
	mask := image.NewAlpha(image.Rect(0, 0, box.Dx(), box.Dy()))
	z.Draw(mask, mask.Rect, image.Opaque, image.Point{})
	return mask
}
