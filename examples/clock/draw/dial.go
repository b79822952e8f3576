package main

import (
	"image"
	"math"

	"dropsheet/examples/paint"
)

// The canvas in units (see the package comment).
const (
	canvasU = 3000
	halfU   = canvasU / 2.0
)

// The dial's rings, by their radii in units. The rim ends 2 % short of the picture's sides.
const (
	dialR    = 0.98 * halfU
	glassR   = 1368.0
	trackR   = 1338.0 // the minutes, outer edge and inner
	trackInR = 1284.0
	numeralR = 1058.0
	chartR   = 832.0 // outside of the ring round the chart
)

// The colours that come again.
const (
	navy  = 0x10203f
	coral = 0xd2482c
)

// render paints the clock sidePx wide and high.
func render(sidePx int) *image.RGBA {
	canvas := paint.NewCanvas(sidePx, sidePx, 0, float64(sidePx)/canvasU)
	canvas.Rows(0, sidePx, func(x, y float64) paint.Ink { return wall(x-halfU, halfU-y) })
	dial := paint.Place{Canvas: canvas, XU: halfU, YU: halfU, Scale: 1, Up: -1} // the dial's centre
	bosses(dial)
	rim(dial)
	dial.Fill(disc(0, 0, glassR), glass)
	chart(dial)
	words(dial)
	rings(dial)
	compass(dial)
	cutter(dial)
	anchor(dial)
	hands(dial)
	return canvas.Image(0)
}

// rim is the iron ring with its brass edges and bolts.
func rim(dial paint.Place) {
	dial.Fill(disc(0, 0, dialR), paint.Upward(-dialR, 0x6e4426, dialR, 0xffdc98))
	dial.Fill(disc(0, 0, dialR-14), paint.Upward(-dialR, 0x0b1429, dialR, 0x2c3d66))
	dial.Fill(disc(0, 0, glassR+16), paint.Upward(-glassR, 0xffd890, glassR, 0xb4713a))
	for i := range 24 {
		at := disc(0, (dialR+glassR)/2, 13).Turned(float64(i) * quarter / 6)
		dial.Fill(at.Moved(3, -4), paint.Flat(0x070d1d))
		dial.Fill(at, paint.Flat(0xe0a561))
	}
}

// glass is the dial, lit from behind: brightest in the middle.
func glass(x, y float64) paint.Ink {
	r := math.Hypot(x, y) / glassR
	c := paint.RGB(0xfff6dc).To(paint.RGB(0xffe3a6), paint.Smooth(0, 0.75, r))
	c = c.To(paint.RGB(0xffbf6c), paint.Smooth(0.6, 1.02, r))
	return c.To(paint.RGB(0xb4602e), 0.55*paint.Smooth(0.975, 1, r)) // the rim's shadow
}

// chart is the square grid inside the inner ring.
func chart(dial paint.Place) {
	const stepU = 64.0
	fine, bold := paint.RGB(0xc98c4c).Alpha(0.55), paint.RGB(0xb06c34).Alpha(0.85)
	for i := -12; i <= 12; i++ {
		at := stepU * float64(i)
		half := math.Sqrt((chartR-10)*(chartR-10) - at*at) // ends under the ring
		width, c := 4.0, fine
		if i%4 == 0 {
			width, c = 6, bold
		}
		with := func(_, _ float64) paint.Ink { return c }
		dial.Fill(bar(width, -half, at, half, at), with)
		dial.Fill(bar(width, at, -half, at, half), with)
	}
}

// rings are the minutes' track with its marks, the numerals, and the ring round the chart.
func rings(dial paint.Place) {
	marks := paint.Together(ring(trackR-5, trackR), ring(trackInR, trackInR+5))
	for i := range 60 {
		angle := float64(i) * quarter / 15
		if i%5 == 0 {
			dial.Fill(bar(30, 0, trackInR-14, 0, trackR).Turned(angle), paint.Flat(coral))
			continue
		}
		marks = append(marks, bar(9, 0, trackInR, 0, trackR).Turned(angle)...)
	}
	dial.Fill(marks, paint.Flat(navy))
	for n := 1; n <= 12; n++ {
		sin, cos := math.Sincos(float64(n) * quarter / 3)
		dial.Fill(numeral(n, numeralR*sin, numeralR*cos, 244), paint.Flat(navy))
	}
	dial.Fill(ring(chartR-16, chartR), paint.Flat(coral))
	dial.Fill(ring(chartR-30, chartR-25), paint.Flat(navy))
}
