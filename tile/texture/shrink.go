package texture

import (
	"image"
	"runtime"
	"sync"
)

// shrink halves a picture, rounding up, each pixel the mean in linear light of the two by two that it covers. row gives a row of it, four bytes a pixel, and may use the buffer.
func shrink(w, h int, row func(y int, buffer []uint8) []uint8) *image.RGBA {
	half := image.NewRGBA(image.Rect(0, 0, (w+1)/2, (h+1)/2))
	buffers := sync.Pool{New: func() any { b := make([]uint8, 8*w); return &b }}
	Rows(half.Rect.Dy(), func(y int) {
		buffer := buffers.Get().(*[]uint8)
		defer buffers.Put(buffer)
		upper, lower := row(2*y, (*buffer)[:4*w]), row(min(2*y+1, h-1), (*buffer)[4*w:])
		out := half.Pix[y*half.Stride:]
		for x := range half.Rect.Dx() {
			left, right := 8*x, 4*min(2*x+1, w-1)
			a, b, c, d := upper[left:left+3], upper[right:right+3], lower[left:left+3], lower[right:right+3]
			p := out[4*x : 4*x+4 : 4*x+4]
			for i := range 3 {
				p[i] = encoded((toLinear[a[i]] + toLinear[b[i]] + toLinear[c[i]] + toLinear[d[i]]) / 4)
			}
			p[3] = 0xff
		}
	})
	return half
}

// Rows runs work for each row from 0 to n-1, on all processors, and returns when all are done.
func Rows(n int, work func(y int)) {
	var group sync.WaitGroup
	workers := min(n, runtime.GOMAXPROCS(0))
	for first := range workers {
		group.Go(func() {
			for y := first; y < n; y += workers {
				work(y)
			}
		})
	}
	group.Wait()
}
