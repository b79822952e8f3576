package main

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// drawMarks draws the lights on the moles, the buoys of the way in, and that way.
func drawMarks(d *pdf.Document) {
	way := pdf.Pen{Shade: magenta, WidthMM: 0.5, DashMM: []float64{4, 2}}
	d.Line(110, 226, 110, 197, way)
	d.Line(110, 183, 110, 150, way)
	drawLight(d, layout.Point{XMM: 92, YMM: 166})
	drawLight(d, layout.Point{XMM: 128, YMM: 166})
	for _, y := range []float64{178, 202, 220} {
		drawBuoy(d, layout.Point{XMM: 102, YMM: y}, pdf.Shade{R: 196, G: 40, B: 40})
		drawBuoy(d, layout.Point{XMM: 118, YMM: y}, pdf.Shade{R: 30, G: 130, B: 70})
	}
	anchor := pdf.Sans(15).In(magenta)
	d.PutMiddle(anchor, 76, 90, "anchorage")
	d.PutMiddle(anchor, 162, 90, "no anchoring")
}

// drawLight draws a star for a light, and the flare that charts give it.
func drawLight(d *pdf.Document, at layout.Point) {
	const tipsMM, notchesMM, points = 3.0, 1.2, 5
	var star []layout.Point
	for k := range 2 * points {
		r := tipsMM
		if k%2 == 1 {
			r = notchesMM
		}
		a := math.Pi * (float64(k)/points - 0.5)
		star = append(star, layout.Point{XMM: at.XMM + r*math.Cos(a), YMM: at.YMM + r*math.Sin(a)})
	}
	flare := []layout.Point{at, {XMM: at.XMM + 5, YMM: at.YMM + 6.5}, {XMM: at.XMM + 6.8, YMM: at.YMM + 4.6}}
	d.Polygon(magenta, pdf.Pen{}, flare...)
	d.Polygon(paper, pdf.Pen{Shade: ink, WidthMM: 0.3}, star...)
}

// drawBuoy draws a buoy on its mooring.
func drawBuoy(d *pdf.Document, at layout.Point, fill pdf.Shade) {
	pen := pdf.Pen{Shade: ink, WidthMM: 0.25}
	d.Polygon(fill, pen, layout.Point{XMM: at.XMM - 1.3, YMM: at.YMM}, layout.Point{XMM: at.XMM + 1.3, YMM: at.YMM},
		layout.Point{XMM: at.XMM + 0.8, YMM: at.YMM - 4}, layout.Point{XMM: at.XMM - 0.8, YMM: at.YMM - 4})
	d.Oval(at.XMM, at.YMM, 0.7, 0.7, paper, pen)
}
