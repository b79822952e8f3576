package guide

// caution is one danger and how to keep out of it.
type caution struct{ about, text string }

// cautionsList is general advice (common practice, no source); makers, local rules and licensed trades know
// better, and the page says so.
var cautionsList = []caution{
	{"Hot lamps", "Strong lamps grow hot enough to scorch paper and set it on fire. Keep them as far from paper, " +
		"board and cloth as their maker says, never leave them on alone, and let them cool before you move them."},
	{"Mains and water", "Water and mains electricity stand close together here. Keep plugs, sockets, lamps and " +
		"chargers off the floor and out of the reach of drops and spills. Dry your hands before you touch them. " +
		"Use a socket with a residual-current device. Leave anything wired for good, or beyond plugging in, to a " +
		"licensed electrician."},
	{"Knives", "Cut away from your body and your other hand, with a sharp blade and light strokes, against a steel " +
		"rule. Put the cap on between cuts, and old blades in a closed tin."},
	{"Glue", "Spray glue is bad to breathe and catches fire. Spray outdoors or with the windows open, away from " +
		"lamps, flames and sparks, and follow the marks on the can."},
	{"Bright and flashing light", "Do not look into the lamps. Flashing light, and lamps that seem to flicker, can " +
		"bring on a seizure in people who are sensitive to it: warn everyone before you switch on, and stop at once if " +
		"someone feels unwell."},
	{"Heavy things", "Weigh down stands, tape cables to the floor, and wipe up spilt water."},
}

// cautions lists the dangers of the job.
func (b *book) cautions() {
	b.intro("Read this before you start, and to everyone who helps.")
	for _, c := range cautionsList {
		b.topic(c.about, func(b *book) { b.para(c.text) })
	}
	b.y += 2
	b.note("This page can\u2019t know your room and your tools. " +
		strong("Makers\u2019 instructions, local rules and the advice of licensed trades come before anything said here."))
}
