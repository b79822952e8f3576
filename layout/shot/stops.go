package shot

import (
	"math"

	"dropsheet/layout"
)

// Stops that are looked at: more open than any lens for close work, and more closed than nearly any.
const (
	widestFNumber    = 1.0
	narrowestFNumber = 64.0
)

// worstAt is the largest blur of edge and picture at a stop with the best focus for it.
func (s Shot) worstAt(fNumber float64) float64 {
	return s.WorstPx(s.BlurAt(fNumber, s.BestFocusMM(fNumber)))
}

// sharpestStop is the stop with the least blur, and that blur: more open, defocus grows, more closed, diffraction does.
func (s Shot) sharpestStop() (fNumber, worstPx float64) {
	const tolerance = 1e-3 // of the logarithm: a thousandth of the f-number, of no weight in the blur so near its least
	n := math.Exp(layout.Lowest(math.Log(widestFNumber), math.Log(narrowestFNumber), tolerance,
		func(l float64) float64 { return s.worstAt(math.Exp(l)) }))
	return n, s.worstAt(n)
}

// leastOverStops is the stop with the least of a blur, at the focus that is best for it.
func (s Shot) leastOverStops(focusMM func(fNumber float64) float64, blurPx func(fNumber, focusMM float64) float64) (
	best FocusedStop) {
	at := func(fNumber float64) FocusedStop {
		focus := focusMM(fNumber)
		return FocusedStop{fNumber, focus, blurPx(fNumber, focus)}
	}
	const tolerance = 1e-2 // of the logarithm: a hundredth of the f-number, of no weight in the blur so near its least
	return at(math.Exp(layout.Lowest(math.Log(widestFNumber), math.Log(narrowestFNumber), tolerance,
		func(l float64) float64 { return at(math.Exp(l)).BlurPx })))
}

// stopsThatHold is the stops around one that holds a blur which hold it too.
func (s Shot) stopsThatHold(fNumber, worstPx float64) *StopRange {
	// out goes from a stop that holds toward an end, and stops at the last that does.
	out := func(end float64) float64 {
		if s.worstAt(end) <= worstPx {
			return end
		}
		holds, fails := fNumber, end
		for math.Abs(holds/fails-1) > 1e-4 {
			if middle := math.Sqrt(holds * fails); s.worstAt(middle) <= worstPx {
				holds = middle
			} else {
				fails = middle
			}
		}
		return holds
	}
	return &StopRange{out(widestFNumber), out(narrowestFNumber)}
}

// widerFrame is the narrowest frame that the best stop holds within a blur, which it exceeds in the plan's
// own, by worstPx. The camera stays where it is. The least blur is a length at the drop, nearly the same for
// every frame, so in pixels it goes with one over the frame's width. It is nil when no frame does it.
func (s Shot) widerFrame(worstPx, withinPx float64) *OtherFrame {
	const tries = 12 // two or three do, unless the stop that would be best lies beyond those looked at
	far := framed(s.Camera, layout.MaxLengthMM, s.Drop.CameraMM)
	if far.FNumber = widestFNumber; far.AiryPx() > withinPx {
		return nil // diffraction alone is more, however wide the frame
	}
	var f OtherFrame
	for range tries {
		// a little on the safe side
		s.Camera = framed(s.Camera, s.Camera.FrameWidthMM*worstPx/withinPx*1.0001, s.Drop.CameraMM)
		f.FrameWidthMM = s.Camera.FrameWidthMM
		f.FNumber, worstPx = s.sharpestStop()
		if worstPx <= withinPx && worstPx > withinPx*0.999 {
			f.DropPx = 2 * s.Sight().ApparentRadiusMM() / s.Camera.PixelMM()
			return &f
		}
	}
	return nil
}

// framed is the camera with another lens, from the same place: the frame is so much wider, its pixels as many.
func framed(c layout.Camera, widthMM, cameraMM float64) layout.Camera {
	m := c.Sensor.WidthMM / widthMM
	c.FrameHeightMM *= widthMM / c.FrameWidthMM
	c.FrameWidthMM, c.LensMM = widthMM, cameraMM*m/(1+m)
	return c
}

// Marks writes both ends as stops on a lens, rounded inward so that both hold; to a tenth where the range is
// narrower than that.
func (r StopRange) Marks() (from, to string) {
	marks := func(fNumber float64) float64 { // to the unit
		if fNumber < 10 {
			return 10
		}
		return 1
	}
	a, b := marks(r.FromFNumber), marks(r.ToFNumber)
	open, closed := math.Ceil(r.FromFNumber*a)/a, math.Floor(r.ToFNumber*b)/b
	if open > closed {
		open, closed = r.FromFNumber, r.ToFNumber
	}
	return StopMark(open), StopMark(closed)
}
