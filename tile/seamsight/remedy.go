package seamsight

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/colour"
	"dropsheet/tile/texture"
)

// Remedy is what would hide a seam from one path, each by itself. None of it makes the same seam plainer on
// the other path: hidden there before, it is hidden after, and faint at most if it was faint.
type Remedy struct {
	// sRGB level, 0 to 255, of the grey that the cut edge should have: as light as the print there
	TouchUpLevel int `json:"touch_up_level"`
	// a bare edge no wider than that is hidden; 0 when under narrowestMM
	SeamMM float64 `json:"seam_mm,omitempty"`
	// the next full stop, opening, at which it is hidden; 0 when none does it
	OpenTo  float64 `json:"open_to_f_number,omitempty"`
	CloseTo float64 `json:"close_to_f_number,omitempty"` // likewise closing
	// FurtherTimes is how many times as far the board would have to hang, and as large the print be made, for
	// the drop to show the seam so small that it is hidden; 0 beside the drop, and when it would be over
	// furthestTimes.
	FurtherTimes float64 `json:"further_times,omitempty"`
}

// How far remedies go.
const (
	narrowestMM   = 0.05 // no one pastes more closely (common practice, no source)
	furthestTimes = 2.5
	firstStop     = 4 // f/4 to f/64, as powers of the square root of two
	lastStop      = 12
)

// Remedies works out what would hide what each of them shows: the seam, on that path, all along.
func (m *Model) Remedies(shown []Ranked) []Remedy {
	var stops []*Model
	for k := firstStop; k <= lastStop; k++ {
		stops = append(stops, m.AtStop(math.Pow(math.Sqrt2, float64(k))))
	}
	out := make([]Remedy, len(shown))
	texture.Rows(len(out), func(i int) { out[i] = m.remedy(shown[i], stops) })
	return out
}

// remedy works one of them out. stops are the model at full stops, opened first.
func (m *Model) remedy(r Ranked, stops []*Model) Remedy {
	at := r.Seam.Place(r.Sample.MiddleMM())
	light := r.Sighting().Picture
	out := Remedy{TouchUpLevel: int(math.Round(255 * colour.LightToSRGB(min(light, 1))))}

	// Only what is seen now can be seen of a narrower edge.
	var seen []layout.Point
	for _, sample := range r.Seam.Samples {
		if sample.Sightings[r.Path].Verdict > Hidden {
			seen = append(seen, r.Seam.Place(sample.MiddleMM()))
		}
	}
	all := make([]layout.Point, len(r.Seam.Samples))
	other, otherNow := Through-r.Path, Hidden
	for i, sample := range r.Seam.Samples {
		all[i] = r.Seam.Place(sample.MiddleMM())
		otherNow = max(otherNow, sample.Sightings[other].Verdict)
	}
	spares := func(there *Model) bool { return there.atMost(otherNow, all, r.Seam.Axis, other) }
	narrow := func(seamMM float64) bool {
		there := m.WithSeams(seamMM)
		return there.atMost(Hidden, seen, r.Seam.Axis, r.Path) && spares(there)
	}
	if narrow(narrowestMM) {
		low, high := narrowestMM, m.seamMM
		for range 12 {
			if middle := (low + high) / 2; narrow(middle) {
				low = middle
			} else {
				high = middle
			}
		}
		out.SeamMM = low
		// So far behind the drop that the focal length is next to nothing, the drop shows a board k times as
		// far and as large just the same, but for an edge that stays as wide as it was: one k times narrower.
		if times := m.seamMM / low; r.Path == Through && times <= furthestTimes && spares(m.further(times)) {
			out.FurtherTimes = times
		}
	}
	// A stop that hides the worst place is looked at all along the seam.
	works := func(there *Model) bool {
		return there.atMost(Hidden, []layout.Point{at}, r.Seam.Axis, r.Path) &&
			there.atMost(Hidden, all, r.Seam.Axis, r.Path) && spares(there)
	}
	for _, there := range stops {
		switch n := there.plan.Camera.FNumber; {
		case n < m.plan.Camera.FNumber*almost && works(there):
			out.OpenTo = n // the last that works is the nearest
		case n > m.plan.Camera.FNumber/almost && out.CloseTo == 0 && works(there):
			out.CloseTo = n
		}
	}
	return out
}

// almost keeps a stop's mark, which is rounded (f/22 for 22.6), from passing for the next one.
const almost = 0.9

// atMost tells whether a path shows none of the places of a seam that runs along an axis more plainly than a
// verdict says, Hidden or above.
func (m *Model) atMost(v Verdict, places []layout.Point, axis string, path Path) bool {
	if v == Shows {
		return true // nothing is plainer
	}
	for _, p := range places {
		if l, ok := m.look(p.XMM, p.YMM, axis, path); ok && m.sighting(l, p.XMM, p.YMM).Verdict > v {
			return false
		}
	}
	return true
}

// further is the model with the board that many times as far and as large, lit as it was, in the places of
// the board as it is. Only the path beside the drop is changed: what the drop shows is taken to stay, but for
// seams that come out narrower.
func (m *Model) further(times float64) *Model {
	out := m.WithSeams(m.seamMM / times)
	there := m.plan
	there.Drop.DistanceMM *= times
	out.direct = newDirect(there, m.direct.frame)
	out.direct.scale *= times
	return out
}
