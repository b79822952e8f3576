package motion

import (
	"errors"
	"fmt"
	"math"

	"dropsheet/flip"
)

var errUnknownLiquid = errors.New("what is known of the material is not enough to tell its drops\n" +
	"hint: take a liquid that " +
	"has a name, or measure the drops and give their diameter")

// fallen is Harkins and Brown's share of the weight that the rim of a nozzle could hold which falls as the drop: the
// rest stays behind. It goes by the nozzle's radius over the cube root of the drop's volume, from firstHeld on in
// steps of heldStep: Harkins and Brown, Journal of the American Chemical Society 41, 499 (1919), as the International
// Critical Tables have it (from memory; the test compares a fit to it).
var fallen = [...]float64{
	0.7256, 0.7011, 0.6828, 0.6669, 0.6515, 0.6362, 0.6250, 0.6171, 0.6093, 0.6032,
	0.6000, 0.5992, 0.5998, 0.6034, 0.6098, 0.6179, 0.6280, 0.6407, 0.6535,
}

const (
	firstHeld = 0.3
	heldStep  = 0.05
	lastHeld  = 1.2
)

// fallenShare is the table drawn out by straight lines.
func fallenShare(held float64) float64 {
	at := (held - firstHeld) / heldStep
	i := min(max(int(at), 0), len(fallen)-2)
	return fallen[i] + (at-float64(i))*(fallen[i+1]-fallen[i])
}

// nozzleRadiusMM is the nozzle whose drops have its radius at that share of the cube root of their volume: by Tate's
// law with that share of it, rho V g = 2 pi r sigma psi, V being (r/held)³.
func nozzleRadiusMM(held float64, l flip.Liquid) float64 {
	const gravityMPerS2 = GravityMMPerS2 * mPerMM
	r2 := 2 * math.Pi * l.TensionNPerM * fallenShare(held) * held * held * held / (l.DensityKgPerM3 * gravityMPerS2)
	return math.Sqrt(r2) / mPerMM
}

// NozzleDropMM is the diameter of the drops that fall off a nozzle by their own weight, slowly, one by one. The
// nozzle is told by its outer diameter, since the liquid wets its rim. Drops that come quickly are larger.
//
// A nozzle so fine that its radius is less than 0.3 of the cube root of the volume lies before the table's first
// line and is refused, as is one past its last.
func NozzleDropMM(nozzleMM float64, l flip.Liquid) (dropMM float64, err error) {
	if !(nozzleMM > 0) {
		return 0, fmt.Errorf("a nozzle of %gmm can't be\nhint: give an outer diameter above 0mm", nozzleMM)
	}
	if !l.Known() {
		return 0, errUnknownLiquid
	}
	fromMM, toMM := 2*nozzleRadiusMM(firstHeld, l), 2*nozzleRadiusMM(lastHeld, l)
	if !(nozzleMM >= fromMM && nozzleMM <= toMM) {
		return 0, fmt.Errorf("what falls off a nozzle of %gmm is not known: of this liquid it is for outer diameters of "+
			"%.2f to %.1fmm\nhint: take such a nozzle, or measure the drops and give their diameter", nozzleMM, fromMM, toMM)
	}
	low, high := firstHeld, lastHeld // the wider the nozzle, the more of the drop's width it is
	for {
		held := (low + high) / 2
		if held <= low || held >= high {
			volumeMM3 := math.Pow(nozzleMM/2/held, 3)
			return math.Cbrt(6 * volumeMM3 / math.Pi), nil
		}
		if 2*nozzleRadiusMM(held, l) < nozzleMM {
			low = held
		} else {
			high = held
		}
	}
}
