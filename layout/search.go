package layout

import (
	"fmt"
	"math"

	"dropsheet/flip"
)

// search works out distance, print and fill from those that are given where no closed form does: of a bent, turned or cut picture, and of a drop out of round.
// The print grows with distance and fill, so the one that is wanted is found by halving.
func (s Setup) search(sight flip.Sight, lies []paperLie) (found flip.Sight, print Size, fill float64, err error) {
	fill = s.Fill
	if fill == 0 && (s.Print == Size{} && s.MaxSheets == 0 || s.DistanceMM == 0) {
		fill = s.defaultFill()
	}
	if s.DistanceMM == 0 && s.Print == (Size{}) && s.MaxSheets == 0 {
		sight.DistanceMM = DefaultDistanceMM
	}
	switch {
	case sight.DistanceMM != 0 && fill != 0:
		print, ok := s.printFor(sight, fill)
		if !ok {
			return sight, print, fill, s.seesNothing(fill)
		}
		return sight, print, fill, s.checkAgrees(print)
	case sight.DistanceMM == 0:
		nearestMM, _ := sight.NearestInvertingMM()
		sight.DistanceMM, err = s.grown(max(nearestMM, s.Drop.RadiusMM())*1.001, maxLengthMM, lies, func(mm float64) (Size, bool) {
			at := sight
			at.DistanceMM = mm
			return s.printFor(at, fill)
		})
	default:
		fill, err = s.grown(0.01, largestFill, lies, func(fill float64) (Size, bool) { return s.printFor(sight, fill) })
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

// grown is the value between two at which the print, which grows with it, is as wide as asked for, or the largest that the sheets allowed hold.
func (s Setup) grown(from, to float64, lies []paperLie, printAt func(float64) (Size, bool)) (float64, error) {
	tooLarge := func(v float64) bool {
		print, ok := printAt(v)
		if !ok {
			return true
		}
		if s.Print != (Size{}) {
			return print.WidthMM > s.Print.WidthMM
		}
		for _, l := range lies {
			if columns, rows := l.sheetsFor(print); float64(columns)*float64(rows) <= float64(s.MaxSheets) {
				return false
			}
		}
		return true
	}
	if tooLarge(from) || !tooLarge(to) {
		if s.Print != (Size{}) {
			return 0, fmt.Errorf("no distance or fill makes a print %.4gmm wide: take another print size, or give distance and fill and leave the print out", s.Print.WidthMM)
		}
		return 0, fmt.Errorf("no print takes up to %d sheets of %s: allow another number, or give distance and fill", s.MaxSheets, s.Paper.Name)
	}
	for range 60 {
		if middle := math.Sqrt(from * to); tooLarge(middle) {
			to = middle
		} else {
			from = middle
		}
	}
	return from, nil
}

// checkAgrees refuses a print asked for that is not what comes out.
func (s Setup) checkAgrees(print Size) error {
	w, h := s.Print.WidthMM, s.Print.HeightMM
	if s.Print == (Size{}) || math.Abs(print.WidthMM/w-1) <= proportionsAgree && math.Abs(print.HeightMM/h-1) <= proportionsAgree {
		return nil
	}
	return fmt.Errorf("a print of %gx%gmm is not what this picture, look, distance and fill come to, which is %.1fx%.1fmm: ask for that, or leave the print size out", w, h, print.WidthMM, print.HeightMM)
}

// RoundFill is the fill of a round subject unless another is asked for: to the drop's edge, but for the twentieth of its radius that is squeezed into a thin dark line
// at any fill (at 0.95 of a drop of water three quarters of the light come through; at the edge none do).
const RoundFill = 0.95

func (s Setup) defaultFill() float64 {
	if s.Framing.Round {
		return RoundFill
	}
	return DefaultFill
}
