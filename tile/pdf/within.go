package pdf

import "dropsheet/layout"

// Scale has what is drawn from here to the page's end drawn x times as wide and y times as high, counted from a point.
func (d *Document) Scale(x, y float64, about layout.Point) {
	if !d.onPage("a scale") {
		return
	}
	d.endScale()
	d.scaled = true
	d.canvas.TransformBegin()
	about = whole(about)
	d.canvas.TransformScale(100*x, 100*y, about.XMM, about.YMM)
}

// endScale ends the current page's scale, if it has one.
func (d *Document) endScale() {
	if d.scaled {
		d.canvas.TransformEnd()
		d.scaled = false
	}
}

// Clipped draws what shows in a rectangle alone.
func (d *Document) Clipped(to layout.Rect, draw func()) {
	to = layout.Rounded(to)
	d.within(func() { d.canvas.ClipRect(to.XMM, to.YMM, to.WidthMM, to.HeightMM, false) }, draw, d.canvas.ClipEnd)
}

// Inset draws what shows in a rectangle alone, in a frame of its own: the point corner falls on the
// rectangle's top-left corner, and everything is k times as large.
func (d *Document) Inset(in layout.Rect, k float64, corner layout.Point, draw func()) {
	d.Clipped(in, func() {
		d.within(func() {
			d.canvas.TransformBegin()
			by := whole(layout.Point{XMM: in.XMM - k*corner.XMM, YMM: in.YMM - k*corner.YMM})
			d.canvas.TransformTranslate(by.XMM, by.YMM)
			d.canvas.TransformScaleXY(100*k, 0, 0)
		}, draw, d.canvas.TransformEnd)
	})
}

// Turned draws turned by a quarter to the left about a point, so that words read upwards.
func (d *Document) Turned(xMM, yMM float64, draw func()) {
	about := whole(layout.Point{XMM: xMM, YMM: yMM})
	d.within(func() {
		d.canvas.TransformBegin()
		d.canvas.TransformRotate(90, about.XMM, about.YMM)
	}, draw, d.canvas.TransformEnd)
}

// within draws between a beginning and an end that give the page its old fill and dashes back. gofpdf does not notice
// that they do, and is told. Everything else that a drawing goes by is set anew with each line or word.
func (d *Document) within(begin, draw, end func()) {
	if d.IsUndrawn() {
		return
	}
	r, g, b := d.canvas.GetFillColor()
	dashMM := d.dashMM
	begin()
	draw()
	end()
	if nowR, nowG, nowB := d.canvas.GetFillColor(); nowR != r || nowG != g || nowB != b {
		d.canvas.SetFillColor(r, g, b)
	}
	d.useDashes(dashMM)
}
