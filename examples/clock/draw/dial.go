package main

import (
	"image"
	"math"
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
	pic := newPicture(sidePx, wall)
	bosses(pic)
	rim(pic)
	pic.fill(disc(0, 0, glassR), glass)
	chart(pic)
	words(pic)
	rings(pic)
	compass(pic)
	cutter(pic)
	anchor(pic)
	hands(pic)
	return pic.image()
}

// rim is the iron ring with its brass edges and bolts.
func rim(pic *picture) {
	pic.fill(disc(0, 0, dialR), upward(-dialR, 0x6e4426, dialR, 0xffdc98))
	pic.fill(disc(0, 0, dialR-14), upward(-dialR, 0x0b1429, dialR, 0x2c3d66))
	pic.fill(disc(0, 0, glassR+16), upward(-glassR, 0xffd890, glassR, 0xb4713a))
	for i := range 24 {
		at := disc(0, (dialR+glassR)/2, 13).turned(float64(i) * quarter / 6)
		pic.fill(at.moved(3, -4), flat(0x070d1d))
		pic.fill(at, flat(0xe0a561))
	}
}

// glass is the dial, lit from behind: brightest in the middle.
func glass(x, y float64) ink {
	r := math.Hypot(x, y) / glassR
	c := rgb(0xfff6dc).to(rgb(0xffe3a6), smooth(0, 0.75, r))
	c = c.to(rgb(0xffbf6c), smooth(0.6, 1.02, r))
	return c.to(rgb(0xb4602e), 0.55*smooth(0.975, 1, r)) // the rim's shadow
}

// chart is the square grid inside the inner ring.
func chart(pic *picture) {
	const stepU = 64.0
	fine, bold := rgb(0xc98c4c).alpha(0.55), rgb(0xb06c34).alpha(0.85)
	for i := -12; i <= 12; i++ {
		at := stepU * float64(i)
		half := math.Sqrt((chartR-10)*(chartR-10) - at*at) // ends under the ring
		width, c := 4.0, fine
		if i%4 == 0 {
			width, c = 6, bold
		}
		with := func(_, _ float64) ink { return c }
		pic.fill(bar(width, -half, at, half, at), with)
		pic.fill(bar(width, at, -half, at, half), with)
	}
}

// rings are the minutes' track with its marks, the numerals, and the ring round the chart.
func rings(pic *picture) {
	marks := together(ring(trackR-5, trackR), ring(trackInR, trackInR+5))
	for i := range 60 {
		angle := float64(i) * quarter / 15
		if i%5 == 0 {
			pic.fill(bar(30, 0, trackInR-14, 0, trackR).turned(angle), flat(coral))
			continue
		}
		marks = append(marks, bar(9, 0, trackInR, 0, trackR).turned(angle)...)
	}
	pic.fill(marks, flat(navy))
	for n := 1; n <= 12; n++ {
		sin, cos := math.Sincos(float64(n) * quarter / 3)
		pic.fill(numeral(n, numeralR*sin, numeralR*cos, 244), flat(navy))
	}
	pic.fill(ring(chartR-16, chartR), flat(coral))
	pic.fill(ring(chartR-30, chartR-25), flat(navy))
}
