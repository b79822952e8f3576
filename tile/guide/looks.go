package guide

import (
	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// looks tells whether there are views of both looks to show.
func (j Job) looks() bool { return j.Looks[0] != nil && j.Looks[1] != nil }

// bothLooks shows the picture bulged and straight, side by side, and says which is printed.
func (b *book) bothLooks() {
	const gapMM, largestMM, underMM = 8.0, 82.0, 2.0
	body, look := b.job.body(), b.job.Plan.Picture.Look
	b.intro("The same picture in the " + body + " twice, as the " + b.job.looker() + " sees it.")
	side := min((b.geo.fullMM()-gapMM)/2, largestMM)
	words := [2]string{
		strong("bulged") + ": printed without bending, it looks wrapped round the " + body + ".",
		strong("straight") + ": printed bent, it appears just as drawn.",
	}
	printed := -1
	switch look {
	case layout.Bulged:
		printed = 0
	case layout.Straight:
		printed = 1
	}
	if printed >= 0 {
		words[printed] += " " + strong("This job prints this one.")
	}
	high := 0.0
	for _, text := range words {
		high = max(high, b.blockMM(bodyStyle, side, text))
	}
	b.figure(side+underMM+high, func(box layout.Rect) {
		for i, view := range b.job.Looks {
			at := layout.Rect{XMM: box.XMM + float64(i)*(side+gapMM), YMM: box.YMM, WidthMM: side, HeightMM: side}
			b.placeImage(at, view, photoPPI)
			b.Frame(at, lookPen(i == printed))
			b.block(bodyStyle, at.XMM, at.BottomMM()+underMM, side, words[i])
		}
	}, "")
	if printed < 0 {
		b.para("This job prints neither: " + b.phrase("look.bend") + ".")
	}
	b.topic("Why", func(b *book) {
		b.para("The " + body + " shows its middle largest and squeezes all toward its edge" + b.job.edgeWays() +
			". A print that is drawn out there by as much cancels that.")
	})
	// Advice (common practice, no source).
	b.topic("Which", func(b *book) {
		b.para("Bulged shows at once that there is a " + body + ". Straight suits lettering, faces, buildings and " +
			"whatever else must keep its shape.")
	})
	b.topic("What it holds for", func(b *book) {
		b.para("A bent print is right for the distance and the camera distance that it was made for, and for that " +
			"shape of the " + body + ". A little off them, straight lines bend a little. A print that is not bent bulges " +
			"much the same wherever it stands.")
	})
	b.topic("To change it", func(b *book) {
		b.para("Make the job again with " + strong("--look bulged") + ", " + strong("--look straight") +
			" or a share between, such as " + strong("--look 0.5") + ".")
	})
}

// edgeWays says which edges those are, of a rod.
func (j Job) edgeWays() string {
	if j.rod() {
		return ", across itself but not along"
	}
	return ""
}

// lookPen frames the look that is printed, or the other.
func lookPen(printed bool) pdf.Pen {
	if printed {
		return pen(accent, 1.2)
	}
	return pen(grey, 0.2)
}
