package guide

import "dropsheet/layout"

// light says where the lamps stand, how evenly they light the board, and what to watch for.
func (b *book) light() {
	f := b.report.Light()
	if f == nil {
		b.evenLight()
		return
	}
	b.intro("Where the lamps stand, and how their light falls off over the board. A stop is half the light.")
	b.together(func(b *book) {
		b.figure(lampPlanMM, b.lampPlan, "Seen from above, to scale. The dashed lines show where lamps point: at the "+
			"board\u2019s middle, unless it is said otherwise.")
		b.toldTable(b.report.Lamps())
		if text := b.told("light.known"); text != "" {
			b.para(text)
		}
	})
	b.topic("On the board", func(b *book) {
		b.para(b.told("light.falls", "light.even", "light.retreat", "light.hopeless", "light.twin", "light.levelled",
			"light.loss", "light.exactly", "lamps.facing", "lamps.turned"))
		corners := ""
		if b.job.Plan.Backdrop.Surround != "" {
			corners = " These are the corners of the board; the table gives those of the picture."
		}
		b.figure(b.drawingMM(b.lightMapMM()), func(box layout.Rect) { b.lightMap(box, f) },
			"The board as it hangs. The lines join places of equal light, in stops below the brightest place; so do the "+
				"figures at its corners. The open ring marks the brightest place of the picture, the dot its darkest."+corners)
	})
	b.together(func(b *book) { b.toldTable(b.report.LitPlaces()) })

	b.topic("Glare", (*book).glare)
	if mirrored := b.report.Facts("highlights"); len(mirrored) > 0 {
		b.topic("In the "+b.job.body(), func(b *book) {
			for _, f := range mirrored {
				b.bullet(set(f.Text.Sentence()))
			}
		})
	}
	if seen := b.report.All("lamps.seen"); len(seen) > 0 {
		b.topic("In the view", func(b *book) {
			for _, f := range seen {
				b.bullet(set(f.Text.Sentence()))
			}
		})
	}
	if cut := b.told("lamps.cut"); cut != "" {
		b.topic("Cut edges", func(b *book) { b.para(cut) })
	}
}

// glare lists the lamps that shiny paper would mirror, and what helps.
func (b *book) glare() {
	gone := b.report.All("glare.gone")
	for i, seen := range b.report.All("glare.seen") {
		b.bullet(sentences(seen, gone[i]))
	}
	b.para(b.told("glare.none", "glare.matt", "glare.polarise"))
}

// evenLight is the section's text when no lamp was named (common practice, no source).
func (b *book) evenLight() {
	b.intro("This plan counts on a board that is lit evenly, for no lamp was named.")
	b.bullet("Two lamps alike, one on either side, equally far and aimed at the board\u2019s middle, light it far " +
		"more evenly than one.")
	b.bullet("The further off, the more even, and the less light: at twice the distance a quarter is left.")
	b.bullet("Make the job with " + strong("--lamp") + " for each lamp, and this section shows how the light falls " +
		"off and where the board mirrors a lamp. With " + strong("--level") + " the print makes up for the fall-off.")
}
