package main

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// kept are places where no sounding is written, since something else is.
var kept = []layout.Rect{
	{XMM: 80, YMM: 92, WidthMM: 80, HeightMM: 42},   // the haven's name
	{XMM: 84, YMM: 132, WidthMM: 72, HeightMM: 14},  // what the figures are
	{XMM: 18, YMM: 208, WidthMM: 64, HeightMM: 20},  // the scale
	{XMM: 90, YMM: 183, WidthMM: 60, HeightMM: 15},  // the sound's name
	{XMM: 170, YMM: 182, WidthMM: 48, HeightMM: 50}, // the rose
	{XMM: 50, YMM: 156, WidthMM: 48, HeightMM: 20},  // the moles
	{XMM: 124, YMM: 154, WidthMM: 52, HeightMM: 20},
	{XMM: 98, YMM: 140, WidthMM: 24, HeightMM: 95}, // the way in
	{XMM: 104, YMM: 50, WidthMM: 44, HeightMM: 25}, // the quay
	{XMM: 60, YMM: 83, WidthMM: 34, HeightMM: 11},  // where to anchor
	{XMM: 142, YMM: 83, WidthMM: 40, HeightMM: 11}, // and where not
}

// drawSoundings writes depths over the water, deeper the further from the shore.
func drawSoundings(d *pdf.Document) {
	style := pdf.Sans(9).In(ink)
	shoreLine := smooth(haven, 0)
	for row := range 24 {
		for column := range 22 {
			at := layout.Point{
				XMM: 14 + 10.4*float64(column) + 2.4*math.Sin(float64(row*7+column*3)),
				YMM: 62 + 7.6*float64(row) + 1.6*math.Sin(float64(row*5-column*4)),
			}
			offMM := offShoreMM(shoreLine, at)
			if offMM < 4 || at.YMM > sideMM-frameMM-4 || inAny(kept, at) {
				continue
			}
			depthM := offMM*0.42 + 1.1*math.Sin(at.XMM*0.21+at.YMM*0.13)
			d.PutMiddle(style, at.XMM, at.YMM, fmt.Sprintf("%.0f", max(1, depthM)))
		}
	}
}

// offShoreMM is how far a point of the water lies from the shore; below 0 on land, by the rule of odd crossings.
func offShoreMM(line []layout.Point, p layout.Point) float64 {
	nearest, water := math.Inf(1), false
	for i := range len(line) - 1 {
		a, b := line[i], line[i+1]
		nearest = min(nearest, math.Hypot(p.XMM-a.XMM, p.YMM-a.YMM))
		// a ray up from the point: on the water side it crosses the shore once, or three times
		if (a.XMM > p.XMM) != (b.XMM > p.XMM) &&
			p.YMM > a.YMM+(b.YMM-a.YMM)*(p.XMM-a.XMM)/(b.XMM-a.XMM) {
			water = !water
		}
	}
	if !water {
		return -nearest
	}
	return nearest
}

func inAny(places []layout.Rect, p layout.Point) bool {
	for _, r := range places {
		if p.XMM > r.XMM && p.XMM < r.RightMM() && p.YMM > r.YMM && p.YMM < r.BottomMM() {
			return true
		}
	}
	return false
}
