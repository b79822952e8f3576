package guide

// coverage says what the frame sees of the board, and how far the drop may fall off the axis.
func (b *book) coverage() {
	b.para(b.told("frame.size", "frame.drop", "coverage.sees", "coverage.none", "coverage.edges", "coverage.needs",
		"coverage.print", "coverage.unprinted"))
	b.para(b.told("travel.none", "travel.free", "travel.shows", "travel.holds", "travel.asked", "travel.frame"))
}
