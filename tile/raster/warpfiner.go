package raster

import "math"

// finer says how much finer than the grid a block is looked up along one axis, and how that is filtered down.
type finer struct {
	shift   uint    // 1 << shift places to a pixel
	weights []int16 // of the places about a pixel's centre, an odd number
}

// Bounds of how many pixels of the shrunk artwork fall on one of the grid.
const (
	// up to here they are looked up as they are; what that folds over is finest detail near what the grid can't show
	sparest = 1.1
	denser  = 1.3 // from here on they are filtered in full; the kernel grows between, so that no block's edge shows
	// roomier is how many there are of an artwork that is shrunk: so many that shrinking costs nothing of what
	// the grid can show, and that what little it folds over comes to lie where the second filter takes most of
	// it.
	roomier = 2
	// foldsAt is how many may fall on one of the finer places: detail of 0.71 cycles a place folds over to
	// 0.29, where the filter for half as many places passes a third. Only the finest chequers, seen aslant,
	// come that far.
	foldsAt  = 1.42
	maxFiner = 3
)

// load is how many pixels of the shrunk artwork fall on a grid pixel along one of the grid's axes, at most.
type load struct {
	length float64 // along the way that the axis takes in the artwork
	corner float64 // of the artwork's finest detail, which runs aslant in it: twice the cycles that it has there
}

// add takes in a place, where a grid pixel along the axis is x and y pixels of the shrunk artwork.
func (l load) add(x, y float64) load {
	return load{max(l.length, math.Hypot(x, y)), max(l.corner, math.Abs(x)+math.Abs(y))}
}

// newFiner chooses for a load.
func newFiner(l load) finer {
	if !(l.length > sparest) {
		return finer{0, kernelWeights(1, 0, 1)}
	}
	f := finer{shift: 1}
	for f.shift < maxFiner && l.corner > foldsAt*float64(int(1)<<f.shift) {
		f.shift++
	}
	// The kernel on the grid's pixels, in places; one place wide it picks the middle one alone.
	width := float64(int(1) << f.shift)
	width *= max(1/width, min(1, 0.5+0.5*(l.length-sparest)/(denser-sparest)))
	reach := int(math.Ceil(lobes*width)) - 1
	f.weights = kernelWeights(2*reach+1, float64(reach), width)
	return f
}

// reach is how many places the filter takes to either side.
func (f finer) reach() int { return len(f.weights) / 2 }

// places are those that pixels from x0 up to x1 need.
func (f finer) places(x0, x1 int) (from, to int) {
	return x0<<f.shift - f.reach(), (x1-1)<<f.shift + f.reach() + 1
}

// taps are those of n pixels, from the first place of the first on.
func (f finer) taps(n int) []tap {
	all, weights := make([]tap, n), even(f.weights)
	for i := range all {
		all[i] = tap{i << f.shift, weights}
	}
	return all
}
