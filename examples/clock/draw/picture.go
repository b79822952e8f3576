package main

import (
	"image"
	"math"
	"runtime"
	"sync"

	"golang.org/x/image/vector"
)

// The canvas in units (see the package comment).
const (
	canvasU = 3000
	halfU   = canvasU / 2.0
)

// picture is a painted canvas.
type picture struct {
	sidePx int
	pxPerU float64
	pix    []uint16 // red, green, blue; sRGB-encoded, 0..65535
}

// newPicture is a canvas painted all over.
func newPicture(sidePx int, with paint) *picture {
	pic := &picture{sidePx, float64(sidePx) / canvasU, make([]uint16, 3*sidePx*sidePx)}
	inRows(sidePx, func(row int) {
		for col := range sidePx {
			c := with(pic.spot(col, row))
			at := pic.pix[3*(row*sidePx+col):][:3]
			at[0], at[1], at[2] = store(c.r), store(c.g), store(c.b)
		}
	})
	return pic
}

// spot is a pixel's centre, in units.
func (pic *picture) spot(col, row int) (x, y float64) {
	return (float64(col)+0.5)/pic.pxPerU - halfU, halfU - (float64(row)+0.5)/pic.pxPerU
}

func over(have, want, a float32) float32 { return have + (want-have)*a }

// fill lays paint over what is there, within the shape.
func (pic *picture) fill(s shape, with paint) {
	moved := make(shape, len(s))
	box := image.Rectangle{}
	for i, c := range s {
		for _, q := range c {
			m := pt{(q.x + halfU) * pic.pxPerU, (halfU - q.y) * pic.pxPerU}
			moved[i] = append(moved[i], m)
			x, y := int(math.Floor(m.x)), int(math.Floor(m.y))
			box = box.Union(image.Rect(x, y, x+1, y+1))
		}
	}
	box = box.Intersect(image.Rect(0, 0, pic.sidePx, pic.sidePx))
	if box.Empty() {
		return
	}
	mask := moved.coverage(box)
	inRows(box.Dy(), func(row int) {
		for col := range box.Dx() {
			m := mask.Pix[row*mask.Stride+col]
			if m == 0 {
				continue
			}
			c := with(pic.spot(box.Min.X+col, box.Min.Y+row))
			a := c.a * float32(m) / 255
			at := pic.pix[3*((box.Min.Y+row)*pic.sidePx+box.Min.X+col):][:3]
			at[0] = store(over(load(at[0]), c.r, a))
			at[1] = store(over(load(at[1]), c.g, a))
			at[2] = store(over(load(at[2]), c.b, a))
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

// image rounds to 8 bits. A little noise before the rounding, fixed for each pixel, keeps slow gradients from showing bands.
func (pic *picture) image() *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, pic.sidePx, pic.sidePx))
	inRows(pic.sidePx, func(row int) {
		for col := range pic.sidePx {
			i := row*pic.sidePx + col
			noise := float32(hash(int32(col), int32(row))) / (1 << 32)
			for k := range 3 {
				img.Pix[4*i+k] = uint8(min(load(pic.pix[3*i+k])*255+noise, 255))
			}
			img.Pix[4*i+3] = 255
		}
	})
	return img
}

func load(v uint16) float32  { return float32(v) / 65535 }
func store(v float32) uint16 { return uint16(min(max(v, 0), 1)*65535 + 0.5) }

// inRows does n rows on all processors; a row must depend on no other.
func inRows(n int, do func(row int)) {
	workers := min(runtime.GOMAXPROCS(0), 1+n/64)
	var wait sync.WaitGroup
	for w := range workers {
		wait.Go(func() {
			for row := w; row < n; row += workers {
				do(row)
			}
		})
	}
	wait.Wait()
}
