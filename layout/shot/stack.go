package shot

import (
	"math"

	"dropsheet/layout"
)

// Stack is the exposures, each focused elsewhere, of which all that is to be sharp is sharp in one: the drop's edge and
// the picture from its middle to its fill. They are put together on a computer, which asks for what stands still.
type Stack struct {
	FNumber   float64 `json:"f_number"`
	Exposures int     `json:"exposures"`
	FromMM    float64 `json:"from_mm"` // the nearest focus, from the entrance pupil
	ToMM      float64 `json:"to_mm"`   // the furthest
	StepMM    float64 `json:"step_mm"` // from one to the next; 0 for one exposure
}

// stackedFills is at how many places from its middle to its fill the picture is looked at.
const stackedFills = 9

// mostExposures are as many as may be asked for.
const mostExposures = 100

// Stack is that of a stop, to a blur of SharpToPx. ok is false where something is not sharp to that at any focus, or it
// would take too many.
func (s Shot) Stack(fNumber float64) (out Stack, ok bool) {
	out.FNumber = fNumber
	first, last, narrowest := math.Inf(-1), math.Inf(1), math.Inf(1)
	for _, blurPx := range s.stacked(fNumber) {
		from, to, ok := s.sharpFrom(blurPx)
		if !ok {
			return out, false
		}
		first, last, narrowest = max(first, from), min(last, to), min(narrowest, to-from)
	}
	// Every stretch that is sharp ends at last or further off, and begins at first or nearer: exposures from the one to
	// the other meet them all, where no two are further apart than the narrowest is wide.
	out.FromMM, out.ToMM = min(first, last), max(first, last)
	if first <= last { // one serves for all
		middle := (first + last) / 2
		out.FromMM, out.ToMM, out.Exposures = middle, middle, 1
		return out, true
	}
	const slack = 1e-9 // for exposures that just do
	steps := max(1, math.Ceil((out.ToMM-out.FromMM)/narrowest-slack))
	if !(steps < mostExposures) {
		return out, false
	}
	out.Exposures, out.StepMM = int(steps)+1, (out.ToMM-out.FromMM)/steps
	return out, true
}

// StackNear is the stack at the plan's stop, or else at the next full stop, more closed or more open, that has one; nil
// where none has.
func (s Shot) StackNear() *Stack {
	own := s.Camera.FNumber
	if stack, ok := s.Stack(own); ok {
		return &stack
	}
	for step := 0.5; step <= 12; step += 0.5 { // the nearest first, in half stops to either side of the plan's
		for _, n := range []float64{own * math.Exp2(step/2), own / math.Exp2(step/2)} {
			if n < widestFNumber || n > narrowestFNumber {
				continue
			}
			if stack, ok := s.Stack(n); ok {
				return &stack
			}
		}
	}
	return nil
}

// stacked are the blurs of all that is to be sharp, in frame pixels, by the focus in mm from the entrance pupil.
func (s Shot) stacked(fNumber float64) (blurs []func(focusMM float64) float64) {
	blurs = append(blurs, func(focusMM float64) float64 { return s.BlurAt(fNumber, focusMM).EdgePx })
	for i := range stackedFills {
		fill := s.BlurFill() * float64(i) / (stackedFills - 1)
		blurs = append(blurs, func(focusMM float64) float64 { return s.PlaceBlurPx(fNumber, focusMM, fill) })
	}
	return blurs
}

// Stackable is the blur to which there is a stack, where there is none to SharpToPx.
type Stackable struct {
	SharpToPx float64 `json:"sharp_to_px"`
	FNumber   float64 `json:"f_number"`
}

// Stackable is at the full stop at which what of edge and picture is blurred most where it is itself in focus is least.
// To no more than that, exposures would have to lie next to each other: it is a tenth more, or as many tenths as it
// takes.
func (s Shot) Stackable() Stackable {
	least := Stackable{SharpToPx: math.Inf(1)}
	near, far := s.focuses()
	for stops := 0.0; ; stops++ {
		n := widestFNumber * math.Exp2(stops/2)
		if n > narrowestFNumber*(1+1e-9) {
			break
		}
		most := 0.0
		blurs := s.stacked(n)
		for i := len(blurs) - 1; i >= 0 && most < least.SharpToPx; i-- { // the fill first, which is worst as a rule
			most = max(most, blurs[i](s.sharpest(near, far, blurs[i])))
		}
		if most < least.SharpToPx {
			least = Stackable{most, n}
		}
	}
	for ok := false; !ok; {
		least.SharpToPx *= 1.1
		s.Camera.SharpToPx = least.SharpToPx
		_, ok = s.Stack(least.FNumber)
	}
	return least
}

// focuses are the nearest and the furthest focus that may serve, mm from the entrance pupil.
func (s Shot) focuses() (near, far float64) {
	edge, image := s.EdgeMM(), s.ImageMM()
	apart := math.Abs(edge - image)
	return max(min(edge, image)-apart, min(edge, image)/2), max(edge, image) + apart
}

// sharpest is the focus between two at which a blur is least.
func (s Shot) sharpest(near, far float64, blurPx func(focusMM float64) float64) (focusMM float64) {
	const share = 1e-5
	return layout.Lowest(near, far, share*(far-near), blurPx)
}

// sharpFrom is from which focus to which, mm from the entrance pupil, a blur is SharpToPx or less.
func (s Shot) sharpFrom(blurPx func(focusMM float64) float64) (fromMM, toMM float64, ok bool) {
	near, far := s.focuses()
	best := s.sharpest(near, far, blurPx)
	if blurPx(best) > s.Camera.SharpToPx {
		return 0, 0, false
	}
	end := func(beyond float64) float64 {
		holds := best
		for range 40 { // each halves what is left
			if middle := (holds + beyond) / 2; blurPx(middle) <= s.Camera.SharpToPx {
				holds = middle
			} else {
				beyond = middle
			}
		}
		return holds
	}
	return end(near), end(far), true
}
