package shot

import (
	"math"
	"strconv"
	"strings"
)

// fullStop is the f-number that a lens's mark stands for where it is a full stop, a power of the square root
// of 2: f/11 is 11.31 and f/22 is 22.63. ok is false for stops between, which are what they say.
func fullStop(fNumber float64) (exact float64, ok bool) {
	const marks = 1.0 / 12 // of a stop, by how much marks are rounded (common practice)
	exact = math.Exp2(math.Round(2*math.Log2(fNumber)) / 2)
	if math.Abs(2*math.Log2(fNumber/exact)) <= marks {
		return exact, true
	}
	return fNumber, false
}

// StopMark is a stop as a lens is marked: f/11 for the full stop 11.31, others to a tenth.
func StopMark(fNumber float64) string {
	const slip = 1e-9 // a full stop itself, but for rounding, not a mark of one
	if exact, full := fullStop(fNumber); full && math.Abs(exact/fNumber-1) < slip {
		if exact < 10 {
			fNumber = math.Floor(exact*10) / 10
		} else {
			fNumber = math.Floor(exact)
		}
	}
	return "f/" + strings.TrimSuffix(strconv.FormatFloat(fNumber, 'f', 1, 64), ".0")
}

// ExposureStops is how many stops lighter a frame gets when the lens goes from one f-number to another: light
// goes with the pupil's area, and a stop is twice the light. Below 0 it gets darker. Marks of full stops
// count as the full stops that they stand for.
func ExposureStops(from, to float64) float64 {
	exactFrom, _ := fullStop(from)
	exactTo, _ := fullStop(to)
	return 2 * math.Log2(exactFrom/exactTo)
}

// Mains is how lamps on a mains supply pulse for the camera.
type Mains struct {
	Hz             float64 `json:"hz"`               // of the supply
	FramesPerPulse float64 `json:"frames_per_pulse"` // below 1, a frame lasts for several pulses
}

// mains works out both of the world's supplies. A lamp on alternating current pulses at twice its frequency:
// once for either half wave.
func mains(frameRate float64) []Mains {
	var out []Mains
	for _, hz := range []float64{50, 60} {
		out = append(out, Mains{hz, frameRate / (2 * hz)})
	}
	return out
}
