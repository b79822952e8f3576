package weigh

import (
	"fmt"
	"math"
	"slices"
)

// Path is a row of places in a picture: straight pieces of 1 << Shift places each, evenly apart, from one
// knot to the next. The first Skip places of the first piece are left out. Knots carry Places binary places,
// and with Shift more are PhaseBits or more; they tell the place of the first of the kernel's taps, pixels
// across and down.
type Path struct {
	X, Y          []int
	Shift, Places uint
	Skip          int
}

// PhaseBits are binary places of a tap's place that choose the weights.
const PhaseBits = 7

// KernelTaps is how many pixels across and down LookUp weighs.
const KernelTaps = 6

// Kernel holds the weights for each phase: those of KernelTaps pixels, and two that stay 0.
type Kernel [1 << PhaseBits][8]int16

// LookUp looks a picture of one channel up along a path: each level of dst is the sum of KernelTaps pixels
// across and down, from the pixel that the path's place lies in on, weighed by its phase, rounded and brought
// into 0 to 255. src must hold rows of stride bytes, and Slack pixels more than the last that a knot of the
// path asks for.
func LookUp(dst, src []byte, stride int, p Path, kernel *Kernel) {
	if len(dst) > 0 {
		lookUp(dst, p.reach(src, stride, 1, len(dst)), stride, p, kernel)
	}
}

// LookUpPixels does what LookUp does for pixels of four channels side by side.
func LookUpPixels(dst, src []byte, stride int, p Path, kernel *Kernel) {
	if len(dst)%4 != 0 {
		panic(fmt.Sprintf("weigh: %d bytes for pixels of four", len(dst)))
	}
	if len(dst) > 0 {
		lookUpPixels(dst, p.reach(src, stride, 4, len(dst)/4), stride, p, kernel)
	}
}

// reach is what of a picture n places of the path may read. It is checked here, so that the loops need not.
func (p Path) reach(src []byte, stride, channels, n int) []byte {
	if places := p.Places + p.Shift; places < PhaseBits || places > 62 || stride < 0 || p.Skip < 0 ||
		p.Skip >= 1<<p.Shift {
		panic(fmt.Sprintf("weigh: a path of %d + %d binary places, but for %d, over rows %d bytes apart", p.Places, p.Shift,
			p.Skip, stride))
	}
	knots := (p.Skip+n-1)>>p.Shift + 2
	x, y := upTo(p.X, knots), upTo(p.Y, knots)
	if min(slices.Min(x), slices.Min(y)) < 0 || max(slices.Max(x), slices.Max(y)) > math.MaxInt>>p.Shift {
		panic("weigh: a path beyond any picture")
	}
	// No place lies further than the knots.
	row, column := slices.Max(y)>>p.Places+KernelTaps-1, slices.Max(x)>>p.Places+KernelTaps+Slack
	if row > len(src) || column > len(src) { // their products then fit
		panic(fmt.Sprintf("weigh: a path to row %d, column %d in %d bytes", row, column, len(src)))
	}
	return upTo(src, row*stride+column*channels)
}

// Slack is how many pixels beyond the last LookUp may read.
const Slack = 2
