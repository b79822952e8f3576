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
	b := c.picture.Rect
	snapped := make([]Path, len(paths))
	for i, path := range paths {
		snapped[i] = path.snapped()
	}
	clipped := within(b, snapped)
	box := bounds(clipped).Intersect(b) // cutting may leave a point outside by rounding
	for y := box.Min.Y; y < box.Max.Y; y += blockPx {
		for x := box.Min.X; x < box.Max.X; x += blockPx {
			c.fillBlock(colour, image.Rect(x, y, min(x+blockPx, box.Max.X), min(y+blockPx, box.Max.Y)), clipped)
		}
	}
}

// blockPx is the largest picture that the rasteriser does by whole numbers. A larger one it does by fractions, whose
// sums come out otherwise on one processor than on another.
const blockPx = 512

// fillBlock fills what of the paths lies in a block of the picture.
func (c Canvas) fillBlock(colour color.RGBA, block image.Rectangle, paths []Path) {
	raster := vector.NewRasterizer(block.Dx(), block.Dy())
	raster.DrawOp = draw.Over
	for _, path := range within(block, paths) {
		for i, p := range path {
			x, y := float32(p.X-float64(block.Min.X)), float32(p.Y-float64(block.Min.Y))
			if i == 0 {
				raster.MoveTo(x, y)
			} else {
				raster.LineTo(x, y)
			}
		}
		raster.ClosePath()
	}
	raster.Draw(c.picture, block, image.NewUniform(colour), image.Point{})
}

// within is what of the paths lies in a part of the picture: the rasteriser's fixed-point numbers overflow far outside
// of it.
func within(part image.Rectangle, paths []Path) []Path {
	r := Rect{float64(part.Min.X), float64(part.Min.Y), float64(part.Max.X), float64(part.Max.Y)}
	clipped := make([]Path, len(paths))
	for i, path := range paths {
		clipped[i] = r.clipped(path)
	}
	return clipped
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
