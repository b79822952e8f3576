package main

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// drawTown draws the quays north of the haven, the houses behind them and the church with its clock.
func drawTown(d *pdf.Document) {
	pen := pdf.Pen{Shade: ink, WidthMM: 0.25}
	house := pdf.Shade{R: 214, G: 176, B: 120}
	for row := range 2 {
		for i := range 9 {
			at := layout.Point{XMM: 66 + 12*float64(i), YMM: 47.5 - 7*float64(row) + 3*math.Cos(float64(i-4)*0.5)}
			if row == 1 || i == 4 {
				continue // the title stands there
			}
			d.Fill(layout.Rect{XMM: at.XMM, YMM: at.YMM, WidthMM: 8, HeightMM: 4}, house)
			d.Frame(layout.Rect{XMM: at.XMM, YMM: at.YMM, WidthMM: 8, HeightMM: 4}, pen)
		}
	}
	quay := layout.Rect{XMM: 107, YMM: 54, WidthMM: 38, HeightMM: 9}
	d.Fill(quay, land)
	d.Frame(quay, pdf.Pen{Shade: ink, WidthMM: 0.5})
	drawHills(d)
}

// drawHills hatches the heights at both sides, each a few rings of short strokes that run downhill.
func drawHills(d *pdf.Document) {
	pen := pdf.Pen{Shade: grey, WidthMM: 0.25}
	for _, hill := range []layout.Point{{XMM: 26, YMM: 62}, {XMM: 22, YMM: 120}, {XMM: 214, YMM: 58}, {XMM: 220, YMM: 128},
		{XMM: 24, YMM: 162}, {XMM: 208, YMM: 160}} {
		var strokes []pdf.Line
		for ring := 1; ring <= 2; ring++ {
			n := 14 * ring
			for k := range n {
				a := 2 * math.Pi * (float64(k) + 0.5*float64(ring)) / float64(n)
				in, out := 3.4*float64(ring), 3.4*float64(ring)+2.2
				strokes = append(strokes, pdf.Line{
					From: layout.Point{XMM: hill.XMM + in*math.Cos(a), YMM: hill.YMM + 0.7*in*math.Sin(a)},
					To:   layout.Point{XMM: hill.XMM + out*math.Cos(a), YMM: hill.YMM + 0.7*out*math.Sin(a)},
				})
			}
		}
		d.Lines(strokes, pen)
	}
}
