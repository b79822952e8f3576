package guide

import (
	"math"

	"github.com/jung-kurt/gofpdf"

	"dropsheet/layout"
)

// shade is a colour, 0 to 255 a channel. The accent is as dark as a dark grey, so that it reads on a
// black-and-white print.
type shade struct{ r, g, b int }

var (
	black = shade{28, 30, 33}
	grey  = shade{92, 97, 102}
	pale  = shade{196, 200, 204}
	tint  = shade{239, 242, 243}
	white = shade{255, 255, 255}
	// bareShade stands for board without a sheet: light, but darker than paper.
	bareShade = shade{214, 219, 222}
	accent    = shade{0, 88, 110}
)

// pen is how a line looks: its width and dashes in guide mm.
type pen struct {
	ink     shade
	widthMM float64
	dashMM  []float64
}

var (
	thin   = pen{pale, 0.2, nil}
	plain  = pen{black, 0.25, nil}
	heavy  = pen{black, 0.5, nil}
	dashed = pen{accent, 0.3, []float64{1.6, 1.2}}
	axis   = pen{grey, 0.2, []float64{4, 1, 0.8, 1}}
	mark   = pen{accent, 0.3, nil}
)

// use makes a pen current on the canvas.
func (b *book) use(p pen) {
	c := b.doc.Canvas()
	c.SetDrawColor(p.ink.r, p.ink.g, p.ink.b)
	c.SetLineWidth(p.widthMM)
	c.SetLineCapStyle("butt")
	c.SetDashPattern(p.dashMM, 0)
}

// line draws a straight line.
func (b *book) line(x1, y1, x2, y2 float64, p pen) {
	b.use(p)
	b.doc.Canvas().Line(x1, y1, x2, y2)
}

// frame draws a rectangle's outline.
func (b *book) frame(r layout.Rect, p pen) {
	b.use(p)
	b.doc.Canvas().Rect(r.XMM, r.YMM, r.WidthMM, r.HeightMM, "D")
}

// fill fills a rectangle.
func (b *book) fill(r layout.Rect, ink shade) {
	b.doc.Canvas().SetFillColor(ink.r, ink.g, ink.b)
	b.doc.Canvas().Rect(r.XMM, r.YMM, r.WidthMM, r.HeightMM, "F")
}

// shape fills a polygon and, with a pen of some width, outlines it.
func (b *book) shape(ink shade, outline pen, points ...layout.Point) {
	c := b.doc.Canvas()
	c.SetFillColor(ink.r, ink.g, ink.b)
	how := "F"
	if outline.widthMM > 0 {
		b.use(outline)
		how = "DF"
	}
	corners := make([]gofpdf.PointType, len(points))
	for i, p := range points {
		corners[i] = gofpdf.PointType{X: p.XMM, Y: p.YMM}
	}
	c.Polygon(corners, how)
}

// outline draws a closed line through points.
func (b *book) outline(p pen, points []layout.Point) {
	b.use(p)
	c := b.doc.Canvas()
	c.MoveTo(points[0].XMM, points[0].YMM)
	for _, q := range points[1:] {
		c.LineTo(q.XMM, q.YMM)
	}
	c.ClosePath()
	c.DrawPath("D")
}

// ring draws a circle, filled.
func (b *book) ring(x, y, radius float64, ink shade, outline pen) {
	b.oval(x, y, radius, radius, ink, outline)
}

// oval draws an ellipse with level and upright semi-axes, filled.
func (b *book) oval(x, y, halfWidth, halfHeight float64, ink shade, outline pen) {
	b.doc.Canvas().SetFillColor(ink.r, ink.g, ink.b)
	b.use(outline)
	b.doc.Canvas().Ellipse(x, y, halfWidth, halfHeight, 0, "DF")
}

