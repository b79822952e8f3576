package pdf

import (
	"github.com/jung-kurt/gofpdf"

	"dropsheet/layout"
)

// Frame draws a rectangle's outline.
func (d *Document) Frame(r layout.Rect, p Pen) {
	if d.IsUndrawn() {
		return
	}
	d.usePen(p)
	d.canvas.Rect(r.XMM, r.YMM, r.WidthMM, r.HeightMM, "D")
}

// Fill fills a rectangle.
func (d *Document) Fill(r layout.Rect, fill Shade) {
	if d.IsUndrawn() {
		return
	}
	d.canvas.SetFillColor(fill.rgb())
	d.canvas.Rect(r.XMM, r.YMM, r.WidthMM, r.HeightMM, "F")
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
	d.canvas.MoveTo(points[0].XMM, points[0].YMM)
	for _, q := range points[1:] {
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
	d.canvas.Ellipse(xMM, yMM, halfWidthMM, halfHeightMM, 0, "DF")
}
