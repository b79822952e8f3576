package layout

import (
	"fmt"
	"math"

	"dropsheet/flip"
)

// agreement is how closely distance, print and fill must agree when all three are given: half a per cent of the print,
// which no ruler on the set would find.
const agreement = 0.005

// proportionsAgree is how closely a print's proportions must match the picture's: the stretch of one per cent that
// would be left can't be seen (common practice, no source).
const proportionsAgree = 0.01

// reachMM is the reach that a print serves. A rod has a reach across its axis only, so there the print's
// half-side across it counts, whatever the fit.
func (s Setup) reachMM(print Size) float64 {
	switch {
	case s.Drop.Body == flip.UprightRod:
		return print.WidthMM / 2
	case s.Drop.Body == flip.LevelRod:
		return print.HeightMM / 2
	case s.Fit == Inside:
		return math.Hypot(print.WidthMM, print.HeightMM) / 2
	default:
		return min(print.WidthMM, print.HeightMM) / 2
	}
}

// printFor is the print for which the drop's sight at a fill is what the fit asks. ok is false when it sees
// no backdrop there.
func (s Setup) printFor(sight flip.Sight, fill float64) (print Size, ok bool) {
	if !s.plain() {
		b, ok := s.bent(sight, fill)
		if !ok {
			return Size{}, false
		}
		return b.print(s.Fit)
	}
	on, ok := seesAt(sight, fill, s.Fit)
	heightMM := Framing{}.frame(s.Proportions).scale(s.Fit, on)
	return Size{heightMM * s.Proportions, heightMM}, ok
}

// solve works out distance, print and fill from those that are given.
func (s Setup) solve(lies []paperLie) (sight flip.Sight, print Size, fill float64, err error) {
	sight = flip.Sight{Drop: s.Drop, CameraMM: s.CameraMM, DistanceMM: s.DistanceMM}
	print, fill = s.Print, s.Fill
	// What closes in on the largest print is the board and all that is printed on it, unless that is the picture alone.
	free := print == Size{} && s.any() && (s.DistanceMM == 0 || fill == 0)
	if !s.plain() || s.Drop.Oblate() || free && (s.fills() != "" || !s.sheetsAlone() || s.Copies > 1) {
		return s.search(sight, lies)
	}
	printGiven := print != Size{}
	if printGiven {
		if print.HeightMM == 0 { // its width alone was asked for
			print.HeightMM = print.WidthMM / s.Proportions
		}
		if err := s.checkProportions(); err != nil {
			return sight, print, fill, err
		}
	} else if free {
		print, printGiven = s.largestPrint(lies), true
	}
	if fill == 0 && !(printGiven && s.DistanceMM != 0) {
		fill = DefaultFill
	}
	if !printGiven && s.DistanceMM == 0 {
		sight.DistanceMM = DefaultDistanceMM
	}

	switch {
	case !printGiven:
		var ok bool
		if print, ok = s.printFor(sight, fill); !ok {
			return sight, print, fill, s.seesNothing(fill)
		}
	case sight.DistanceMM == 0:
		reachMM := s.reachMM(print)
		distanceMM, ok := sight.DistanceAtMM(fill, reachMM)
		nearestMM, _ := sight.NearestInvertingMM()
		if !ok || distanceMM <= max(nearestMM, s.Drop.RadiusMM()) {
			return sight, print, fill, fmt.Errorf("no distance makes a print of %.0fx%.0fmm fill %g of the drop's radius\n"+
				"hint: take a larger print or another fill", print.WidthMM, print.HeightMM, fill)
		}
		if distanceMM > MaxLengthMM {
			return sight, print, fill, fmt.Errorf("a print of %.0fx%.0fmm would have to stand %.0fkm off to fill %g of the "+
				"drop's radius\nhint: take a smaller print or a larger fill", print.WidthMM, print.HeightMM, distanceMM/1e6, fill)
		}
		sight.DistanceMM = distanceMM
	case fill == 0:
		var ok bool
		if fill, ok = sight.FillAt(s.reachMM(print)); !ok || fill >= 1 {
			rimMM, _ := sight.ReachMM(1)
			return sight, print, fill, fmt.Errorf("at %gmm the drop sees no further than %.0fmm from the axis, even at its "+
				"rim, and a print of %.0fx%.0fmm reaches %.0fmm\nhint: take a smaller print or a longer distance",
				sight.DistanceMM, rimMM, print.WidthMM, print.HeightMM, s.reachMM(print))
		}
	default:
		if err := s.checkAgreement(sight, print, fill); err != nil {
			return sight, print, fill, err
		}
	}
	return sight, print, fill, nil
}

// seesNothing is the error of a fill at which no ray reaches the backdrop.
func (s Setup) seesNothing(fill float64) error {
	return fmt.Errorf("at a fill of %g a body of index %g looks backwards and sees no backdrop\nhint: take a smaller fill",
		fill, s.Drop.Index)
}

// largestPrint is the largest print that MaxSheets sheets hold.
func (s Setup) largestPrint(lies []paperLie) Size {
	heightMM := 0.0
	for _, l := range lies {
		heightMM = max(heightMM, l.largest(s.Proportions, s.MaxSheets))
	}
	return Size{heightMM * s.Proportions, heightMM}
}

// checkProportions refuses a print that would stretch the picture.
func (s Setup) checkProportions() error {
	w, h := s.Print.WidthMM, s.Print.HeightMM
	if h == 0 || math.Abs(w/h/s.Proportions-1) <= proportionsAgree {
		return nil
	}
	return fmt.Errorf("a print of %gx%gmm is %.3g times as wide as high and the picture is %.3g\n"+
		"hint: print it %.0fx%.0fmm "+
		"or %.0fx%.0fmm, or crop the picture",
		w, h, w/h, s.Proportions, w, w/s.Proportions, h*s.Proportions, h)
}

// checkAgreement holds three given figures against each other, and shows what each would have to be.
func (s Setup) checkAgreement(sight flip.Sight, print Size, fill float64) error {
	p, ok := s.printFor(sight, fill)
	if ok && math.Abs(print.WidthMM/p.WidthMM-1) <= agreement {
		return nil
	}
	needs := ""
	if ok {
		needs += fmt.Sprintf("\nhint: that distance and fill need a print of %.0fx%.0fmm", p.WidthMM, p.HeightMM)
	}
	if distanceMM, ok := sight.DistanceAtMM(fill, s.reachMM(print)); ok {
		needs += fmt.Sprintf("\nhint: that print and fill need a distance of %.1fmm", distanceMM)
	}
	if f, ok := sight.FillAt(s.reachMM(print)); ok {
		needs += fmt.Sprintf("\nhint: that distance and print give a fill of %.3f", f)
	}
	return fmt.Errorf("a distance of %gmm, a print of %gx%gmm and a fill of %g disagree\n"+
		"hint: give any two of the three%s",
		sight.DistanceMM, print.WidthMM, print.HeightMM, fill, needs)
}
