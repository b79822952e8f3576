package sheet

import "github.com/jung-kurt/gofpdf"

// Widths of a mark, in mm: a black hairline with a white keyline on both sides, so that it reads on any picture.
const (
	hairlineMM = 0.2
	keylineMM  = 0.2
)

// stroke is a straight line from one point of the page to another.
type stroke struct{ x1, y1, x2, y2 float64 }

// rule draws strokes as hairlines on keylines. All keylines go down first, so that none cuts through a neighbouring hairline.
func rule(c *gofpdf.Fpdf, strokes ...stroke) {
	c.SetLineCapStyle("butt")
	for _, pen := range []struct {
		widthMM float64
		grey    int
	}{{hairlineMM + 2*keylineMM, 255}, {hairlineMM, 0}} {
		c.SetLineWidth(pen.widthMM)
		c.SetDrawColor(pen.grey, pen.grey, pen.grey)
		for _, s := range strokes {
			c.Line(s.x1, s.y1, s.x2, s.y2)
		}
	}
}

// along makes a stroke at a fixed place on one axis, from one place to another on the other.
func along(upright bool, at, from, to float64) stroke {
	if upright {
		return stroke{at, from, at, to}
	}
	return stroke{from, at, to, at}
}
