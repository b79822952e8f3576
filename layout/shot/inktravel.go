package shot

import (
	"cmp"
	"math"
	"slices"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Travel over a picture that does not fill its board: what is printed ends in any shape about the axis, often
// on one side sooner than on the other.

const (
	// inkSlipMM is how far beyond the outline still counts as within: the outline's straight stretches cut that much off.
	inkSlipMM = 1e-3
	// travelDirections is in how many directions a drop that does not fall straight is tried. What ends in a
	// straight side is worst approached square to it, and one of these is within 5 degrees of that: a movement
	// is told as up to 0.4 % too little.
	travelDirections = 36
	heldHair         = 1e-4 // of the fill: what the slip comes to
	// squareWithin is the sine of the angle, 15 degrees, within which a place round the drop counts as square
	// to the movement.
	squareWithin = 0.26
)

// ink is where what is printed ends on the board, round the axis. A straight line from the axis leaves it once.
type ink struct {
	at       []layout.Point // on its outline, from the board's middle
	azimuths []float64      // theirs, rising
}

// ink goes round what is printed.
func (s Shot) ink() (k ink) {
	for _, e := range s.InkOutline() {
		if e.At != (layout.Point{}) { // the axis on the picture's side: nothing that way
			k.at = append(k.at, e.At)
		}
	}
	slices.SortStableFunc(k.at, func(a, b layout.Point) int {
		return cmp.Compare(math.Atan2(a.YMM, a.XMM),
			math.Atan2(b.YMM, b.XMM))
	})
	for _, at := range k.at {
		k.azimuths = append(k.azimuths, math.Atan2(at.YMM, at.XMM))
	}
	return k
}

// has tells whether a place, from the board's middle, is printed.
func (k ink) has(at layout.Point) bool {
	if length(at.XMM, at.YMM) <= inkSlipMM {
		return true
	}
	if len(k.at) < 2 {
		return false
	}
	azimuth := math.Atan2(at.YMM, at.XMM)
	next, _ := slices.BinarySearch(k.azimuths, azimuth)
	n := len(k.at)
	a, b := k.at[(next+n-1)%n], k.at[next%n]
	// The place must lie on the axis's side of the stretch from a to b. Where these are half a turn apart
	// nothing is printed between them.
	along := layout.Point{XMM: b.XMM - a.XMM, YMM: b.YMM - a.YMM}
	if a.XMM*b.YMM-a.YMM*b.XMM < 0 {
		return false
	}
	return along.XMM*(at.YMM-a.YMM)-along.YMM*(at.XMM-a.XMM) >= -inkSlipMM*length(along.XMM, along.YMM)
}

// toleratedByInk is how far the drop may move along a direction, of length 1, and against it, with a fill
// free of what is not printed.
func (s Shot) toleratedByInk(fill float64, along layout.Point) *float64 {
	k := s.ink()
	// Square to the movement the view grows in second order only: there a hundredth of the radius less will
	// do, as on a board.
	kept := func(sin, cos float64) float64 {
		if math.Abs(cos*along.XMM+sin*along.YMM) < squareWithin {
			return max(0, fill-hardlyFill)
		}
		return fill
	}
	return s.furthestFree(along, func(mm float64) bool {
		return s.looksRound(layout.Point{XMM: mm * along.XMM, YMM: mm * along.YMM}, kept, k.has) &&
			s.looksRound(layout.Point{XMM: -mm * along.XMM, YMM: -mm * along.YMM}, kept, k.has)
	})
}

// askedOfInk is what becomes of the plan's travel. In which direction it is worst depends on the outline, so
// all round are tried.
func (s Shot) askedOfInk(held float64) *AskedTravel {
	a := &AskedTravel{TravelMM: s.Drop.TravelMM, Fill: s.freeInk()}
	a.Holds = a.Fill >= held-heldHair
	needs, ok := s.boardFor(held)
	if !ok {
		return a
	}
	a.NeedsBoard = &needs
	if a.Holds {
		return a
	}
	s.Drop.DistanceMM = nearest(s.Drop.DistanceMM, lengthStepMM) // which a remedy names it by
	if needs, ok := s.boardFor(held); ok {
		a.Print = s.printInking(needs, held)
	}
	a.Surround = s.surroundHolding(held)
	return a
}

// printInking is the larger print, if its outline holds a fill too: nil if not.
func (s Shot) printInking(board layout.Size, held float64) *Remedy {
	r := s.printCovering(board)
	if r == nil {
		return nil
	}
	setup := s.AsSetup()
	setup.Fill, setup.Print = 0, r.Print
	if s.Backdrop.FillOnly {
		setup.Background = s.Backdrop.Surround
	}
	if q, err := setup.Sized(); err != nil || Of(q).freeInk() < held-heldHair {
		return nil
	}
	return r
}

// freeInk is the largest fill that sees nothing but what is printed over the plan's travel.
func (s Shot) freeInk() float64 {
	k, least := s.ink(), 1.0
	for _, to := range s.allRound() {
		free := func(fill float64) bool {
			return s.looksRound(to, func(_, _ float64) float64 { return fill }, k.has)
		}
		if !free(least) {
			least = min(least, largestFree(free))
		}
	}
	return least
}

// allRound is where the drop is after its travel in any direction; of a rod across it, to either side.
func (s Shot) allRound() (all []layout.Point) {
	first, step := 0, 1
	switch s.Drop.Body {
	case flip.UprightRod:
		step = travelDirections / 2
	case flip.LevelRod:
		first, step = travelDirections/4, travelDirections/2
	}
	for i := first; i < travelDirections; i += step {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / travelDirections)
		all = append(all, layout.Point{XMM: s.Drop.TravelMM * cos, YMM: s.Drop.TravelMM * sin})
	}
	return all
}
