package guide

import (
	"dropsheet/flip"
)

// setup says where everything stands and how to measure it.
func (b *book) setup() {
	p := b.job.Plan
	body := b.job.body()
	b.intro(b.job.inPlace() + " Lens, " + body + " and the board\u2019s middle lie on one line, square to the board.")
	what := "Seen from the side."
	if p.Drop.Reverses.Turn().ReverseY {
		what += " The two thin lines show how the " + body + " turns the picture over."
	}
	b.figure(sideViewMM, b.sideView, what+" Not to scale: the figures count, not the drawing.")

	b.topic("Measure", func(b *book) {
		b.step(1, strong("Camera distance, "+length(p.Drop.CameraMM)+":")+" from the lens\u2019s entrance pupil to the "+
			"middle of the "+body+". "+
			"The pupil is where the aperture seems to sit when you look into the lens from the front: close the aperture, "+
			"judge how deep the hole lies, and mark that place on the barrel with tape.")
		b.step(2, strong("Distance, "+length(p.Drop.DistanceMM)+":")+" from the middle of the "+body+
			" to the printed side of the board. This one decides how large the picture is in the "+body+".")
		b.step(3, strong("The middle:")+" the line from the lens through the "+body+" meets the board "+
			strong(length(p.Backdrop.WidthMM/2))+" from the print\u2019s left edge and "+
			strong(length(p.Backdrop.HeightMM/2))+" below its upper edge. Mark both on the border.")
		b.step(4, strong("Square:")+" all four corners of the print are equally far from the "+body+".")
	})
	b.topic("In the frame", (*book).coverage)

	light := p.Backdrop.LightFrom
	lamp := "On the camera\u2019s side of the board, toward the " + strong(corner(light)) +
		" as you face the print, and out of the camera\u2019s view. "
	if !b.job.single() {
		lamp += "The sheets are cut for light from there, so that no paper edge throws a shadow. "
	}
	b.topic("Lamp and room", func(b *book) {
		b.para(lamp + "Look through the camera for glare.")
		b.para("The " + body + "\u2019s dark rim shows whatever stands around the board, and its front mirrors what " +
			"stands behind the camera. Work in a " + strong("dark room") +
			", or hang " + strong("black cloth") + " there.")
	})
}

// inPlace says what stands or falls between the lens and the board.
func (j Job) inPlace() string {
	switch {
	case j.Plan.Drop.Body == flip.UprightRod:
		return title(j.theRod()) + ", " + j.across() + " across, stands upright and parallel to the board."
	case j.rod():
		return title(j.theRod()) + ", " + j.across() + " across, lies level and parallel to the board."
	case j.solid():
		return "A ball of " + j.material() + ", " + j.measures() + ", hangs or stands before the board."
	case j.material() != "":
		return "Drops of " + j.material() + ", " + j.measures() + ", fall at one place."
	default:
		return "Drops, " + j.measures() + ", fall at one place."
	}
}

// theRod names the rod with what it is made of.
func (j Job) theRod() string {
	if j.material() == "" {
		return "the rod"
	}
	return "the " + j.rodToGet()
}
