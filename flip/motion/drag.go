package motion

import "math"

// Air at 20 Celsius and 1013.25 hPa, dry: density by CIPM-2007, viscosity by Lemmon and Jacobsen (2004); both from
// memory, and held against the ideal gas and Sutherland's formula in the test.
const (
	airKgPerM3      = 1.204
	airViscosityPaS = 1.82e-5
)

// slowedShare is by how much of its speed air may slow a drop before that counts.
const slowedShare = 0.02

// airBrakes is how much air slows a ball at a speed, in m/s²: c/2 rho v² over its disc, by its mass. The drag
// coefficient c is Schiller and Naumann's, 24/Re (1 + 0.15 Re^0.687), up to a Reynolds number of 1000, and 0.44 from
// there on (Zeitschrift des Vereines Deutscher Ingenieure 77, 318 (1933); Clift, Grace and Weber, Bubbles, Drops and
// Particles, table 5.1; from memory).
//
// A large drop near its last speed is pressed flat, and braked more than a ball.
func (d Drop) airBrakes(speedMPerS float64) float64 {
	diameterM := d.DiameterMM * mPerMM
	const mostReynolds = 1000
	reynolds := airKgPerM3 * speedMPerS * diameterM / airViscosityPaS
	overDisc := 0.44 * speedMPerS * speedMPerS
	if reynolds < mostReynolds {
		overDisc = 24 * airViscosityPaS / (airKgPerM3 * diameterM) * speedMPerS * (1 + 0.15*math.Pow(reynolds, 0.687))
	}
	return 0.75 * airKgPerM3 / (d.Liquid.DensityKgPerM3 * diameterM) * overDisc
}

// weighs is the acceleration that a drop's weight gives it in air, which bears a little of it, in m/s².
func (d Drop) weighs() float64 {
	return GravityMMPerS2 * mPerMM * (1 - airKgPerM3/d.Liquid.DensityKgPerM3)
}

// DragFreeMM is the height fallen up to which air slows the drop by less than two percent, so that SpeedMMPerS holds.
// ok is false where the liquid is not known.
func (d Drop) DragFreeMM() (fallMM float64, ok bool) {
	if !d.Liquid.Known() || !(d.DiameterMM > 0) {
		return 0, false
	}
	// The square of the speed changes with the height by 2 (weight - brake). The steps grow with the height; within each
	// the slope is taken in its middle (Runge's second order).
	const (
		first = 1e-4 // of the diameter; there no air counts
		grow  = 1e-2
	)
	slope := func(squared float64) float64 { return 2 * (d.weighs() - d.airBrakes(math.Sqrt(squared))) }
	heightM := first * d.DiameterMM * mPerMM
	squared := 2 * d.weighs() * heightM
	for slowed := 0.0; ; {
		stepM := grow * heightM
		squared += stepM * slope(squared+stepM/2*slope(squared))
		heightM += stepM
		before := slowed
		slowed = 1 - math.Sqrt(squared)/(SpeedMMPerS(heightM/mPerMM)*mPerMM)
		if slowed >= slowedShare {
			return (heightM - stepM*(slowed-slowedShare)/(slowed-before)) / mPerMM, true
		}
	}
}
