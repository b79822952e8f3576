package guide

import (
	"dropsheet/layout/report"
)

// shopping lists what to buy, each with a box to tick.
func (b *book) shopping() {
	b.intro("Tick things off as you lay them ready.")

	b.topic("To print", func(b *book) {
		b.tick(b.told("buy.paper") + " Take all of it from one packet, so that the white is the same. Matt paper is best: " +
			"glossy paper mirrors the lamps.")
		b.tick(title(b.phrase("buy.printer")) + ", with ink enough for all the sheets.")
	})
	b.topic("To build", func(b *book) {
		b.tick(b.told("buy.board") + " Foam board, MDF or plywood will do. Paint the border matt black or cover it.")
		b.tick("Glue for paper: wallpaper paste with a brush, or spray glue. Use it as its maker says, and try it on a " +
			"spare sheet and a corner of the board first.")
		b.tick("A sharp knife with new blades, and a cutting mat.")
		b.tick(title(b.phrase("buy.rule")) + ", and a lens to read it with.")
		b.tick("A hard pencil, an eraser, a set square, and " + b.phrase("buy.tape") + ".")
		b.tick("A clean roller or a soft cloth, to press the paper down.")
		if !b.job.single() {
			b.tick("A grey felt pen or a soft pencil, to touch up white paper edges.")
		}
	})
	b.topic("To set up", func(b *book) {
		b.tick(b.told("buy.body"))
		b.tick("Stands for the board, the lamp and the camera, heavy enough not to fall.")
		b.tick("A lamp, or several, to light the board evenly from the " +
			strong(report.Corner(b.job.Plan.Backdrop.LightFrom)) + ".")
		b.tick("A room that can be made dark, or black cloth to hang around the board and behind the camera.")
	})
}
