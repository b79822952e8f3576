package weigh

import "fmt"

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
	src = src[:(len(weights)-1)*stride+len(dst)]
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
		across(dst, src[:t.reach], t)
	}
}

// Line is a straight line of places in a picture, evenly apart. Its coordinates carry Places binary places, PhaseBits or more, and tell the place of the first of the Kernel's taps.
type Line struct {
	X, Y, StepX, StepY int
	Places             uint
}

// PhaseBits are binary places of a tap's place that choose the weights.
const PhaseBits = 7

// KernelTaps is how many pixels across and down LookUp weighs.
const KernelTaps = 6

// Kernel holds the weights for each phase: those of KernelTaps pixels, and two that stay 0.
type Kernel [1 << PhaseBits][8]int16

// LookUp looks a picture up along a line: each level of dst is the sum of KernelTaps pixels across and down, from the pixel that the line's place lies in on, weighed by its phase, rounded and
// brought into 0 to 255. src must hold rows of stride bytes, and Slack bytes more than the last pixel that is weighed.
func LookUp(dst, src []byte, stride int, l Line, kernel *Kernel) {
	if len(dst) == 0 {
		return
	}
	if l.Places < PhaseBits || l.Places > 62 || stride < 0 {
		panic(fmt.Sprintf("weigh: a line of %d binary places over rows %d bytes apart", l.Places, stride))
	}
	endX, endY := l.X+(len(dst)-1)*l.StepX, l.Y+(len(dst)-1)*l.StepY
	if min(l.X, endX, l.Y, endY) < 0 {
		panic("weigh: a line that begins before the picture")
	}
	// A line's largest coordinates are those of its ends. Checked here, so that the loops need not.
	last := (max(l.Y, endY)>>l.Places+KernelTaps-1)*stride + max(l.X, endX)>>l.Places + KernelTaps + Slack
	lookUp(dst, src[:last], stride, l, kernel)
}

// Slack is how many bytes beyond the last pixel LookUp may read.
const Slack = 2

func clip(v int32) byte { return byte(max(0, min(255, v))) }
