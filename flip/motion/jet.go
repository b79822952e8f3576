package motion

import (
	"fmt"
	"math"

	"dropsheet/flip"
)

// Train is the drops that a jet falls apart into, one behind the other.
type Train struct {
	DropMM    float64 // a drop's diameter
	SpacingMM float64 // from one drop's centre to the next, where the jet falls apart
}

const (
	// spacingPerJet is the wavelength at which a jet pinches itself off the fastest, over its diameter (Rayleigh, On
	// the instability of jets, Proceedings of the London Mathematical Society 10, 4 (1878): 4.508).
	spacingPerJet = 4.508
	// mostStretched is how far viscosity may draw that out before Rayleigh's figure is no use.
	mostStretched = 1.1
)

// JetTrain is what a thin jet of that diameter falls apart into by itself. A drop is all that is in one wavelength of
// the jet: a ball of the cube root of 1.5 x 4.508, or 1.89, diameters. A jet that is shaken, or leaves a rough nozzle,
// gives other drops.
//
// Viscosity draws the wavelength out by the root of 1 + 3 mu / root(rho sigma d) (Weber, Zeitschrift für angewandte
// Mathematik und Mechanik 11, 136 (1931); from memory). Beyond a tenth that is refused.
func JetTrain(jetMM float64, l flip.Liquid) (Train, error) {
	if !(jetMM > 0) {
		return Train{}, fmt.Errorf("a jet of %gmm can't be\nhint: give a diameter above 0mm", jetMM)
	}
	if !l.Known() {
		return Train{}, errUnknownLiquid
	}
	stretched := math.Sqrt(1 + 3*l.ViscosityPaS/math.Sqrt(l.DensityKgPerM3*l.TensionNPerM*jetMM*mPerMM))
	if stretched > mostStretched {
		return Train{}, fmt.Errorf("a jet of %gmm of a liquid so viscous falls apart late, into larger drops than is known\n"+
			"hint: measure the drops and give their diameter", jetMM)
	}
	return Train{jetMM * math.Cbrt(1.5*spacingPerJet), jetMM * spacingPerJet}, nil
}
