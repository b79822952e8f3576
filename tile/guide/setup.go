package guide

import "dropsheet/flip"

// setup says where everything stands and how to measure it.
func (b *book) setup() {
	p := b.job.Plan
	body := b.job.body()
	b.intro(b.told("build.stands") + " " + title(b.job.lens()) + ", " + body +
		" and the board\u2019s middle lie on one line, square to the board.")
	what := "Seen from the side."
	if p.Drop.Reverses.Turn().ReverseY {
		what += " The two thin lines show how the " + body + " turns the picture over."
	}
	b.figure(sideViewMM, b.sideView, what+" Not to scale: the figures count, not the drawing.")

	b.topic("Measure", func(b *book) {
		if b.job.eye() {
			b.step(1, strong("Eye:")+" "+b.phrase("place.camera")+". Stand a card with a hole there to look through, with "+
				"one eye.")
		} else {
			b.step(1, strong("Camera distance:")+" "+b.phrase("place.camera")+". "+
				"The pupil is where the aperture seems to sit when you look into the lens from the front: close the aperture, "+
				"judge how deep the hole lies, and mark that place on the barrel with tape.")
		}
		b.step(2, strong("Distance:")+" "+b.phrase("place.distance")+
			". This one decides how large the picture is in the "+body+".")
		b.step(3, strong("The middle:")+" "+b.phrase("build.middle")+". Mark both on the border.")
		b.step(4, strong("Square:")+" all four corners of the print are equally far from the "+body+".")
	})
	if p.Drop.Body == flip.Hanging {
		b.topic("The drop", func(b *book) {
			b.para(b.told("drop.held", "drop.neck"))
			b.para(b.told("drop.still", "drop.grows"))
		})
	}
	b.topic("In the frame", (*book).coverage)

	b.topic("Lamp and room", func(b *book) {
		b.para(b.lampPlace() + "Look through the camera for glare.")
		b.para("In the " + body + "\u2019s rim one sees what stands around the board, and mirrored in it the board itself " +
			"and what stands behind the camera. Work in a " + strong("dark room") +
			", or hang " + strong("black cloth") + " there: " + b.phrase("place.rim_dark") + ".")
	})
}
