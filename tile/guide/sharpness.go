package guide

// sharpness says what each stop does to sharpness and light, and what to do about both.
func (b *book) sharpness() {
	body := b.job.body()
	b.intro("The " + body + "\u2019s edge and the picture in it lie at two distances from the " + b.job.lens() +
		", so no focus makes " +
		"both sharp. Closing the aperture helps, and costs light.")
	b.figure(b.planesMM(), b.planes, "")

	b.together(func(b *book) {
		b.side("Stops")
		b.para(set(b.report.StopsIntro().Sentence()) + " " + b.told("sharp.across", "sharp.along", "sharp.both",
			"frame.sensor", "frame.eye"))
		b.toldTable(b.report.Stops())
		b.note(b.told("sharp.verdict", "sharp.least", "sharp.wider", "sharp.scaled", "sharp.fringe"))
	})
	b.topic("Focus", func(b *book) {
		b.para(b.told("focus.where"))
		b.toldTable(b.report.Focuses())
		b.para(b.told("focus.stops", "focus.stack"))
	})
	if text := b.told("lux.needed", "lux.source", "lux.suns", "lux.given", "lux.ways"); text != "" {
		b.topic("Exposure", func(b *book) { b.para(text) })
	}
	if text := b.told("motion.speed", "motion.drag", "motion.view", "motion.unexposed"); text != "" {
		b.topic("Motion", func(b *book) {
			b.para(text)
			if text := b.told("motion.smear", "motion.blur_shutter", "motion.sharp_shutter", "motion.best",
				"motion.as_good"); text != "" {
				b.para(text)
			}
		})
	}
	b.topic("What helps", func(b *book) {
		if b.job.eye() {
			b.bullet("Look from further off: all is seen smaller, the blur too.")
		} else {
			b.bullet("A wider frame: all is drawn smaller, the blur too. " + b.told("sharp.longer", "sharp.beside"))
		}
		b.bullet(b.told("sharp.light"))
		b.bullet("Lamps on the mains pulse at twice its frequency. " + b.pulses())
	})
}

// pulses says what the mains do to the light, as far as that is known.
func (b *book) pulses() string {
	if text := b.told("mains.swing", "mains.steady", "mains.remedy"); text != "" {
		return text
	}
	return "At more frames a second brightness swings. Take lamps on direct current or high frequency."
}
