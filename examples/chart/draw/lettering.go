package main

import (
	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// drawLettering writes the names, the largest in the middle, where a drop shows them largest.
func drawLettering(d *pdf.Document) {
	name := pdf.Sans(58).Bold().In(ink)
	d.PutMiddle(name, sideMM/2, 110, "GULL")
	d.PutMiddle(name, sideMM/2, 129, "HAVEN")
	d.PutMiddle(pdf.Sans(19).In(magenta), sideMM/2, 141, "soundings in metres")
	d.PutMiddle(pdf.Sans(26).In(ink), sideMM/2, 192, "Gull Sound")
	d.PutMiddle(pdf.Sans(15).Bold().In(ink), 126, 71, "QUAY 7")
	d.PutMiddle(pdf.Sans(34).Bold().In(ink), sideMM/2, 36, "THE HARBOUR")
	d.PutMiddle(pdf.Sans(15).In(ink), sideMM/2, 45, "a chart that no one should steer by")
	drawScale(d, layout.Point{XMM: 24, YMM: 214})
}

// drawScale draws a bar of five cables.
func drawScale(d *pdf.Document, at layout.Point) {
	const cables, cableMM, highMM = 5, 10.0, 2.2
	pen := pdf.Pen{Shade: ink, WidthMM: 0.3}
	for i := range cables {
		fill := ink
		if i%2 == 1 {
			fill = paper
		}
		r := layout.Rect{XMM: at.XMM + cableMM*float64(i), YMM: at.YMM, WidthMM: cableMM, HeightMM: highMM}
		d.Fill(r, fill)
		d.Frame(r, pen)
	}
	small := pdf.Sans(11).In(ink)
	d.PutMiddle(small, at.XMM, at.YMM-1.6, "0")
	d.PutMiddle(small, at.XMM+cables*cableMM, at.YMM-1.6, "5")
	d.PutMiddle(small, at.XMM+cables*cableMM/2, at.YMM+7, "cables")
}
