package pdf

import (
	"fmt"
	"math"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// pageBoxes are where a page is cut and how far it is drawn.
type pageBoxes struct {
	trim, bleed  layout.Rect
	pageHeightMM float64
}

// boxPt writes the rectangle as a PDF rectangle (ISO 32000-1, 7.9.5; clauses in this file are recalled from
// memory), page millimetres to points with y up: left = x, bottom = page height - (y + height), right = x +
// width, top = page height - y. It rounds to 0.01 points, as gofpdf rounds the media box, so that a box at
// the page's edge isn't past it.
func boxPt(r layout.Rect, pageHeightMM float64) string {
	return fmt.Sprintf("[%.2f %.2f %.2f %.2f]",
		max(0, units.MMToPoints(r.XMM)),
		max(0, units.MMToPoints(pageHeightMM-(r.YMM+r.HeightMM))),
		units.MMToPoints(r.XMM+r.WidthMM),
		units.MMToPoints(pageHeightMM-r.YMM))
}

// sound tells whether a rectangle lies somewhere and has a size.
func sound(r layout.Rect) bool {
	for _, v := range []float64{r.XMM, r.YMM, r.WidthMM, r.HeightMM} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return r.WidthMM > 0 && r.HeightMM > 0
}

// holds reports whether q lies in r, but for a nanometre of rounding.
func holds(r, q layout.Rect) bool {
	const slackMM = 1e-6
	return q.XMM >= r.XMM-slackMM && q.XMM+q.WidthMM <= r.XMM+r.WidthMM+slackMM &&
		q.YMM >= r.YMM-slackMM && q.YMM+q.HeightMM <= r.YMM+r.HeightMM+slackMM
}

// told writes the rectangle for messages.
func told(r layout.Rect) string {
	return fmt.Sprintf("%g x %g mm at %g, %g", r.WidthMM, r.HeightMM, r.XMM, r.YMM)
}
