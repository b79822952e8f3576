package sheet

import (
	"math"

	"github.com/jung-kurt/gofpdf"
)

// Widths of a mark, in mm: a black hairline with a white keyline on both sides, so that it reads on any picture.
const (
	hairlineMM = 0.2
	keylineMM  = 0.2
)

// stroke is a straight line from one point of the page to another.
type stroke struct{ x1, y1, x2, y2 float64 }

// rule draws strokes as hairlines on keylines. All keylines go down first, so that none cuts through a
// neighbouring hairline.
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

// arrowhead is the length of an arrow's head and half its breadth, in mm.
const (
	headMM     = 1.8
	headHalfMM = 0.7
)

// arrows draws strokes as rule does, each with a head at its start that points back the way it came: cut
// marks, which must not be taken for the plain ticks of registration marks.
func arrows(c *gofpdf.Fpdf, strokes ...stroke) {
	rule(c, strokes...)
	for _, grow := range []float64{keylineMM, 0} {
		grey := 0
		if grow > 0 {
			grey = 255
		}
		c.SetFillColor(grey, grey, grey)
		for _, s := range strokes {
			length := math.Hypot(s.x2-s.x1, s.y2-s.y1)
			dx, dy := (s.x2-s.x1)/length, (s.y2-s.y1)/length
			head := min(headMM, length)
			point := func(along, aside float64) gofpdf.PointType {
				return gofpdf.PointType{X: s.x1 + along*dx - aside*dy, Y: s.y1 + along*dy + aside*dx}
			}
			c.Polygon([]gofpdf.PointType{point(-grow, 0), point(head+grow, headHalfMM+grow),
				point(head+grow, -headHalfMM-grow)}, "F")
		}
	}
}
