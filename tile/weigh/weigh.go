package weigh

import (
	"fmt"
	"slices"
)

// Binary places. The weights' absolute values may add up to 1.99 times One: then what stands between the axes fits 16 bits, and every sum 31.
const (
	WeightBits = 14
	MiddleBits = 6
	One        = 1 << WeightBits
)

const (
	middleShift = WeightBits - MiddleBits
	middleRound = 1 << (middleShift - 1)
	levelShift  = WeightBits + MiddleBits
	levelRound  = 1 << (levelShift - 1)
)

// Down weighs rows of src, stride bytes apart, from its first on: dst[i] is the sum of weights[k] times byte i of row k, with MiddleBits binary places.
// The number of weights must be even, and src must hold len(dst) bytes of as many rows.
func Down(dst []int16, src []byte, stride int, weights []int16) {
	if len(dst) == 0 || len(weights) == 0 {
		clear(dst)
		return
	}
	if len(weights)%2 != 0 || stride < 0 {
		panic(fmt.Sprintf("weigh: %d weights over rows %d bytes apart", len(weights), stride))
	}
	src = upTo(src, (len(weights)-1)*stride+len(dst))
	down(dst, src, stride, weights)
}

// Taps says which places of a row make each place of another: place i is the sum of Each places from First[i] on, each times its weight of Weights[i*Each:].
type Taps struct {
	first   []int32
	weights []int16
	each    int
	reach   int // one past the last place that is read
}

// tapsAtOnce is what Each is a multiple of, so that eight can be weighed at once; those that fill up weigh nothing.
const tapsAtOnce = 8

// NewTaps prepares room for n places of up to each taps.
func NewTaps(n, each int) *Taps {
	each = (each + tapsAtOnce - 1) / tapsAtOnce * tapsAtOnce
	return &Taps{first: make([]int32, n), weights: make([]int16, n*each), each: each}
}

// Set sets what makes place i: weights, each one place on from first, which must be 0 or more.
func (t *Taps) Set(i, first int, weights []int16) {
	if first < 0 || len(weights) > t.each {
		panic(fmt.Sprintf("weigh: %d taps of %d from %d on", len(weights), t.each, first))
	}
	t.first[i] = int32(first)
	clear(t.weights[i*t.each+copy(t.weights[i*t.each:], weights) : (i+1)*t.each])
	t.reach = max(t.reach, first+t.each)
}

// Len is how many places the taps make.
func (t *Taps) Len() int { return len(t.first) }

// Reach is how many places of the row there must be: those that weigh nothing are read too.
func (t *Taps) Reach() int { return t.reach }

// Across weighs places of a row that Down has made and makes levels of it, rounded and brought into 0 to 255, one for each place of t.
// src must hold t.Reach() places.
func Across(dst []byte, src []int16, t *Taps) {
	if len(dst) != len(t.first) {
		panic(fmt.Sprintf("weigh: %d places of taps for %d", len(t.first), len(dst)))
	}
	if len(dst) > 0 {
		across(dst, upTo(src, t.reach), t)
	}
}

// AcrossPixels does what Across does for pixels of four channels side by side: src must hold 4 t.Reach() numbers, and dst takes 4 for each place of t.
func AcrossPixels(dst []byte, src []int16, t *Taps) {
	if len(dst) != 4*len(t.first) {
		panic(fmt.Sprintf("weigh: %d places of taps for %d bytes", len(t.first), len(dst)))
	}
	if len(dst) > 0 {
		acrossPixels(dst, upTo(src, 4*t.reach), t)
	}
}

// Path is a row of places in a picture: straight pieces of 1 << Shift places each, evenly apart, from one knot to the next. The first Skip places of the first piece are left out.
// Knots carry Places binary places, and with Shift more are PhaseBits or more; they tell the place of the first of the kernel's taps, pixels across and down.
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

// LookUp looks a picture up along a path: each level of dst is the sum of KernelTaps pixels across and down, from the pixel that the path's place lies in on, weighed by its phase, rounded and
// brought into 0 to 255. src must hold rows of stride bytes, and Slack bytes more than the last pixel that a knot of the path asks for.
func LookUp(dst, src []byte, stride int, p Path, kernel *Kernel) {
	if len(dst) == 0 {
		return
	}
	if places := p.Places + p.Shift; places < PhaseBits || places > 62 || stride < 0 || p.Skip < 0 || p.Skip >= 1<<p.Shift {
		panic(fmt.Sprintf("weigh: a path of %d + %d binary places, but for %d, over rows %d bytes apart", p.Places, p.Shift, p.Skip, stride))
	}
	knots := (p.Skip+len(dst)-1)>>p.Shift + 2
	x, y := upTo(p.X, knots), upTo(p.Y, knots)
	if min(slices.Min(x), slices.Min(y)) < 0 {
		panic("weigh: a path that begins before the picture")
	}
	// No place lies further than the knots. Checked here, so that the loops need not.
	last := (slices.Max(y)>>p.Places+KernelTaps-1)*stride + slices.Max(x)>>p.Places + KernelTaps + Slack
	lookUp(dst, upTo(src, last), stride, p, kernel)
}

// Slack is how many bytes beyond the last pixel LookUp may read.
const Slack = 2

// upTo is the first n of all, which must have as many, whatever stands behind it.
func upTo[T any](all []T, n int) []T { return all[:n:len(all)] }

func clip(v int32) byte { return byte(max(0, min(255, v))) }
