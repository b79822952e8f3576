package guide

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// Shades of the guide. The accent is as dark as a dark grey, so that it reads on a black-and-white print.
var (
	black = pdf.Shade{R: 28, G: 30, B: 33}
	grey  = pdf.Shade{R: 92, G: 97, B: 102}
	pale  = pdf.Shade{R: 196, G: 200, B: 204}
	tint  = pdf.Shade{R: 239, G: 242, B: 243}
	white = pdf.Shade{R: 255, G: 255, B: 255}
	// bareShade stands for board without a sheet: light, but darker than paper.
	bareShade = pdf.Shade{R: 214, G: 219, B: 222}
	accent    = pdf.Shade{R: 0, G: 88, B: 110}
)

// pen is a pen of some width and dashes, in guide mm.
func pen(shade pdf.Shade, widthMM float64, dashMM ...float64) pdf.Pen {
	return pdf.Pen{Shade: shade, WidthMM: widthMM, DashMM: dashMM}
}

var (
	thin   = pen(pale, 0.2)
	plain  = pen(black, 0.25)
	heavy  = pen(black, 0.5)
	dashed = pen(accent, 0.3, 1.6, 1.2)
	axis   = pen(grey, 0.2, 4, 1, 0.8, 1)
	mark   = pen(accent, 0.3)
)

// ring draws a circle, filled.
func (b *book) ring(x, y, radius float64, fill pdf.Shade, outline pdf.Pen) {
	b.Oval(x, y, radius, radius, fill, outline)
}

// disc draws a filled disc with a number in it.
func (b *book) disc(x, y, radius float64, text string) {
	b.ring(x, y, radius, accent, pen(white, 0.3))
	s := boldLabel.In(white).At(radius * 3.4)
	for s.Width(text) > 1.7*radius {
		s = s.At(s.Pt * 0.9)
	}
	b.PutMiddle(s, x, y+s.CapMM()/2, text)
}

// arrow draws a line with a head at its end.
func (b *book) arrow(x1, y1, x2, y2, headMM float64, p pdf.Pen) {
	long := math.Hypot(x2-x1, y2-y1)
	if long == 0 {
		return
	}
	ux, uy := (x2-x1)/long, (y2-y1)/long
	b.Line(x1, y1, x2-ux*headMM*0.8, y2-uy*headMM*0.8, p)
	b.head(x2, y2, ux, uy, headMM, p.Shade)
}

// head draws an arrow's head that points along the unit vector (ux, uy).
func (b *book) head(x, y, ux, uy, headMM float64, ink pdf.Shade) {
	half := headMM * 0.34
	bx, by := x-ux*headMM, y-uy*headMM
	b.Polygon(ink, pdf.Pen{}, layout.Point{XMM: x, YMM: y},
		layout.Point{XMM: bx - uy*half, YMM: by + ux*half}, layout.Point{XMM: bx + uy*half, YMM: by - ux*half})
}

// across draws a dimension between two uprights, its words on the line, or below it where they are too long.
func (b *book) across(x1, x2, y float64, text string) {
	b.Line(x1, y-1.8, x1, y+1.8, plain)
	b.Line(x2, y-1.8, x2, y+1.8, plain)
	b.arrow((x1+x2)/2, y, x1, y, min(2, (x2-x1)/2), plain)
	b.arrow((x1+x2)/2, y, x2, y, min(2, (x2-x1)/2), plain)
	if labelStyle.Width(text) > x2-x1-6 {
		y += 4.4
	}
	b.tag(labelStyle, (x1+x2)/2, y, text)
}

// down draws a dimension between two levels, turned to read upwards.
func (b *book) down(x, y1, y2 float64, text string) {
	middle := (y1 + y2) / 2
	b.Turned(x, middle, func() { b.across(x-(y2-y1)/2, x+(y2-y1)/2, middle, text) })
}

// tag sets words on a white ground, with their middle at (x, y), so that they read on lines and pictures.
func (b *book) tag(s pdf.Style, x, y float64, text string) {
	w, h := s.Width(text)+1.8, s.CapMM()+1.7
	b.Fill(layout.Rect{XMM: x - w/2, YMM: y - h/2, WidthMM: w, HeightMM: h}, white)
	b.PutMiddle(s, x, y+s.CapMM()/2, text)
}

// lamp draws a lamp that shines along the unit vector (ux, uy).
func (b *book) lamp(x, y, ux, uy float64) {
	const radius, gap, ray = 2.2, 1.0, 3.0
	for _, turn := range []float64{-0.5, 0, 0.5} {
		sin, cos := math.Sincos(turn)
		vx, vy := ux*cos-uy*sin, ux*sin+uy*cos
		b.arrow(x+vx*(radius+gap), y+vy*(radius+gap), x+vx*(radius+gap+ray), y+vy*(radius+gap+ray), 1.5, mark)
	}
	b.ring(x, y, radius, white, pen(accent, 0.5))
	b.ring(x, y, radius*0.4, accent, mark)
}
