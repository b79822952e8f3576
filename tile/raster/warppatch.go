package raster

import (
	"image"
	"math"

	"dropsheet/tile/raster/weigh"
)

// kernelFirst is the first of the taps about a coordinate, from the pixel that it lies in or right of.
const kernelFirst = 1 - lobes

// fixedBits are binary places of coordinates.
const fixedBits = 16

// phases are the Lanczos kernel's six weights for a coordinate that lies so many 128ths of a pixel right of its third.
var phases = func() *weigh.Kernel {
	all := new(weigh.Kernel)
	for i := range all {
		copy(all[i][:], kernelWeights(weigh.KernelTaps, float64(i)/(1<<weigh.PhaseBits)-kernelFirst, 1))
	}
	return all
}()

// patch is the part of the shrunk artwork that a block shows, and where in it the knots lie.
type patch struct {
	pix              []byte
	stride, channels int   // bytes to a row, and to a pixel: 1 or 4
	xs, ys           []int // the kernel's first tap for each knot, with fixedBits places
	// Room for a row of these.
	rowX, rowY []int
}

// patchRect is what a part of the block shows, in pixels of the artwork shrunk to a size, with what kernels
// reach about it. It is empty where nothing of the part is known, as just beyond what is.
func (b *block) patchRect(size Grid, part image.Rectangle) image.Rectangle {
	minX, minY, maxX, maxY := math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)
	width, height := float64(size.WidthPx), float64(size.HeightPx)
	b.each(b.cellsAbout(part), func(k int) {
		p := b.knots[k]
		minX, maxX = min(minX, p.u*width), max(maxX, p.u*width)
		minY, maxY = min(minY, p.v*height), max(maxY, p.v*height)
	})
	if minX > maxX {
		return image.Rectangle{}
	}
	// One pixel more to either side, for the knots next to these and for rounding.
	return image.Rect(
		int(math.Floor(minX-0.5))+kernelFirst-1, int(math.Floor(minY-0.5))+kernelFirst-1,
		int(math.Floor(maxX-0.5))+lobes+2, int(math.Floor(maxY-0.5))+lobes+2,
	)
}

// patch reads what a part of the block shows from the artwork shrunk to a size; r is its patchRect.
func (b *block) patch(size Grid, r image.Rectangle) *patch {
	width, height := float64(size.WidthPx), float64(size.HeightPx)
	upright := b.upright
	upright.grid = size
	slack := image.Rect(r.Min.X, r.Min.Y, r.Max.X+weigh.Slack, r.Max.Y)
	p := &patch{xs: make([]int, len(b.knots)), ys: make([]int, len(b.knots)), rowX: make([]int, b.side),
		rowY: make([]int, b.side)}
	p.pix, p.stride, p.channels = bytesOf(upright.cutPicture(slack))
	const roundPhase = 1 << (fixedBits - weigh.PhaseBits - 1)
	// Rounded before it is counted from the patch, so that it comes out alike in every patch.
	fixed := func(v float64, from, to int) int {
		at := int(math.Round((v-0.5+kernelFirst)*(1<<fixedBits))) - from<<fixedBits
		return max(0, min(at, (to-from-weigh.KernelTaps)<<fixedBits)) + roundPhase
	}
	for i, k := range b.knots {
		p.xs[i], p.ys[i] = fixed(k.u*width, r.Min.X, r.Max.X), fixed(k.v*height, r.Min.Y, r.Max.Y)
	}
	return p
}

// lookUp looks places along a path up.
func (p *patch) lookUp(dst []byte, path weigh.Path) {
	if p.channels == 1 {
		weigh.LookUp(dst, p.pix, p.stride, path, phases)
	} else {
		weigh.LookUpPixels(dst, p.pix, p.stride, path, phases)
	}
}
