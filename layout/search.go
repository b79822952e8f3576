package layout

import (
	"fmt"
	"math"

	"dropsheet/flip"
)

// search works out distance, print and fill from those that are given where no closed form does: of a bent,
// turned or cut picture, and of a drop out of round. The print grows with distance and fill, so the one that
// is wanted is found by halving.
func (s Setup) search(sight flip.Sight, lies []paperLie) (found flip.Sight, print Size, fill float64, err error) {
	fill = s.Fill
	free := s.Print == (Size{}) && !s.any()
	if s.DistanceMM == 0 && free {
		sight.DistanceMM = DefaultDistanceMM
	}
	if fill == 0 && (free || s.DistanceMM == 0) {
		fill = s.defaultFill(sight)
	}
	switch {
	case sight.DistanceMM != 0 && fill != 0:
		print, ok := s.printFor(sight, fill)
		if !ok {
			return sight, print, fill, s.seesNothing(fill)
		}
		return sight, print, fill, s.checkAgrees(print)
	case sight.DistanceMM == 0:
		sight.DistanceMM, err = s.grown(s.turnedFrom(sight, fill), MaxLengthMM, lies,
			func(mm float64) (flip.Sight, float64) {
				at := sight
				at.DistanceMM = mm
				return at, fill
			})
	default:
		fill, err = s.grown(0.01, LargestFill, lies, func(fill float64) (flip.Sight, float64) { return sight, fill })
	}
	if err != nil {
		return sight, print, fill, err
	}
	print, ok := s.printFor(sight, fill)
	if !ok {
		return sight, print, fill, s.seesNothing(fill)
	}
	return sight, print, fill, s.checkAgrees(print)
}

// turnedFrom is a distance from which on the drop turns the print over. A hanging drop bends light less by its upper
// part than in its middle, and so turns what that shows over from further off.
func (s Setup) turnedFrom(sight flip.Sight, fill float64) (distanceMM float64) {
	nearestMM, _ := sight.NearestInvertingMM()
	sight.DistanceMM = max(nearestMM, s.Drop.RadiusMM()) * 1.001
	for s.Drop.Body == flip.Hanging && sight.DistanceMM < MaxLengthMM {
		if _, ok := s.printFor(sight, fill); ok {
			break
		}
		sight.DistanceMM *= 1.05
	}
	return sight.DistanceMM
}

// grown is the value between two at which the print, which grows with it, is as wide as asked for, or the
// largest that keeps to the bounds. at is the sight and the fill of a value.
func (s Setup) grown(from, to float64, lies []paperLie, at func(float64) (flip.Sight, float64)) (float64, error) {
	tooLarge := func(v float64) bool {
		sight, fill := at(v)
		print, ok := s.printFor(sight, fill)
		if !ok {
			return true
		}
		if s.Print != (Size{}) {
			return print.WidthMM > s.Print.WidthMM
		}
		return !s.keeps(sight, fill, print, lies)
	}
	if tooLarge(from) || !tooLarge(to) {
		if s.Print != (Size{}) {
			return 0, fmt.Errorf("no distance or fill makes a print %.0fmm wide\n"+
				"hint: take another print size, or give distance "+
				"and fill and leave the print out", s.Print.WidthMM)
		}
		return 0, s.noLargest()
	}
	halvings := 60
	if s.Print == (Size{}) {
		halvings = 40 // to a millionth: sheets are counted each time
	}
	for range halvings {
		if middle := math.Sqrt(from * to); tooLarge(middle) {
			to = middle
		} else {
			from = middle
		}
	}
	return from, nil
}

// LargestFill is where the search for a larger fill ends: the last thousandth of a drop's radius is darker
// than any picture.
const LargestFill = 0.999

// checkAgrees refuses a print asked for that is not what comes out.
func (s Setup) checkAgrees(print Size) error {
	w, h := s.Print.WidthMM, s.Print.HeightMM
	if s.Print == (Size{}) || math.Abs(print.WidthMM/w-1) <= proportionsAgree &&
		(h == 0 || math.Abs(print.HeightMM/h-1) <= proportionsAgree) {
		return nil
	}
	if h == 0 {
		h = w * print.HeightMM / print.WidthMM
	}
	return fmt.Errorf("a print of %gx%gmm is not what this picture, look, distance and fill come to, which is "+
		"%.1fx%.1fmm\nhint: ask for that, or leave the print size out", w, h, print.WidthMM, print.HeightMM)
}

// RoundFill is the fill of a round subject unless another is asked for: to the drop's edge, but for the
// twentieth of its radius that is squeezed into a thin dark line at any fill (at 0.95 of a drop of water
// seven tenths of the light come through; at the edge none do).
const RoundFill = 0.95

// defaultFill is the fill when none is asked for. A long drop looks backwards before 0.95: then a round
// subject gets the largest that it does not.
func (s Setup) defaultFill(sight flip.Sight) float64 {
	if !s.Framing.Round {
		return DefaultFill
	}
	if sight.DistanceMM == 0 {
		sight.DistanceMM = DefaultDistanceMM
	}
	const step = 0.01
	fill := RoundFill
	for fill > DefaultFill {
		if _, ok := seesAt(sight, fill, s.Fit); ok {
			break
		}
		fill -= step
	}
	return fill
}

// noLargest is the error of bounds that no print keeps to, or that every print does.
func (s Setup) noLargest() error {
	switch surrounded := s.fills() != ""; {
	case s.sheetsAlone() && surrounded:
		return fmt.Errorf("no print with its surround takes up to %d sheets of %s\n"+
			"hint: allow another number, give the surround "+
			"a size, or leave it out", s.MaxSheets, s.Paper.Name)
	case s.sheetsAlone():
		return fmt.Errorf("no print takes up to %d sheets of %s\nhint: allow another number, or give distance and fill",
			s.MaxSheets, s.Paper.Name)
	}
	return fmt.Errorf("no print on %s keeps to the sheets, columns, rows and board that were asked for\n"+
		"hint: allow more, or "+
		"give distance and fill", s.Paper.Name)
}
