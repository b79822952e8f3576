// Package paint is what the examples' artworks are drawn with.
package paint

import (
	"image"
	"runtime"
	"sync"
)

// Canvas is a painted picture, or a part of one: rows from topU down. It is measured in units of the
// artwork's own, origin at the picture's top-left corner, x right, y down. Besides colour each pixel holds
// how near the thing in it is (see Place).
type Canvas struct {
	wPx, hPx int
	topU     float64
	pxPerU   float64
	pix      []uint16 // red, green, blue, nearness; sRGB-encoded, 0..65535
}

// NewCanvas is a black canvas of so many pixels, pxPerU of them to the unit, whose upper edge is topU units
// below the picture's.
func NewCanvas(wPx, hPx int, topU, pxPerU float64) *Canvas {
	return &Canvas{wPx, hPx, topU, pxPerU, make([]uint16, 4*wPx*hPx)}
}

// Rows paints every pixel of the rows from first up to end; x and y are in units.
func (c *Canvas) Rows(first, end int, with Paint) {
	inRows(end-first, func(row int) {
		y := (float64(first+row)+0.5)/c.pxPerU + c.topU
		for col := range c.wPx {
			v := with((float64(col)+0.5)/c.pxPerU, y)
			at := c.pix[4*((first+row)*c.wPx+col):][:4]
			at[0], at[1], at[2], at[3] = store(v.R), store(v.G), store(v.B), 0
		}
	})
}

// Sample reads the canvas between its pixels, x and y in units, beyond its edges the edge.
func (c *Canvas) Sample(x, y float64) (seen Ink, near float32) {
	px := min(max(x*c.pxPerU-0.5, 0), float64(c.wPx)-1.001)
	py := min(max((y-c.topU)*c.pxPerU-0.5, 0), float64(c.hPx)-1.001)
	col, row := int(px), int(py)
	fx, fy := float32(px-float64(col)), float32(py-float64(row))
	a := c.pix[4*(row*c.wPx+col):][:8]
	b := c.pix[4*((row+1)*c.wPx+col):][:8]
	var v [4]float32
	for i := range v {
		top := over(float32(a[i]), float32(a[i+4]), fx)
		v[i] = over(top, over(float32(b[i]), float32(b[i+4]), fx), fy) / 65535
	}
	return Ink{v[0], v[1], v[2], 1}, v[3]
}

// Image rounds to 8 bits. A little noise before the rounding, fixed for each pixel and seed, keeps slow
// gradients from showing bands.
func (c *Canvas) Image(seed uint32) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, c.wPx, c.hPx))
	inRows(c.hPx, func(row int) {
		for col := range c.wPx {
			i := 4 * (row*c.wPx + col)
			noise := float32(Hash(int32(col), int32(row), seed)) / (1 << 32)
			for k := range 3 {
				img.Pix[i+k] = uint8(min(load(c.pix[i+k])*255+noise, 255))
			}
			img.Pix[i+3] = 255
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
