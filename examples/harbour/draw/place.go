package main

import (
	"image"
	"math"

	"golang.org/x/image/vector"
)

// place is a spot in the scene, with its own metres: x right of the spot, h above the water.
type place struct {
	pic        *picture
	xU, waterU float64 // where x = 0, h = 0 is seen
	uPerM, upU float64 // units to the metre; upU is its sign upward: -1, or +1 in a mirror image
	nearness   float32
}

// at returns the place xU units across the canvas and depthM away.
func (pic *picture) at(xU, depthM float64) place {
	p := place{pic, xU, horizonU + eyeM*focalU/depthM, focalU / depthM, -1, float32(nearestM / depthM)}
	if pic.mirror {
		p.upU = 1
	}
	return p
}

// far returns the horizon, with units for metres: for what is too far away to have a size.
func (pic *picture) far() place {
	p := pic.at(0, 1e9)
	p.uPerM, p.nearness = 1, 0
	return p
}

// paint gives the colour at x, h of the place where it is laid on.
type paint func(x, h float64) ink

// fill lays paint over what is there, within the shape.
func (p place) fill(s shape, with paint) { p.lay(s, with, over, 1) }

// light adds paint as light to what is there, within the shape.
func (p place) light(s shape, with paint) { p.lay(s, with, screen, 0) }

// glow adds a round light that fades out at radius r.
func (p place) glow(x, h, r float64, c ink) {
	p.light(ellipse(x, h, r, r), func(px, ph float64) ink {
		d := math.Min(1, math.Hypot(px-x, ph-h)/r)
		return c.alpha(float32((1 - d) * (1 - d) * (1 - d*d)))
	})
}

func over(have, want, a float32) float32   { return have + (want-have)*a }
func screen(have, want, a float32) float32 { return 1 - (1-have)*(1-want*a) }

// lay mixes paint into the pixels of the shape; what is solid (1) also takes its place among near and far.
func (p place) lay(s shape, with paint, mix func(have, want, a float32) float32, solid float32) {
	pic := p.pic
	moved := make(shape, len(s))
	box := image.Rectangle{}
	for i, c := range s {
		for _, q := range c {
			m := pt{(p.xU + q.x*p.uPerM) * pic.pxPerU, (p.waterU + p.upU*q.y*p.uPerM - pic.topU) * pic.pxPerU}
			moved[i] = append(moved[i], m)
			x, y := int(math.Floor(m.x)), int(math.Floor(m.y))
			box = box.Union(image.Rect(x, y, x+1, y+1))
		}
	}
	box = box.Intersect(image.Rect(0, 0, pic.wPx, pic.hPx))
	if box.Empty() {
		return
	}
	mask := moved.coverage(box)
	inRows(box.Dy(), func(row int) {
		y := box.Min.Y + row
		h := ((float64(y)+0.5)/pic.pxPerU + pic.topU - p.waterU) / (p.upU * p.uPerM)
		for col := range box.Dx() {
			m := mask.Pix[row*mask.Stride+col]
			if m == 0 {
				continue
			}
			x := ((float64(box.Min.X+col)+0.5)/pic.pxPerU - p.xU) / p.uPerM
			c := with(x, h)
			a := c.a * float32(m) / 255
			at := pic.pix[4*(y*pic.wPx+box.Min.X+col):][:4]
			at[0] = store(mix(load(at[0]), c.r, a))
			at[1] = store(mix(load(at[1]), c.g, a))
			at[2] = store(mix(load(at[2]), c.b, a))
			at[3] = store(over(load(at[3]), p.nearness, a*solid))
		}
	})
}

// coverage draws the shape, which is in pixels, antialiased; the mask's first pixel is the box's corner.
func (s shape) coverage(box image.Rectangle) *image.Alpha {
	z := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, c := range s {
		for i, q := range c {
			x, y := float32(q.x)-float32(box.Min.X), float32(q.y)-float32(box.Min.Y)
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
