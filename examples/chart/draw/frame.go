package main

import (
	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// drawFrame covers what runs past the chart and draws its border, black and white by turns as charts count minutes.
func drawFrame(d *pdf.Document) {
	const pastMM = 1.0 // the page's edge, for readers that draw a last pixel in part
	for _, r := range []layout.Rect{
		{WidthMM: sideMM + pastMM, HeightMM: frameMM},
		{YMM: sideMM - frameMM, WidthMM: sideMM + pastMM, HeightMM: frameMM + pastMM},
		{WidthMM: frameMM, HeightMM: sideMM},
		{XMM: sideMM - frameMM, WidthMM: frameMM + pastMM, HeightMM: sideMM},
	} {
		d.Fill(r, paper)
	}
	const minutes, wideMM = 12, 2.4
	stepMM := (sideMM - 2*frameMM) / minutes
	for i := range minutes {
		if i%2 == 1 {
			continue
		}
		along := frameMM + stepMM*float64(i)
		d.Fill(layout.Rect{XMM: along, YMM: frameMM - wideMM, WidthMM: stepMM, HeightMM: wideMM}, ink)
		d.Fill(layout.Rect{XMM: along, YMM: sideMM - frameMM, WidthMM: stepMM, HeightMM: wideMM}, ink)
		d.Fill(layout.Rect{XMM: frameMM - wideMM, YMM: along, WidthMM: wideMM, HeightMM: stepMM}, ink)
		d.Fill(layout.Rect{XMM: sideMM - frameMM, YMM: along, WidthMM: wideMM, HeightMM: stepMM}, ink)
	}
	for _, outMM := range []float64{0, wideMM, wideMM + 1.2} {
		d.Frame(layout.Rect{XMM: frameMM, YMM: frameMM, WidthMM: sideMM - 2*frameMM, HeightMM: sideMM - 2*frameMM}.
			Grow(layout.Sides{LeftMM: outMM, TopMM: outMM, RightMM: outMM, BottomMM: outMM}), pdf.Pen{Shade: ink, WidthMM: 0.35})
	}
}
