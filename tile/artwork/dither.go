package artwork

import "image/color"

// Samples of 16 bits are dithered to 8: a slope that rises by less than a level over many pixels would come out as
// bands otherwise. Dither is ordered (Bayer, An optimum method for two-level rendition of continuous-tone pictures,
// 1973; from memory): what is added before a sample is cut off goes by its place in a square of eight pixels, counted
// from the stored picture's corner. So the same file gives the same pixels again, on every processor and on every
// sheet, and levels that 8 bits hold come out as they are.

// threshold is what is added to a 16-bit sample before it is cut off to 8 bits, in halves of 1/257 of a level: from 0
// to below fullThreshold, a whole level.
type threshold uint32

const (
	fullThreshold = 2 * 257
	halfThreshold = threshold(257) // rounds to the nearest
)

// DitherSide is the side of the square in pixels, DitherRanks how many thresholds there are in it.
const (
	DitherSide  = 8
	DitherRanks = DitherSide * DitherSide
)

// DitherRank is which of the thresholds a pixel has, from 0, the lowest, on; each is in the square once.
func DitherRank(x, y int) (rank int) {
	for bit := 0; 1<<bit < DitherSide; bit++ { // of the finest step first
		rank = rank<<2 | (x^y)>>bit&1<<1 | y>>bit&1
	}
	return rank
}

// dither are the thresholds in rows, each in the middle of its 64th of a level.
var dither = func() (all [DitherSide][DitherSide]threshold) {
	for y := range all {
		for x := range all[y] {
			all[y][x] = threshold(fullThreshold * (2*DitherRank(x, y) + 1) / (2 * DitherRanks))
		}
	}
	return all
}()

// ground is what becomes of a picture on its way to 8 opaque bits.
type ground struct {
	color.RGBA      // what transparent parts are laid on
	rounded    bool // samples of 16 bits are rounded, not dithered
}

// threshold is that of a pixel, counted from the stored picture's corner.
func (g ground) threshold(x, y int) threshold {
	if g.rounded {
		return halfThreshold
	}
	return dither[y%DitherSide][x%DitherSide]
}
