package weigh

import "fmt"

// Binary places. The weights' absolute values may add up to 1.99 times One: then what stands between the axes
// fits 16 bits, and every sum 31.
const (
	weightBits = 14
	middleBits = 6
	One        = 1 << weightBits
)

const (
	middleShift = weightBits - middleBits
	middleRound = 1 << (middleShift - 1)
	levelShift  = weightBits + middleBits
	levelRound  = 1 << (levelShift - 1)
)

// Down weighs rows of src, stride bytes apart, from its first on: dst[i] is the sum of weights[k] times byte
// i of row k, with middleBits binary places. The number of weights must be even, and src must hold len(dst)
// bytes of as many rows.
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

// Taps says which places of a row make each place of another: place i is the sum of each places from first[i]
// on, times their weights from weights[i*each] on.
type Taps struct {
	first   []int32
	weights []int16
	each    int
	reach   int // one past the last place that is read
}

// tapsAtOnce is what each is a multiple of, so that eight can be weighed at once; those that fill up weigh nothing.
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

// Across weighs places of a row that Down has made and makes levels of it, rounded and brought into 0 to 255,
// one for each place of t. src must hold t.Reach() places.
func Across(dst []byte, src []int16, t *Taps) {
	if len(dst) != len(t.first) {
		panic(fmt.Sprintf("weigh: %d places of taps for %d", len(t.first), len(dst)))
	}
	if len(dst) > 0 {
		across(dst, upTo(src, t.reach), t)
	}
}

// AcrossPixels does what Across does for pixels of four channels side by side: src must hold 4 t.Reach()
// numbers, and dst takes 4 for each place of t.
func AcrossPixels(dst []byte, src []int16, t *Taps) {
	if len(dst) != 4*len(t.first) {
		panic(fmt.Sprintf("weigh: %d places of taps for %d bytes", len(t.first), len(dst)))
	}
	if len(dst) > 0 {
		acrossPixels(dst, upTo(src, 4*t.reach), t)
	}
}

// upTo is the first n of all, which must have as many, whatever stands behind it.
func upTo[T any](all []T, n int) []T { return all[:n:len(all)] }

func clip(v int32) byte { return byte(max(0, min(255, v))) }
