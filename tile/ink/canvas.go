package ink

import (
	"image"
	"image/color"
	"image/draw"
	"math"

	"golang.org/x/image/vector"
)

// Canvas is the picture drawn on.
type Canvas struct{ picture *image.RGBA }

// On draws on a picture that the caller keeps.
func On(picture *image.RGBA) Canvas { return Canvas{picture} }

// Within is the part of the canvas in a rectangle of whole pixels: what is drawn on it is clipped there.
// Coordinates stay the same.
func (c Canvas) Within(r image.Rectangle) Canvas {
	return Canvas{c.picture.SubImage(r).(*image.RGBA)}
}

// Fill paints the inside of the paths, each closed if it is not: what they go round more often one way than the other.
func (c Canvas) Fill(colour color.RGBA, paths ...Path) {
	// The rasteriser's fixed-point numbers overflow far outside its picture, so nothing outside goes in.
	b := c.picture.Rect
	picture := Rect{float64(b.Min.X), float64(b.Min.Y), float64(b.Max.X), float64(b.Max.Y)}
	clipped := make([]Path, len(paths))
	for i, path := range paths {
		clipped[i] = picture.clipped(path)
	}
	box := bounds(clipped).Intersect(b) // cutting may leave a point outside by rounding
	if box.Empty() {
		return
	}
	raster := vector.NewRasterizer(box.Dx(), box.Dy())
	for _, path := range clipped {
		for i, p := range path {
			x, y := float32(p.X-float64(box.Min.X)), float32(p.Y-float64(box.Min.Y))
			if i == 0 {
				raster.MoveTo(x, y)
			} else {
				raster.LineTo(x, y)
			}
		}
		raster.ClosePath()
	}
	raster.DrawOp = draw.Over
	raster.Draw(c.picture, box, image.NewUniform(colour), image.Point{})
}

// bounds is the smallest rectangle of whole pixels that holds the paths.
func bounds(paths []Path) image.Rectangle {
	left, top := math.Inf(1), math.Inf(1)
	right, bottom := math.Inf(-1), math.Inf(-1)
	for _, path := range paths {
		for _, p := range path {
			left, top = min(left, p.X), min(top, p.Y)
			right, bottom = max(right, p.X), max(bottom, p.Y)
		}
	}
	if !(left < right && top < bottom) {
		return image.Rectangle{}
	}
	return image.Rect(int(math.Floor(left)), int(math.Floor(top)), int(math.Ceil(right)), int(math.Ceil(bottom)))
}
