package main

import (
	"image"
	"math"

	"dropsheet/examples/paint"
)

// The sun, as its centre and radius in units; it is far behind everything, so what faces us is in shade and
// edges toward it are lit.
const (
	sunX, sunY = 2395.0, 1842.0
	sunR       = 92.0
)

// render paints the harbour widthPx wide and two thirds as high.
func render(widthPx int) *image.RGBA {
	pxPerU := float64(widthPx) / canvasW
	heightPx := widthPx * 2 / 3
	horizonPx := int(math.Floor(horizonU * pxPerU))

	mirrored := &picture{paint.NewCanvas(widthPx, heightPx-horizonPx, float64(horizonPx)/pxPerU, pxPerU), true}
	mirrored.Rows(0, heightPx-horizonPx, func(x, y float64) paint.Ink { return sky(x, 2*horizonU-y) })
	paintThings(mirrored)

	pic := &picture{paint.NewCanvas(widthPx, heightPx, 0, pxPerU), false}
	pic.Rows(0, horizonPx, starry)
	hills(pic)
	pic.Rows(horizonPx, heightPx, func(x, y float64) paint.Ink { return water(mirrored, x, y) })
	paintThings(pic)
	return pic.Image(77)
}

// paintThings paints all that stands above the water, the farthest first.
func paintThings(pic *picture) {
	if pic.mirror {
		hills(pic)
	}
	gulls(pic)
	farSail(pic)
	mole(pic)
	lighthouse(pic)
	cutter(pic)
	shed(pic)
	crane(pic)
	quay(pic)
	warehouse(pic)
	quayside(pic)
	fishingBoat(pic)
	buoy(pic)
	rowingBoat(pic)
}
