package texture

import (
	"image"
	"image/color"
	"runtime"
	"sync"
)

// shrink halves a picture, rounding up, each pixel the mean in linear light of the two by two that it covers.
func shrink(w, h int, read func(x, y int) color.RGBA) *image.RGBA {
	half := image.NewRGBA(image.Rect(0, 0, (w+1)/2, (h+1)/2))
	Rows(half.Rect.Dy(), func(y int) {
		for x := range half.Rect.Dx() {
			right, below := min(2*x+1, w-1), min(2*y+1, h-1)
			sum := Linear(read(2*x, 2*y)).Add(Linear(read(right, 2*y))).Add(Linear(read(2*x, below))).Add(Linear(read(right, below)))
			half.SetRGBA(x, y, sum.Scale(0.25).SRGB())
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
