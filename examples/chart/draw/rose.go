package main

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// drawRose draws the compass rose: a circle in degrees, and a star of four long rays and four short ones.
func drawRose(d *pdf.Document) {
	middle := layout.Point{XMM: 194, YMM: 208}
	const outerMM, innerMM = 19.0, 16.5
	at := func(degrees, radiusMM float64) layout.Point {
		a := (degrees - 90) * math.Pi / 180
		return layout.Point{XMM: middle.XMM + radiusMM*math.Cos(a), YMM: middle.YMM + radiusMM*math.Sin(a)}
	}
	var ticks []pdf.Line
	for degrees := 0; degrees < 360; degrees += 5 {
		from := innerMM
		if degrees%15 == 0 {
			from = innerMM - 1.4
		}
		ticks = append(ticks, pdf.Line{From: at(float64(degrees), from), To: at(float64(degrees), outerMM-0.6)})
	}
	thin := pdf.Pen{Shade: magenta, WidthMM: 0.3}
	for _, r := range []float64{outerMM, innerMM} {
		var ring []layout.Point
		for degrees := range 120 {
			ring = append(ring, at(3*float64(degrees), r))
		}
		d.Outline(ring, thin)
	}
	d.Lines(ticks, thin)
	for _, ray := range []struct{ first, lengthMM float64 }{{45, 9}, {0, 15}} {
		for k := range 4 {
			towards := ray.first + 90*float64(k)
			tip, left, right := at(towards, ray.lengthMM), at(towards-45, 3), at(towards+45, 3)
			d.Polygon(magenta, thin, middle, left, tip)
			d.Polygon(paper, thin, middle, tip, right)
		}
	}
	d.PutMiddle(pdf.Sans(17).Bold().In(magenta), middle.XMM, middle.YMM-outerMM-1.2, "N")
}
