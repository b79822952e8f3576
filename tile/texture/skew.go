package texture

import "math"

// mostReads is how many places of the picture are read at most for one that is much longer than wide.
const mostReads = 8

// Skewed is the picture's colour at (u, v), averaged over a parallelogram: what a square of a bent print shows.
// Of its sides a and b, in the artwork's pixels, it takes the matrix aaᵀ + bbᵀ. It is read along its longer
// axis as often as it is longer than wide, each time over its width.
//
// The matrix has the squares of both axes as its eigenvalues, and of the longer's direction φ it gives the
// cosine and the sine of 2φ.
func (t *Texture) Skewed(u, v, xx, xy, yy float64) Light {
	w, h := float64(t.width), float64(t.height)
	middle, apart := (xx+yy)/2, (xx-yy)/2
	half := math.Sqrt(apart*apart + xy*xy)
	longPx, widePx := math.Sqrt(middle+half), math.Sqrt(max(0, middle-half))
	n := mostReads
	if longPx < mostReads*widePx {
		n = int(math.Round(longPx / widePx))
	}
	if longPx <= 1 || n <= 1 {
		return t.At(u, v, longPx)
	}
	// φ from -90 to 90 degrees, as its double lies from -180 to 180: cos²φ = (1 + cos 2φ)/2.
	cos2 := apart / half
	cos, sin := math.Sqrt(max(0, 1+cos2)/2), math.Copysign(math.Sqrt(max(0, 1-cos2)/2), xy)
	var sum Light
	for k := range n {
		along := longPx * ((float64(k)+0.5)/float64(n) - 0.5)
		sum = sum.Add(t.At(u+along*cos/w, v+along*sin/h, max(widePx, longPx/float64(n))))
	}
	return sum.Scale(1 / float32(n))
}
