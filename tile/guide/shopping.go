package guide

import (
	"fmt"
	"math"
)

// What is bought beyond the bare need (common practice, no source).
const (
	borderMM     = 20.0 // board around the print, to hold and clamp it by
	spareShare   = 0.1  // of the sheets, for slips of the knife
	leastSpares  = 2
	spareRulerMM = 50.0 // ruler past both ends of the longest cut
)

// shopping lists what to buy, each with a box to tick.
func (b *book) shopping() {
	p := b.job.Plan
	n := len(p.Sheets)
	paper := b.clean(p.Backdrop.Paper.Name)
	b.intro("Tick things off as you lay them ready.")

	b.side("To print")
	spares := max(leastSpares, int(math.Ceil(spareShare*float64(n))))
	b.tick(fmt.Sprintf("%s of %s paper for the backdrop, and %s for slips: all from one packet, so that the white is the same. Matt paper is best: glossy paper mirrors the lamps.",
		strong(count(n, "sheet", "sheets")), strong(paper), count(spares, "spare", "spares")))
	b.tick("A printer that takes " + paper + " and prints to within " + length(p.Backdrop.MarginMM) + " of the paper\u2019s edge, with ink enough for all the sheets.")

	b.side("To build")
	b.tick(fmt.Sprintf("A flat, stiff board of at least %s \u00d7 %s: the print, and a border of %s all round to hold it by. Foam board, MDF or plywood will do. Paint the border matt black or cover it.",
		strong(whole(roundUp(p.Backdrop.WidthMM+2*borderMM, 10))), strong(whole(roundUp(p.Backdrop.HeightMM+2*borderMM, 10))), whole(borderMM)))
	b.tick("Glue for paper: wallpaper paste with a brush, or spray glue. Use it as its maker says, and try it on a spare sheet and a corner of the board first.")
	b.tick("A sharp knife with new blades, and a cutting mat.")
	b.tick("A steel rule of at least " + strong(whole(b.rulerMM())) + ": it must reach past both ends of the longest cut.")
	b.tick(fmt.Sprintf("A hard pencil, an eraser, a set square, and a tape measure longer than %s, the print\u2019s diagonal.", strong(length(b.diagonalMM()))))
	b.tick("A clean roller or a soft cloth, to press the sheets down.")
	b.tick("A grey felt pen or a soft pencil, to touch up white paper edges.")

	b.side("To set up")
	b.tick("Stands for the board, the lamp and the camera, heavy enough not to fall.")
	if b.job.body() == "drop" {
		b.tick("Something that lets drops fall at one place, a tray below it, and a cloth.")
	} else {
		b.tick("The glass or tube, filled, and a firm holder for it.")
	}
	b.tick("A lamp, or several, to light the board evenly from the " + strong(corner(p.Backdrop.LightFrom)) + ".")
}

// rulerMM is the length of a ruler that reaches past both ends of the longest cut, in whole tens of centimetres.
func (b *book) rulerMM() float64 {
	longest := 0.0
	for _, s := range b.job.Plan.Sheets {
		kept := b.job.Plan.Backdrop.Kept(s)
		longest = max(longest, kept.WidthMM, kept.HeightMM)
	}
	return roundUp(longest+2*spareRulerMM, 100)
}

// diagonalMM is the diagonal of the print.
func (b *book) diagonalMM() float64 {
	return math.Hypot(b.job.Plan.Backdrop.WidthMM, b.job.Plan.Backdrop.HeightMM)
}

// roundUp rounds up to a whole number of steps.
func roundUp(mm, stepMM float64) float64 { return math.Ceil(mm/stepMM-1e-9) * stepMM }
