package report

import (
	"fmt"
	"math"

	"dropsheet/flip"
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
		trim := "trim the board to the picture"
		if r.shot.Backdrop.Uncut {
			trim = "cut the paper off round the picture"
		}
		all = append(all, say("where paper goes on beyond the picture, its white shows as a bright rim in the %s: print it "+
			"dark with --background black, or %s", r.body, trim))
	}
	all = append(all, r.middle()...)
	if d := r.shot.Drop; d.Body == flip.Ball && !Solid(d) && d.DiameterMM > tornMM {
		all = append(all, say("the air tears a falling drop of over some %s apart (the largest raindrops seen are %s: Hobbs "+
			"and Rangno 2004): %s suits a solid ball only", length("", tornMM), length("", 8.8), Across(d)))
	}
	return append(all, PaperWarnings(r.shot.Backdrop)...)
}

// tornMM is the diameter above which a falling drop does not stay whole: 8 mm, with raindrops of at least 8.8 mm the
// largest that were seen (Hobbs and Rangno, Super-large raindrops, Geophysical Research Letters 31, L13102, 2004; from
// memory). In the laboratory drops fall apart from 6 mm on (Villermaux and Bossa, Nature Physics 5, 697, 2009;
// likewise).
const tornMM = 8.0

// middle warns where no layout of so few sheets keeps seams out of the middle of what the drop shows.
func (r *Report) middle() []Text {
	c, ok := r.shot.Middle()
	if !ok {
		return nil
	}
	if _, canBe := r.shot.Clear(c); canBe {
		return nil
	}
	crosses := say("a seam crosses the middle of what the %s shows, and no layout of %s %s keeps it out", r.body,
		counted("", len(r.shot.Sheets), "sheet", "sheets"), string(r.shot.Backdrop.Orientation))
	if other, ok := r.shot.ClearedByTurning(c); ok {
		return []Text{say("%s: --orientation %s does, on as many", crosses, string(other))}
	}
	finer, ok := r.shot.ClearedBy(c, len(r.shot.Sheets)+4)
	if !ok {
		return []Text{crosses}
	}
	b := r.shot.Backdrop
	ask := Text(nil)
	if n := finer.Backdrop.Columns; n > b.Columns {
		ask = say(" --columns %s", whole("", float64(n), Bare))
	}
	if n := finer.Backdrop.Rows; n > b.Rows {
		ask = say("%s --rows %s", ask, whole("", float64(n), Bare))
	}
	return []Text{say("%s:%s does, on %s sheets", crosses, ask, whole("", float64(len(finer.Sheets)), Bare))}
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
