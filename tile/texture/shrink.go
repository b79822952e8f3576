package texture

import (
	"image"
	"runtime"
	"sync"
)

// level is one copy of the picture: a byte a pixel of a grey one, red, green and blue of any other.
type level struct {
	width, height, channels int
	pix                     []uint8
}

// row is one row of it.
func (l *level) row(y int) []uint8 {
	stride := l.width * l.channels
	return l.pix[y*stride:][:stride]
}

// picture is a copy of it for those who draw.
func (l *level) picture() *image.RGBA {
	m := image.NewRGBA(image.Rect(0, 0, l.width, l.height))
	for i := range l.width * l.height {
		p := m.Pix[4*i : 4*i+4 : 4*i+4]
		for k := range 3 {
			p[k] = l.pix[i*l.channels+min(k, l.channels-1)]
		}
		p[3] = 0xff
	}
	return m
}

// meanFunc fills a row of a half from the two rows of w pixels that it covers.
type meanFunc func(half, upper, lower []uint8, w, channels int)

// shrink halves a picture, rounding up, each pixel the mean in linear light of the two by two that it covers.
// row gives a row of it, and may use the buffer.
func shrink(w, h, channels int, row func(y int, buffer []uint8) []uint8, mean meanFunc) level {
	half := level{(w + 1) / 2, (h + 1) / 2, channels, make([]uint8, (w+1)/2*((h+1)/2)*channels)}
	stride := w * channels
	buffers := sync.Pool{New: func() any { b := make([]uint8, 2*stride); return &b }}
	Rows(half.height, func(y int) {
		buffer := buffers.Get().(*[]uint8)
		defer buffers.Put(buffer)
		upper, lower := row(2*y, (*buffer)[:stride]), row(min(2*y+1, h-1), (*buffer)[stride:])
		mean(half.row(y), upper, lower, w, channels)
	})
	return half
}

// meanSRGB is the mean of sRGB's levels, channel by channel.
func meanSRGB(half, upper, lower []uint8, w, channels int) {
	for x := range (w + 1) / 2 {
		left, right := 2*x*channels, min(2*x+1, w-1)*channels
		for i := range channels {
			half[x*channels+i] = encoded((toLinear[upper[left+i]] + toLinear[upper[right+i]] + toLinear[lower[left+i]] +
				toLinear[lower[right+i]]) / 4)
		}
	}
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
