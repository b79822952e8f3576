package seamsight

import "math"

// How the eye is reckoned with, and the frame that it looks at.
const (
	// thinLine is the Weber contrast at which a line on even ground is just seen: about 2 %, as for small discs of
	// some minutes of arc in good light (Blackwell, Contrast thresholds of the human eye, JOSA 36, 1946; recalled
	// from memory). Discs stand for lines here, for want of a figure: the eye adds a line up along its length, and
	// so if anything sees it at less. A frame shown pixel for pixel has pixels of about a minute.
	thinLine = 0.02
	// maskingPower says how fast the threshold rises with the contrast of detail of the same size: the 0.62 of
	// Legge and Foley, Contrast masking in human vision, JOSA 70, 1980 (recalled from memory).
	maskingPower = 0.62
	// flare is the light that a screen sends back in its blacks, as a share of its white. It drowns seams in the
	// dark. 1 % is sRGB's viewing flare for one who judges pictures, in a room of 64 lx; its usual office has 200
	// lx and 5 %, where seams show less. Both stand in tables drawn from IEC 61966-2-1; the standard itself was
	// not at hand.
	flare = 0.01
	// fullWell is how many electrons a pixel counts at white: between the 10,000 of a high-speed camera and
	// the 50,000 of a large still camera (common practice, no source). Counting n of them leaves a noise of
	// sqrt(n).
	fullWell = 20_000
	// showsFrom is how many times the threshold a contrast must be to be plain: three times just seen can't be missed
	// (common practice, no source).
	showsFrom = 3
)

// threshold is the Weber contrast that a line must pass to be seen in light (1 is white) whose detail, at the
// line's own scale, has that RMS contrast. The line shows visiblePx wide. Masking and noise are added in
// quadrature, for they are independent (our model):
//
//	threshold² = thinLine² (1 + (detail/thinLine)²)^maskingPower + noise²
//
// The noise is the photons' own, averaged over a square as wide as the line.
func threshold(light, detail, visiblePx float64) float64 {
	over := detail / thinLine
	masked := thinLine * thinLine * math.Pow(1+over*over, maskingPower)
	noise := math.Sqrt(light/fullWell) / ((light + flare) * max(1, visiblePx))
	return math.Sqrt(masked + noise*noise)
}

// Verdict says whether a seam is seen.
type Verdict int

// The verdicts, from what needs no care to what needs most.
const (
	OutOfSight Verdict = iota // outside the frame, behind the drop, or where the drop does not look
	Hidden                    // under the threshold
	Faint                     // seen by those who look for it
	Shows                     // plain: three times the threshold or more
)

var verdictNames = [...]string{OutOfSight: "out of sight", Hidden: "hidden", Faint: "faint", Shows: "shows"}

// String is the verdict in a word or three.
func (v Verdict) String() string { return verdictNames[v] }

// MarshalText writes the verdict's words.
func (v Verdict) MarshalText() ([]byte, error) { return []byte(v.String()), nil }

// verdict is that of a seam whose contrast is that many times the threshold.
func verdict(overThreshold float64) Verdict {
	switch {
	case overThreshold >= showsFrom:
		return Shows
	case overThreshold >= 1:
		return Faint
	default:
		return Hidden
	}
}
