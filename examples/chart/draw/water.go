package main

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// The page, and the chart in its frame.
const (
	sideMM  = 240.0
	frameMM = 9.0
)

// Colours as printed charts have them: land buff, shoal water blue, deep water white.
var (
	paper   = pdf.Shade{R: 252, G: 251, B: 246}
	land    = pdf.Shade{R: 240, G: 219, B: 168}
	shore   = pdf.Shade{R: 150, G: 196, B: 222}
	shoal   = pdf.Shade{R: 191, G: 220, B: 236}
	deeper  = pdf.Shade{R: 222, G: 238, B: 246}
	ink     = pdf.Shade{R: 28, G: 30, B: 38}
	magenta = pdf.Shade{R: 176, G: 38, B: 118}
	grey    = pdf.Shade{R: 120, G: 116, B: 104}
)

// haven is the shore of the haven and the sound south of it, from the west round by north to the east.
var haven = []layout.Point{
	{XMM: -20, YMM: 205}, {XMM: 22, YMM: 190}, {XMM: 44, YMM: 184}, {XMM: 58, YMM: 168}, {XMM: 44, YMM: 146},
	{XMM: 38, YMM: 118}, {XMM: 50, YMM: 88}, {XMM: 74, YMM: 66}, {XMM: 98, YMM: 56}, {XMM: 124, YMM: 58},
	{XMM: 150, YMM: 54}, {XMM: 176, YMM: 72}, {XMM: 194, YMM: 100}, {XMM: 190, YMM: 132}, {XMM: 178, YMM: 152},
	{XMM: 168, YMM: 170}, {XMM: 184, YMM: 182}, {XMM: 214, YMM: 186}, {XMM: 262, YMM: 198},
}

// towards moves the shore's points into the water: toward the haven's middle where they lie around it, down the page
// where they are of the sound.
func towards(points []layout.Point, byMM float64) []layout.Point {
	middle := layout.Point{XMM: 118, YMM: 122}
	moved := make([]layout.Point, len(points))
	for i, p := range points {
		dx, dy := middle.XMM-p.XMM, middle.YMM-p.YMM
		if p.YMM > 160 {
			dx, dy = (middle.XMM-p.XMM)*0.25, 60
		}
		n := math.Hypot(dx, dy)
		moved[i] = layout.Point{XMM: p.XMM + dx/n*byMM, YMM: p.YMM + dy/n*byMM}
	}
	return moved
}

// smooth is a curve through the points (Catmull and Rom 1974, recalled from memory), with the small bays and points
// that a shore has, of an amplitude in millimetres.
func smooth(points []layout.Point, bayMM float64) []layout.Point {
	const steps = 24
	at := func(i int) layout.Point { return points[max(0, min(len(points)-1, i))] }
	var curve []layout.Point
	for i := range len(points) - 1 {
		a, b, c, d := at(i-1), at(i), at(i+1), at(i+2)
		for k := range steps {
			t := float64(k) / steps
			spline := func(a, b, c, d float64) float64 {
				return 0.5 * (2*b + (c-a)*t + (2*a-5*b+4*c-d)*t*t + (3*b-a-3*c+d)*t*t*t)
			}
			s := float64(i*steps + k)
			bay := bayMM * (math.Sin(s*0.41) + 0.6*math.Sin(s*0.97+1) + 0.4*math.Sin(s*2.3+2))
			curve = append(curve, layout.Point{
				XMM: spline(a.XMM, b.XMM, c.XMM, d.XMM) + bay,
				YMM: spline(a.YMM, b.YMM, c.YMM, d.YMM) + bay*math.Sin(s*0.7),
			})
		}
	}
	return curve
}

// drawWater draws land, and on it the water in steps of its depth.
func drawWater(d *pdf.Document) {
	d.Fill(layout.Rect{WidthMM: sideMM, HeightMM: sideMM}, land)
	south := []layout.Point{{XMM: 262, YMM: 260}, {XMM: -20, YMM: 260}}
	for _, depth := range []struct {
		inMM, bayMM float64
		fill        pdf.Shade
		line        pdf.Pen
	}{
		{0, 0.7, shore, pdf.Pen{Shade: ink, WidthMM: 0.5}},
		{6, 0.6, shoal, pdf.Pen{Shade: grey, WidthMM: 0.15}},
		{14, 0.5, deeper, pdf.Pen{Shade: grey, WidthMM: 0.15}},
		{25, 0.4, paper, pdf.Pen{Shade: grey, WidthMM: 0.15}},
	} {
		d.Polygon(depth.fill, depth.line, append(smooth(towards(haven, depth.inMM), depth.bayMM), south...)...)
	}
	drawMoles(d)
}

// drawMoles draws the two moles that close the haven, and the lights on their heads.
func drawMoles(d *pdf.Document) {
	west := []layout.Point{{XMM: 52, YMM: 171}, {XMM: 72, YMM: 163}, {XMM: 92, YMM: 166}}
	east := []layout.Point{{XMM: 173, YMM: 164}, {XMM: 150, YMM: 158}, {XMM: 128, YMM: 166}}
	for _, mole := range [][]layout.Point{west, east} {
		var lines []pdf.Line
		curve := smooth(mole, 0)
		curve = append(curve, mole[len(mole)-1])
		for i := range len(curve) - 1 {
			lines = append(lines, pdf.Line{From: curve[i], To: curve[i+1]})
		}
		d.Lines(lines, pdf.Pen{Shade: ink, WidthMM: 3}, pdf.Pen{Shade: land, WidthMM: 2.2})
	}
}
