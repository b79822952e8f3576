package pdf

import (
	"github.com/jung-kurt/gofpdf"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Frame draws a rectangle's outline.
func (d *Document) Frame(r layout.Rect, p Pen) {
	if d.IsUndrawn() {
		return
	}
	d.usePen(p)
	d.rect(r, "D")
}

// Fill fills a rectangle.
func (d *Document) Fill(r layout.Rect, fill Shade) {
	if d.IsUndrawn() {
		return
	}
	d.canvas.SetFillColor(fill.rgb())
	d.rect(r, "F")
}

func (d *Document) rect(r layout.Rect, how string) {
	r = layout.Rounded(r)
	d.canvas.Rect(r.XMM, r.YMM, r.WidthMM, r.HeightMM, how)
}

// Polygons fills polygons and, with a pen of some width, outlines them.
func (d *Document) Polygons(fill Shade, outline Pen, polygons ...[]layout.Point) {
	if d.IsUndrawn() {
		return
	}
	d.canvas.SetFillColor(fill.rgb())
	how := "F"
	if outline.WidthMM > 0 {
		d.usePen(outline)
		how = "DF"
	}
	for _, polygon := range polygons {
		corners := make([]gofpdf.PointType, len(polygon))
		for i, p := range polygon {
			p = whole(p)
			corners[i] = gofpdf.PointType{X: p.XMM, Y: p.YMM}
		}
		d.canvas.Polygon(corners, how)
	}
}

// Polygon fills and outlines one polygon.
func (d *Document) Polygon(fill Shade, outline Pen, points ...layout.Point) {
	d.Polygons(fill, outline, points)
}

// Outline draws a closed line through points, of which there is at least one.
func (d *Document) Outline(points []layout.Point, p Pen) {
	if d.IsUndrawn() {
		return
	}
	d.usePen(p)
	first := whole(points[0])
	d.canvas.MoveTo(first.XMM, first.YMM)
	for _, q := range points[1:] {
		q = whole(q)
		d.canvas.LineTo(q.XMM, q.YMM)
	}
	d.canvas.ClosePath()
	d.canvas.DrawPath("D")
}

// Oval draws a filled ellipse about a point, with level and upright semi-axes.
func (d *Document) Oval(xMM, yMM, halfWidthMM, halfHeightMM float64, fill Shade, outline Pen) {
	if d.IsUndrawn() {
		return
	}
	d.canvas.SetFillColor(fill.rgb())
	d.usePen(outline)
	at, half := whole(layout.Point{XMM: xMM, YMM: yMM}), whole(layout.Point{XMM: halfWidthMM, YMM: halfHeightMM})
	d.canvas.Ellipse(at.XMM, at.YMM, half.XMM, half.YMM, 0, "DF")
}

// whole is a point to the nanometre. Numbers are written to a hundredth of a point, and where one lies half-way between
// two of those, the last digits of a sum, in which processors differ, would tell which it becomes.
func whole(p layout.Point) layout.Point {
	return layout.Point{XMM: units.Nanometres(p.XMM), YMM: units.Nanometres(p.YMM)}
}
