package main

import (
	"image"
	"runtime"
	"sync"
)

// The canvas in units, and the eye that looks at the scene (see the package comment).
const (
	canvasW  = 6000
	canvasH  = 4000
	horizonU = 1950.0
	eyeM     = 6.0
	focalU   = 6000.0
)

// picture is a painted canvas, or a part of one: rows from topU down. Besides colour each pixel holds how near the thing in it is
// (nearestM / depth), which the water needs to bend reflections rightly.
type picture struct {
	wPx, hPx int
	topU     float64
	pxPerU   float64
	mirror   bool
	pix      []uint16 // red, green, blue, nearness; sRGB-encoded, 0..65535
}

const nearestM = 10.0

func newPicture(wPx, hPx int, topU, pxPerU float64, mirror bool) *picture {
	return &picture{wPx, hPx, topU, pxPerU, mirror, make([]uint16, 4*wPx*hPx)}
}

// rows paints every pixel of the rows from first up to end; x and y are in units.
func (pic *picture) rows(first, end int, colour func(x, y float64) ink) {
	inRows(end-first, func(row int) {
		y := (float64(first+row)+0.5)/pic.pxPerU + pic.topU
		for col := range pic.wPx {
			c := colour((float64(col)+0.5)/pic.pxPerU, y)
			at := pic.pix[4*((first+row)*pic.wPx+col):][:4]
			at[0], at[1], at[2], at[3] = store(c.r), store(c.g), store(c.b), 0
		}
	})
}

// sample reads the picture between its pixels, x and y in units, beyond its edges the edge.
func (pic *picture) sample(x, y float64) (c ink, nearness float32) {
	px := min(max(x*pic.pxPerU-0.5, 0), float64(pic.wPx)-1.001)
	py := min(max((y-pic.topU)*pic.pxPerU-0.5, 0), float64(pic.hPx)-1.001)
	col, row := int(px), int(py)
	fx, fy := float32(px-float64(col)), float32(py-float64(row))
	a := pic.pix[4*(row*pic.wPx+col):][:8]
	b := pic.pix[4*((row+1)*pic.wPx+col):][:8]
	var v [4]float32
	for i := range v {
		top := over(float32(a[i]), float32(a[i+4]), fx)
		v[i] = over(top, over(float32(b[i]), float32(b[i+4]), fx), fy) / 65535
	}
	return ink{v[0], v[1], v[2], 1}, v[3]
}

// image rounds to 8 bits. A little noise before the rounding, fixed for each pixel, keeps slow gradients from showing bands.
func (pic *picture) image() *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, pic.wPx, pic.hPx))
	inRows(pic.hPx, func(row int) {
		for col := range pic.wPx {
			i := 4 * (row*pic.wPx + col)
			noise := float32(hash(int32(col), int32(row), 77)) / (1 << 32)
			for k := range 3 {
				img.Pix[i+k] = uint8(min(load(pic.pix[i+k])*255+noise, 255))
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
