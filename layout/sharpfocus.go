package layout

import "math"

// bestFocusMM is the focus, from the entrance pupil, at which the worst blur of the drop's edge and the
// picture, in the middle and at the fill, is least. It hardly depends on the stop. Against one over the focus
// each blur is a valley with one bottom, and so is their maximum.
func (p Plan) bestFocusMM(fNumber float64) float64 {
	near, far := min(p.EdgeMM(), p.ImageMM()), max(p.EdgeMM(), p.ImageMM())
	between := far - near
	near, far = max(near-between, near/2), far+between // the picture toward the rim may be sharp beyond either
	// of the stretch searched: a few thousandths of a millimetre at most
	const share = 1e-6
	return 1 / lowest(1/far, 1/near, share*(1/near-1/far),
		func(v float64) float64 { return p.worstPx(p.BlurAt(fNumber, 1/v)) })
}

// lowest is where between low and high a function with one valley is lowest, to within tolerance: golden
// section (Kiefer, Sequential minimax search for a maximum, 1953).
func lowest(low, high, tolerance float64, f func(float64) float64) float64 {
	golden := (math.Sqrt(5) - 1) / 2
	a, b := high-golden*(high-low), low+golden*(high-low)
	fa, fb := f(a), f(b)
	for high-low > tolerance && a < b {
		if fa < fb {
			high, b, fb = b, a, fa
			a = high - golden*(high-low)
			fa = f(a)
		} else {
			low, a, fa = a, b, fb
			b = low + golden*(high-low)
			fb = f(b)
		}
	}
	return (low + high) / 2
}
