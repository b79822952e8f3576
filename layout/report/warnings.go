package report

import (
	"fmt"
	"math"

	"dropsheet/layout"
)

// Warnings tell what about the plan spoils the shot or the print.
func (r *Report) Warnings() []Text {
	var all []Text
	for _, f := range r.Facts("lamps") {
		if f.Asks {
			all = append(all, f.Text)
		}
	}
	if r.unfilled() {
		all = append(all, say("where sheets go on beyond the picture, white paper shows as a bright rim in the %s: print it "+
			"dark with --background black, or trim the board to the picture", r.body))
	}
	return append(all, PaperWarnings(r.shot.Backdrop)...)
}

// sameSizeMM is how close two papers must be to pass for one.
const sameSizeMM = 0.5

// PaperWarnings tell when sheets go on other paper than their printer was measured on.
func PaperWarnings(b layout.Backdrop) []Text {
	if b.Printer == nil || math.Max(math.Abs(b.Printer.Paper.WidthMM-b.Paper.WidthMM),
		math.Abs(b.Printer.Paper.HeightMM-b.Paper.HeightMM)) <= sameSizeMM {
		return nil
	}
	return []Text{say("printer %s was measured on %s, and the sheets are %s: its feed and margins may be others there; "+
		"measure it on that paper too, with dropsheet gauge --paper", fmt.Sprintf("%q", b.Printer.Name),
		b.Printer.Paper.Name, b.Paper.Name)}
}