// disc draws a filled disc with a number in it.
func (b *book) disc(x, y, radius float64, text string) {
	b.ring(x, y, radius, accent, pen{white, 0.3, nil})
	s := boldLabel.in(white).at(radius * 3.4)
	for b.width(s, text) > 1.7*radius {
		s = s.at(s.pt * 0.9)
	}
	b.putMiddle(s, x, y+s.capMM()/2, text)
}

// arrow draws a line with a head at its end.
func (b *book) arrow(x1, y1, x2, y2, headMM float64, p pen) {
	long := math.Hypot(x2-x1, y2-y1)
	if long == 0 {
		return
	}
	ux, uy := (x2-x1)/long, (y2-y1)/long
	b.line(x1, y1, x2-ux*headMM*0.8, y2-uy*headMM*0.8, p)
	b.head(x2, y2, ux, uy, headMM, p.ink)
}

// head draws an arrow's head that points along the unit vector (ux, uy).
func (b *book) head(x, y, ux, uy, headMM float64, ink shade) {
	half := headMM * 0.34
	bx, by := x-ux*headMM, y-uy*headMM
	b.shape(ink, pen{}, layout.Point{XMM: x, YMM: y},
		layout.Point{XMM: bx - uy*half, YMM: by + ux*half}, layout.Point{XMM: bx + uy*half, YMM: by - ux*half})
}

// across draws a dimension between two uprights, its words on the line, or below it where they are too long.
func (b *book) across(x1, x2, y float64, text string) {
	b.line(x1, y-1.8, x1, y+1.8, plain)
	b.line(x2, y-1.8, x2, y+1.8, plain)
	b.arrow((x1+x2)/2, y, x1, y, min(2, (x2-x1)/2), plain)
	b.arrow((x1+x2)/2, y, x2, y, min(2, (x2-x1)/2), plain)
	if b.width(labelStyle, text) > x2-x1-6 {
		y += 4.4
	}
	b.tag(labelStyle, (x1+x2)/2, y, text)
}

// down draws a dimension between two levels, turned to read upwards.
func (b *book) down(x, y1, y2 float64, text string) {
	middle := (y1 + y2) / 2
	b.apart(func(c *gofpdf.Fpdf) {
		c.TransformBegin()
		c.TransformRotate(90, x, middle)
	}, func() { b.across(x-(y2-y1)/2, x+(y2-y1)/2, middle, text) }, (*gofpdf.Fpdf).TransformEnd)
}

// tag sets words on a white ground, with their middle at (x, y), so that they read on lines and pictures.
func (b *book) tag(s style, x, y float64, text string) {
	w, h := b.width(s, text)+1.8, s.capMM()+1.7
	b.fill(layout.Rect{XMM: x - w/2, YMM: y - h/2, WidthMM: w, HeightMM: h}, white)
	b.putMiddle(s, x, y+s.capMM()/2, text)
}

// lamp draws a lamp that shines along the unit vector (ux, uy).
func (b *book) lamp(x, y, ux, uy float64) {
	const radius, gap, ray = 2.2, 1.0, 3.0
	for _, turn := range []float64{-0.5, 0, 0.5} {
		sin, cos := math.Sincos(turn)
		vx, vy := ux*cos-uy*sin, ux*sin+uy*cos
		b.arrow(x+vx*(radius+gap), y+vy*(radius+gap), x+vx*(radius+gap+ray), y+vy*(radius+gap+ray), 1.5, mark)
	}
	b.ring(x, y, radius, white, pen{accent, 0.5, nil})
	b.ring(x, y, radius*0.4, accent, mark)
}

// apart draws inside a transformation or a clip, which start opens and end closes. Both give the canvas its
// old colours and pen back without gofpdf's noticing; everything here sets its own before it draws, except
// for the fill under text of the same colour.
func (b *book) apart(start func(*gofpdf.Fpdf), draw func(), end func(*gofpdf.Fpdf)) {
	c := b.doc.Canvas()
	start(c)
	draw()
	end(c)
	c.SetFillColor(white.r, white.g, white.b)
}
