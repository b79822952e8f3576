package guide

import (
	"fmt"
	"math"
)

// What is bought beyond the bare need (common practice, no source).
const (
	borderMM    = 20.0 // board around the print, to hold and clamp it by
	spareShare  = 0.1  // of the sheets, for slips of the knife
	leastSpares = 2
)

// shopping lists what to buy, each with a box to tick.
func (b *book) shopping() {
	p := b.job.Plan
	n := len(p.Sheets)
	paper := b.clean(p.Backdrop.Paper.Name)
	b.intro("Tick things off as you lay them ready.")

	b.topic("To print", func(b *book) {
		spares := max(leastSpares, int(math.Ceil(spareShare*float64(n))))
		b.tick(fmt.Sprintf("%s of %s paper for the backdrop, and %s for slips: all from one packet, so that the white is "+
			"the same. Matt paper is best: glossy paper mirrors the lamps.",
			strong(count(n, "sheet", "sheets")), strong(paper), count(spares, "spare", "spares")))
		printer := "A printer that takes " + paper + " and prints to within " + length(p.Backdrop.MarginMM) +
			" of the paper\u2019s edge"
		if made := p.Backdrop.Printer; made != nil {
			printer = "The printer measured as " + strong(b.clean(made.Name)) + ", with " + paper + " in it"
		}
		b.tick(printer + ", with ink enough for all the sheets.")
	})
	b.topic("To build", func(b *book) {
		b.tick(fmt.Sprintf("A flat, stiff board of at least %s \u00d7 %s: the print, and a border of %s all round to "+
			"hold it by. Foam board, MDF or plywood will do. Paint the border matt black or cover it.",
			strong(whole(roundUp(p.Backdrop.WidthMM+2*borderMM, 10))),
			strong(whole(roundUp(p.Backdrop.HeightMM+2*borderMM, 10))), whole(borderMM)))
		b.tick("Glue for paper: wallpaper paste with a brush, or spray glue. Use it as its maker says, and try it on a " +
			"spare sheet and a corner of the board first.")
		b.tick("A sharp knife with new blades, and a cutting mat.")
		b.tick("A steel rule at least " + strong(whole(b.rulerMM())) + " long, as the longest cut is from mark to mark, " +
			"and a lens to read it with.")
		b.tick(fmt.Sprintf("A hard pencil, an eraser, a set square, and a tape measure longer than the print\u2019s "+
			"diagonal, %s.", strong(far(b.diagonalMM()))))
		b.tick("A clean roller or a soft cloth, to press the paper down.")
		if !b.job.single() {
			b.tick("A grey felt pen or a soft pencil, to touch up white paper edges.")
		}
	})
	b.topic("To set up", func(b *book) {
		b.tick(b.job.toRefract())
		b.tick("Stands for the board, the lamp and the camera, heavy enough not to fall.")
		b.tick("A lamp, or several, to light the board evenly from the " + strong(corner(p.Backdrop.LightFrom)) + ".")
		b.tick("A room that can be made dark, or black cloth to hang around the board and behind the camera.")
	})
}

// toRefract says what to get for the drop or rod.
func (j Job) toRefract() string {
	switch {
	case j.rod() && j.solid():
		return "A " + strong(j.rodToGet()) + ", " + strong(j.across()) + " across, and a firm holder for it."
	case j.rod() && j.material() != "":
		return "A thin-walled " + strong(j.rodToGet()) + " and free of bubbles, " + strong(j.across()) +
			" across, and a firm holder for it."
	case j.rod():
		return "A " + strong(j.rodToGet()) + ", " + strong(j.across()) + " across, of a refractive index of " +
			strong(short(j.Plan.Drop.Index, 4)) + ", and a firm holder for it."
	case j.solid() && j.oblate():
		return "A " + strong("ball of "+j.material()) + " out of round, " + strong(j.measures()) +
			", and a thin stand or thread to hold it."
	case j.solid():
		return "A " + strong("ball of "+j.material()) + ", " + strong(j.across()) +
			" across, and a thin stand or thread to hold it."
	case j.material() != "":
		return strong(title(j.material())) + ", something that lets drops of it fall at one place, a tray below it, " +
			"and a cloth."
	default:
		return "A liquid of a refractive index of " + strong(short(j.Plan.Drop.Index, 4)) +
			", something that lets drops of it fall at one place, a tray below it, and a cloth."
	}
}

// rulerMM is the length of a ruler that lies on both marks of the longest cut, in whole centimetres.
func (b *book) rulerMM() float64 {
	board, longest := b.job.Plan.Backdrop, 0.0
	for _, s := range b.job.Plan.Sheets {
		used := board.Used(s)
		left, top, right, bottom := board.Cut(s)
		if left || right {
			longest = max(longest, used.HeightMM)
		}
		if top || bottom {
			longest = max(longest, used.WidthMM)
		}
	}
	return roundUp(longest, 10)
}

// diagonalMM is the diagonal of the print.
func (b *book) diagonalMM() float64 {
	return math.Hypot(b.job.Plan.Backdrop.WidthMM, b.job.Plan.Backdrop.HeightMM)
}

// roundUp rounds up to a whole number of steps.
func roundUp(mm, stepMM float64) float64 { return math.Ceil(mm/stepMM-1e-9) * stepMM }
