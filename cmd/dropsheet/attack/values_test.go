package attack

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
)

// atEnds is once in how many draws a word is one that few would write: at the end of what there is, or beyond it.
const atEnds = 30

// drawn draws a word for a flag.
type drawn func(r *rand.Rand) string

// one draws one of some words.
func one(words ...string) drawn {
	return func(r *rand.Rand) string { return words[r.IntN(len(words))] }
}

// between draws a number, each power of ten as often as another.
func between(r *rand.Rand, low, high float64) float64 {
	return low * math.Pow(high/low, r.Float64())
}

// short writes a number in some digits, seldom in many.
func short(r *rand.Rand, v float64) string {
	if r.IntN(8) == 0 {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'g', 1+r.IntN(4), 64)
}

// number draws a plain number, now and then one at the end of what a double holds, or none.
func number(low, high float64) drawn {
	return func(r *rand.Rand) string {
		if r.IntN(atEnds) == 0 {
			return one("0", "-1", "1e308", "5e-324", "NaN", "Inf", "1e999", "0x1p-3", "1_0", "")(r)
		}
		return short(r, between(r, low, high))
	}
}

// whole draws a whole number.
func whole(low, high int) drawn {
	return func(r *rand.Rand) string {
		if r.IntN(atEnds) == 0 {
			return one("0", "-1", "9223372036854775807", "1e3", "2.5", "")(r)
		}
		return strconv.Itoa(int(between(r, float64(low), float64(high)+0.999)))
	}
}

// perMM are the units that lengths are written in.
var perMM = map[string]float64{"mm": 1, "cm": 0.1, "m": 1e-3, "um": 1e3, "in": 1 / 25.4}

// length draws a length of that many millimetres, in any unit.
func length(lowMM, highMM float64) drawn {
	return func(r *rand.Rand) string {
		if r.IntN(atEnds) == 0 {
			return one("0mm", "-3mm", "5e-324mm", "1e-320m", "1e308m", "NaNmm", "Infmm", "5", "mm", "1/0in", "5 mm", "1e3km")(r)
		}
		units := []string{"mm", "mm", "cm", "m", "um", "in"}
		unit := units[r.IntN(len(units))]
		return short(r, between(r, lowMM, highMM)*perMM[unit]) + unit
	}
}

// signed draws a length either way, or none.
func signed(lowMM, highMM float64) drawn {
	return func(r *rand.Rand) string {
		switch r.IntN(5) {
		case 0:
			return "0mm"
		case 1, 2:
			return "-" + length(lowMM, highMM)(r)
		}
		return length(lowMM, highMM)(r)
	}
}

// joined draws some words and joins them.
func joined(by string, of ...drawn) drawn {
	return func(r *rand.Rand) string {
		text := of[0](r)
		for _, d := range of[1:] {
			text += by + d(r)
		}
		return text
	}
}

// size draws a width and a height, mostly in one unit.
func size(lowMM, highMM float64) drawn {
	return func(r *rand.Rand) string {
		if r.IntN(6) == 0 {
			return joined("x", length(lowMM, highMM), length(lowMM, highMM))(r)
		}
		return short(r, between(r, lowMM, highMM)) + "x" + short(r, between(r, lowMM, highMM)) + "mm"
	}
}

// share draws a number from 0 to 1, its ends included.
func share(r *rand.Rand) string {
	switch r.IntN(12) {
	case 0:
		return "0"
	case 1:
		return "1"
	case 2:
		return one("0.001", "0.999", "1e-9", "1.0000001", "-0.1")(r)
	}
	return fmt.Sprintf("%.3g", r.Float64())
}

// either draws from one of some ways.
func either(of ...drawn) drawn {
	return func(r *rand.Rand) string { return of[r.IntN(len(of))](r) }
}
