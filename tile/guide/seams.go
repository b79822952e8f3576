package guide

import "dropsheet/layout"

// seams shows the seam map.
func (b *book) seams() {
	b.intro("The seam map shows each seam twice: on the board, and as the " + b.job.body() + " bends it. It is seams.png in the job\u2019s folder.")
	size := b.job.SeamMap.Bounds().Size()
	w, h := float64(size.X), float64(size.Y)
	high := min(b.geo.fullMM()*h/w, b.geo.bottom-b.y-50)
	b.figure(high, func(box layout.Rect) {
		at := inside(box, w, h)
		at.XMM = box.XMM
		b.placeImage(at, b.job.SeamMap, drawingPPI)
	})
	b.side("How to read it")
	if len(b.job.Plan.Sheets) == 1 {
		b.para("This backdrop is a single sheet and has no seams. The circles still show how far out the " + b.job.body() + " looks.")
	}
	rings, inner := "The circles show", "the inner circle"
	if b.job.body() == "rod" {
		rings, inner = "The pairs of lines show", "the space between the inner pair of lines"
	}
	b.bullet("On the board, seams are straight lines between the cells. " + rings + " where the " + b.job.body() + " looks at a fill of 0.25, 0.5 and 0.75: at a quarter, a half and three quarters of its visible radius.")
	b.bullet("In the " + b.job.body() + " the same seams are bent, and close together toward the rim. A seam near the middle shows the most: it is enlarged the most.")
	b.bullet("Take the most care over the seams that cross " + inner + ". Look there for white edges, gaps and steps, and touch them up first.")
}
