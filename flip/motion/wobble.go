package motion

import (
	"math"

	"dropsheet/flip"
)

const mPerMM = 1e-3

// Drop is a drop that nothing but air touches.
type Drop struct {
	DiameterMM float64 // above 0; of a drop out of round, that of the ball of its volume
	Liquid     flip.Liquid
}

func (d Drop) radiusM() float64 { return d.DiameterMM / 2 * mPerMM }

// swingRadPerS is the angular frequency at which a drop swings between flat and long, its second mode: the root of
// 8 sigma / (rho R³) (Rayleigh, On the capillary phenomena of jets, Proceedings of the Royal Society 29, 71 (1879);
// Lamb, Hydrodynamics, article 275). For small swings; of a tenth of the radius they take a percent or two longer
// (from memory).
func (d Drop) swingRadPerS() float64 {
	return math.Sqrt(8 * d.Liquid.TensionNPerM / (d.Liquid.DensityKgPerM3 * math.Pow(d.radiusM(), 3)))
}

// kinematicM2PerS is the liquid's viscosity over its density.
func (d Drop) kinematicM2PerS() float64 { return d.Liquid.ViscosityPaS / d.Liquid.DensityKgPerM3 }

// leastToSwing is the least of omega R²/nu at which a drop swings at all; below, it creeps back to round
// (Chandrasekhar, Hydrodynamic and Hydromagnetic Stability, 98; from memory).
const leastToSwing = 3.69

// swings tells whether the drop does so, as far as is known.
func (d Drop) swings() bool {
	r := d.radiusM()
	return d.Liquid.Known() && d.swingRadPerS()*r*r >= leastToSwing*d.kinematicM2PerS()
}

// SwingHz is how often a second the drop swings from flat over long to flat. Twice in a swing it is round. ok is
// false where the liquid is too viscous for the drop to swing, or is not known.
func (d Drop) SwingHz() (hz float64, ok bool) {
	if !d.swings() {
		return 0, false
	}
	return d.swingRadPerS() / (2 * math.Pi), true
}

// RingS is how long it takes until the swings are down to 1/e of what they were: R²/(5 nu), of R² / ((l-1)(2l+1) nu)
// for the second mode, l = 2 (Lamb, Hydrodynamics, article 355). What flows about in the drop as it tears off makes
// it ring shorter. ok as for SwingHz.
func (d Drop) RingS() (s float64, ok bool) {
	if !d.swings() {
		return 0, false
	}
	r := d.radiusM()
	return r * r / (5 * d.kinematicM2PerS()), true
}
