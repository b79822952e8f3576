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
	if s.DistanceMM == 0 && s.Print == (Size{}) && s.MaxSheets == 0 {
		sight.DistanceMM = DefaultDistanceMM
	}
	if fill == 0 && (s.Print == Size{} && s.MaxSheets == 0 || s.DistanceMM == 0) {
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
		nearestMM, _ := sight.NearestInvertingMM()
		sight.DistanceMM, err = s.grown(max(nearestMM, s.Drop.RadiusMM())*1.001, MaxLengthMM, lies,
			func(mm float64) (Size, bool) {
				at := sight
				at.DistanceMM = mm
				return s.printFor(at, fill)
			}, func(mm float64, print Size, l paperLie) float64 {
				at := sight
				at.DistanceMM = mm
				return s.sheetsAt(at, fill, print, l)
			})
	default:
		fill, err = s.grown(0.01, LargestFill, lies, func(fill float64) (Size, bool) { return s.printFor(sight, fill) },
			func(fill float64, print Size, l paperLie) float64 { return s.sheetsAt(sight, fill, print, l) })
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

// grown is the value between two at which the print, which grows with it, is as wide as asked for, or the
// largest that the sheets allowed hold.
func (s Setup) grown(from, to float64, lies []paperLie, printAt func(float64) (Size, bool),
	sheetsAt func(float64, Size, paperLie) float64) (float64, error) {
	tooLarge := func(v float64) bool {
		print, ok := printAt(v)
		if !ok {
			return true
		}
		if s.Print != (Size{}) {
			return print.WidthMM > s.Print.WidthMM
		}
		for _, l := range lies {
			if sheetsAt(v, print, l) <= float64(s.MaxSheets) {
				return false
			}
		}
		return true
	}
	if tooLarge(from) || !tooLarge(to) {
		if s.Print != (Size{}) {
			return 0, fmt.Errorf("no distance or fill makes a print %.4gmm wide: take another print size, or give distance "+
				"and fill and leave the print out", s.Print.WidthMM)
		}
		return 0, fmt.Errorf("no print takes up to %d sheets of %s: allow another number, or give distance and fill",
			s.MaxSheets, s.Paper.Name)
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
		"%.1fx%.1fmm: ask for that, or leave the print size out", w, h, print.WidthMM, print.HeightMM)
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
		if _, ok := seesAt(sight, fill); ok {
			break
		}
		fill -= step
	}
	return fill
}

// sheetsAt counts the sheets of a print as the paper lies, those of cells that carry picture.
func (s Setup) sheetsAt(sight flip.Sight, fill float64, print Size, l paperLie) float64 {
	columns, rows := l.sheetsFor(print)
	all := float64(columns) * float64(rows)
	if s.plain() || s.fills() != "" || all > mostCells {
		return all
	}
	b, ok := s.bent(sight, fill)
	if !ok {
		return all
	}
	n := 0.0
	for _, carries := range b.carrying(print)(edges(l.across.cells(print.WidthMM, columns), print.WidthMM,
		s.LightFrom.Left()), edges(l.down.cells(print.HeightMM, rows), print.HeightMM, s.LightFrom.Top())) {
		if carries {
			n++
		}
	}
	return n
}
