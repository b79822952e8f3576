package guide

import (
	"dropsheet/flip"
)

// setup says where everything stands and how to measure it.
func (b *book) setup() {
	p := b.job.Plan
	body := b.job.body()
	b.intro("Lens, " + body + " and the board\u2019s middle lie on one line, square to the board.")
	b.figure(sideViewMM, b.sideView)
	what := "Seen from the side."
	if p.Drop.Reverses.Turn().ReverseY {
		what += " The two thin lines show how the " + body + " turns the picture over."
	}
	b.caption(what + " Not to scale: the figures count, not the drawing.")

	b.side("Measure")
	b.step(1, strong("Camera distance, "+length(p.Drop.CameraMM)+":")+" from the lens\u2019s entrance pupil to the middle of the "+body+". "+
		"The pupil is where the aperture seems to sit when you look into the lens from the front: close the aperture, judge how deep the hole lies, and mark that place on the barrel with tape.")
	b.step(2, strong("Distance, "+length(p.Drop.DistanceMM)+":")+" from the middle of the "+body+" to the printed side of the board. This one decides how large the picture is in the "+body+".")
	b.step(3, strong("The middle:")+" the line from the lens through the "+body+" meets the board "+strong(length(p.Backdrop.WidthMM/2))+" from the print\u2019s left edge and "+
		strong(length(p.Backdrop.HeightMM/2))+" below its upper edge. Mark both on the border.")
	b.step(4, strong("Square:")+" all four corners of the print are equally far from the "+body+".")

	b.side("The " + body)
	switch p.Drop.Body {
	case flip.Ball:
		b.para("The plan counts on drops " + strong(short(p.Drop.DiameterMM, 2)+noBreak+"mm") + " across, all falling at one place.")
	case flip.UprightRod:
		b.para("The rod stands upright and parallel to the board, " + strong(short(p.Drop.DiameterMM, 2)+noBreak+"mm") + " across.")
	case flip.LevelRod:
		b.para("The rod lies level and parallel to the board, " + strong(short(p.Drop.DiameterMM, 2)+noBreak+"mm") + " across.")
	}

	b.coverage()

	b.side("The lamp")
	light := p.Backdrop.LightFrom
	b.para("On the camera\u2019s side of the board, toward the " + strong(corner(light)) + " as you face the print, and out of the camera\u2019s view. " +
		"The sheets are cut for light from there, so that no paper edge throws a shadow. Look through the camera for glare.")
}
