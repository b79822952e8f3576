package motion

import "math"

// GravityMMPerS2 is the standard acceleration of free fall, exact: 3rd General Conference on Weights and Measures
// (1901), resolution 2. On Earth it differs from place to place by up to 0.3 % either way (from memory), the speed
// by half that.
const GravityMMPerS2 = 9806.65

// SpeedMMPerS is how fast a drop falls that was let go that far above, from v² = 2gh (Galileo). DragFreeMM says how
// far that holds. Of a height below 0 it is 0.
func SpeedMMPerS(fallMM float64) float64 { return math.Sqrt(2 * GravityMMPerS2 * max(0, fallMM)) }

// FallMM is the height whose fall gives that speed, and to which a drop that rises so fast yet climbs: v²/2g.
func FallMM(speedMMPerS float64) float64 { return speedMMPerS * speedMMPerS / (2 * GravityMMPerS2) }

// PlaceMM is how far below the middle a drop's centre is so long after it passed it, or above and before, below 0:
// v t + g t²/2 (Galileo).
func PlaceMM(speedMMPerS, timeS float64) float64 {
	return (speedMMPerS + GravityMMPerS2*timeS/2) * timeS
}

// CoversMM is how long a stretch a drop's centre runs over in a time of which half lies before it passes the middle
// and half after: v t, since falling faster after makes up for falling slower before. A drop so slow that it comes
// to rest and turns round meanwhile runs over what it covers on the longer leg, (v + gt/2)² / 2g.
//
// In the time of an exposure this is its smear.
func CoversMM(speedMMPerS, timeS float64) float64 {
	v, gain := math.Abs(speedMMPerS), GravityMMPerS2*timeS/2
	if v >= gain {
		return v * timeS
	}
	return (v + gain) * (v + gain) / (2 * GravityMMPerS2)
}

// TimeS is CoversMM undone: the time in which a drop's centre runs over a stretch.
func TimeS(speedMMPerS, stretchMM float64) float64 {
	v := math.Abs(speedMMPerS)
	if 2*v*v >= GravityMMPerS2*stretchMM {
		return stretchMM / v
	}
	return 2 * (math.Sqrt(2*GravityMMPerS2*stretchMM) - v) / GravityMMPerS2
}

// InViewS is how long a drop's centre stays within a frame of that height whose middle it passes at that speed, see
// ViewS.
func InViewS(speedMMPerS, frameHeightMM float64) float64 {
	fromS, toS, _ := ViewS(speedMMPerS, frameHeightMM/2, frameHeightMM/2)
	return toS - fromS
}

// ViewS is from when until when a drop's centre lies between a height above the middle and one below, of which either
// may be below 0: times from when it passes the middle at that speed. v t + g t²/2 = y is solved by
// t = 2y / (v + root(v² + 2gy)).
//
// A drop too slow to come from above was let go in view, at rest. One that rises too slowly to leave there falls back,
// and leaves below. ok is false where it never comes by.
func ViewS(speedMMPerS, aboveMM, belowMM float64) (fromS, toS float64, ok bool) {
	v := math.Abs(speedMMPerS)
	restsS := v / GravityMMPerS2                      // before the middle where it falls, after it where it rises
	at := func(yMM float64) (s float64, there bool) { // of a drop that falls through
		square := v*v + 2*GravityMMPerS2*yMM
		return 2 * yMM / (v + math.Sqrt(max(0, square))), square >= 0
	}
	upperS, fromAbove := at(-aboveMM)
	lowerS, toBelow := at(belowMM)
	if !toBelow || aboveMM < -belowMM {
		return 0, 0, false
	}
	if !fromAbove {
		upperS = -restsS
	}
	switch {
	case speedMMPerS > 0:
		return upperS, lowerS, true
	case fromAbove: // a rise is a fall backward in time
		return -lowerS, -upperS, true
	}
	return -lowerS, 2*restsS + lowerS, true
}
