package guide

import (
	"fmt"

	"dropsheet/layout/report"
)

// lampsNamed tells whether the job says where its lamps stand. The corner that its sheets are cut for is that alone
// then.
func (b *book) lampsNamed() bool { return len(b.job.Plan.Lamps) > 0 }

// fromCorner tells whether light comes from the corner that the sheets are cut for: as far as cut edges go, where lamps
// are named, and wherever none are.
func (b *book) fromCorner() bool {
	return !b.lampsNamed() || b.job.single() || b.told("lamps.facing") != ""
}

// cutCorner is the corner that the sheets are cut for.
func (b *book) cutCorner() string { return report.Corner(b.job.Plan.Backdrop.LightFrom) }

// lampFact names the lamps among the key figures.
func (b *book) lampFact() (name, text string) {
	if !b.lampsNamed() {
		return "Lamp", "From the " + strong(b.cutCorner()) + ", as you face the printed side."
	}
	name, text = "Lamp", "Where the section Light has it."
	if n := len(b.job.Plan.Lamps); n > 1 {
		name, text = "Lamps", fmt.Sprintf("%d, where the section Light has them.", n)
	}
	if !b.job.single() {
		text += " The sheets are cut for light from the " + strong(b.cutCorner()) + ", as you face the printed side."
	}
	return name, text
}

// lampPlace says where the lamps stand when all is set up.
func (b *book) lampPlace() string {
	where := "toward the " + strong(b.cutCorner()) + " as you face the print"
	if b.lampsNamed() {
		where = "where the section Light has " + many(len(b.job.Plan.Lamps), "it", "them")
	}
	text := "The light stands on the camera\u2019s side of the board, " + where + ", and out of the camera\u2019s view. "
	switch {
	case b.job.single():
	case !b.lampsNamed():
		text += "The sheets are cut for light from there, so that no paper edge throws a shadow. "
	case b.fromCorner():
		text += "The sheets are cut for light from the " + strong(b.cutCorner()) + ", so that no paper edge throws a shadow. "
	default:
		text += "The sheets are cut for light from the " + strong(b.cutCorner()) + ". "
	}
	return text
}

// lampsToGet says what lamps to get.
func (b *book) lampsToGet() string {
	if !b.lampsNamed() {
		return "A lamp, or several, to light the board evenly from the " + strong(b.cutCorner()) + "."
	}
	return title(count(len(b.job.Plan.Lamps), "lamp", "lamps")) + ", which the section Light describes."
}

// lightWords says where light comes from, below the drawing of the board.
func (b *book) lightWords() string {
	switch {
	case !b.lampsNamed():
		return "Light comes from the " + b.cutCorner() + "."
	case b.job.single():
		return ""
	}
	return "The sheets are cut for light from the " + b.cutCorner() + "."
}

// many is a word for one thing or for several.
func many(n int, one, several string) string {
	if n == 1 {
		return one
	}
	return several
}
