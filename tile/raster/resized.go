package raster

import (
	"image"

	"dropsheet/flip"
)

// Resized is a picture, *image.Gray or an opaque *image.RGBA, shrunk or grown to a size in pixels. It is filtered as
// sheets are, in whole numbers, which come out the same on every kind of processor.
func Resized(m image.Image, widthPx, heightPx int) image.Image {
	whole := image.Rect(0, 0, widthPx, heightPx)
	return newSource(m, flip.Turn{}, flip.Turn{}, Grid{widthPx, heightPx}, gray(0xff)).Cut(whole)
}
