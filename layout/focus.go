package layout

import "math"

// EdgeMM is how far the drop's visible edge lies from the entrance pupil, along the axis: the tangent ray touches the
// drop R²/D before its centre. A spheroid is touched there all round, R being half its width: where a line of slope
// m through the pupil touches x²/a² + z²/a² = 1, or the upright y²/b² + z²/a² = 1, z is -a²/D for both.
func (p Plan) EdgeMM() float64 {
	r := p.Sight().Drop.RadiusMM()
	return p.Drop.CameraMM - r*r/p.Drop.CameraMM
}

// ImageMM is how far the near-axis image of the backdrop lies from the entrance pupil: it hangs fL/(L-f) in
// front of the drop's centre (thin lens, Hecht, Optics, 5.2.3).
func (p Plan) ImageMM() float64 {
	f, l := p.Drop.FocalLengthMM, p.Drop.DistanceMM
	return p.Drop.CameraMM - f*l/(l-f)
}

// focusMM is the distance from the entrance pupil that a focus stands for.
func (p Plan) focusMM(f Focus) float64 {
	switch f {
	case FocusEdge:
		return p.EdgeMM()
	case FocusPicture:
		return p.PictureFocusMM(p.Camera.FNumber)
	case FocusWhole:
		return p.WholeFocusMM(p.Camera.FNumber)
	default:
		return p.BestFocusMM(p.Camera.FNumber)
	}
}

// BestFocusMM is the focus, from the entrance pupil, at which the worst blur of the drop's edge and the
// picture, in the middle and at the fill, is least. It hardly depends on the stop. Against one over the focus
// each blur is a valley with one bottom, and so is their maximum.
func (p Plan) BestFocusMM(fNumber float64) float64 {
	// a few thousandths of a millimetre at most
	const share = 1e-6
	return p.lowestFocusMM(share, func(focusMM float64) float64 { return p.WorstPx(p.BlurAt(fNumber, focusMM)) })
}

// lowestFocusMM is the focus at which a blur that is a valley against one over the focus is lowest, to within a share
// of the stretch that is searched.
func (p Plan) lowestFocusMM(share float64, blurPx func(focusMM float64) float64) float64 {
	near, far := min(p.EdgeMM(), p.ImageMM()), max(p.EdgeMM(), p.ImageMM())
	between := far - near
	near, far = max(near-between, near/2), far+between // the picture toward the rim may be sharp beyond either
	return 1 / Lowest(1/far, 1/near, share*(1/near-1/far), func(v float64) float64 { return blurPx(1 / v) })
}

// Lowest is where between low and high a function with one valley is lowest, to within tolerance: golden
// section (Kiefer, Sequential minimax search for a maximum, 1953).
func Lowest(low, high, tolerance float64, f func(float64) float64) float64 {
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
