package guide

// shopping lists what to buy, each with a box to tick.
func (b *book) shopping() {
	b.intro("Tick things off as you lay them ready.")

	b.topic("To print", func(b *book) {
		b.tick(b.told("buy.paper") + " Take all of it from one packet, so that white and grain are the same. Matt " +
			"paper is best: glossy paper mirrors the lamps.")
		b.tick(title(b.phrase("buy.printer")) + ", with ink enough for all the sheets, of one set.")
	})
	b.topic("To build", func(b *book) {
		b.tick(b.told("buy.board") + " Foam board, MDF or plywood will do. Paint the border matt black or cover it." +
			b.largeBoard())
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
		b.tick(b.lampsToGet())
		b.tick("A room that can be made dark, or black cloth to hang around the board and behind the camera.")
	})
}

// joinedMM is from where on a board is more than is sold and carried in one piece (common practice, no source).
const joinedMM = 1200.0

// largeBoard says how a board comes about that is too large for one piece.
func (b *book) largeBoard() string {
	if p := b.job.Plan.Backdrop; max(p.WidthMM, p.HeightMM) <= joinedMM {
		return ""
	}
	return " So large a board is joined of two, edge to edge, with battens screwed over the join on the back, where no " +
		"seam of the paper lies; or paste on a smooth wall. It takes two persons to paste, carry and hang."
}
