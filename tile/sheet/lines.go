package sheet

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Widths of a mark, in mm: a black hairline with a white keyline on both sides, so that it reads on any picture.
const (
	hairlineMM = 0.2
	keylineMM  = 0.2
)

var (
	keyline  = pdf.Pen{Shade: pdf.Grey(255), WidthMM: hairlineMM + 2*keylineMM}
	hairline = pdf.Pen{Shade: pdf.Grey(0), WidthMM: hairlineMM}
)

// drawKeylined draws lines as hairlines on keylines. All keylines go down first, so that none cuts through a
// neighbouring hairline.
func drawKeylined(d *pdf.Document, lines ...pdf.Line) { d.Lines(lines, keyline, hairline) }

// along makes a line at a fixed place on one axis, from one place to another on the other.
func along(upright bool, at, from, to float64) pdf.Line {
	if upright {
		return pdf.Line{From: layout.Point{XMM: at, YMM: from}, To: layout.Point{XMM: at, YMM: to}}
	}
	return pdf.Line{From: layout.Point{XMM: from, YMM: at}, To: layout.Point{XMM: to, YMM: at}}
}

// arrowhead is the length of an arrow's head and half its breadth, in mm.
const (
	headMM     = 1.8
	headHalfMM = 0.7
)

// drawCutMarks draws lines as drawKeylined does, each with a head at its start that points back the way it came: cut
// marks, which must not be taken for the plain ticks of registration marks.
func drawCutMarks(d *pdf.Document, lines ...pdf.Line) {
	drawKeylined(d, lines...)
	d.Polygons(keyline.Shade, pdf.Pen{}, heads(lines, keylineMM)...)
	d.Polygons(hairline.Shade, pdf.Pen{}, heads(lines, 0)...)
}

// heads are the heads of arrows, grown on all sides.
func heads(lines []pdf.Line, growMM float64) (all [][]layout.Point) {
	for _, l := range lines {
		length := math.Hypot(l.To.XMM-l.From.XMM, l.To.YMM-l.From.YMM)
		dx, dy := (l.To.XMM-l.From.XMM)/length, (l.To.YMM-l.From.YMM)/length
		head := min(headMM, length)
		point := func(along, aside float64) layout.Point {
			return layout.Point{XMM: l.From.XMM + along*dx - aside*dy, YMM: l.From.YMM + along*dy + aside*dx}
		}
		all = append(all, []layout.Point{point(-growMM, 0), point(head+growMM, headHalfMM+growMM),
			point(head+growMM, -headHalfMM-growMM)})
	}
	return all
}
