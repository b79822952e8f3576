package job

import (
	"fmt"
	"image"
	"math"
)

// Crop is the part of the artwork that is the picture: its left and top edge, width and height as shares of the
// artwork's. The zero value is the whole.
type Crop struct{ X, Y, Width, Height float64 }

// leastCropPx is the least side of a part: fewer pixels are no picture.
const leastCropPx = 16

// Pixels is the part in whole pixels of an artwork of that size, upright.
func (c Crop) Pixels(widthPx, heightPx int) (image.Rectangle, error) {
	whole := image.Rect(0, 0, widthPx, heightPx)
	if c == (Crop{}) {
		return whole, nil
	}
	at := func(share float64, px int) int { return int(math.Round(share * float64(px))) }
	r := image.Rect(at(c.X, widthPx), at(c.Y, heightPx), at(c.X+c.Width, widthPx),
		at(c.Y+c.Height, heightPx)).Intersect(whole)
	if r.Dx() < leastCropPx || r.Dy() < leastCropPx {
		return r, WrongWords(fmt.Errorf("a crop of %g x %g leaves %dx%d pixels of %dx%d, too few to show anything\n"+
			"hint: take "+
			"a larger part", c.Width, c.Height, r.Dx(), r.Dy(), widthPx, heightPx))
	}
	return r, nil
}

// Proportions is the part's width over its height, for a whole of these proportions.
func (c Crop) Proportions(whole float64) float64 {
	if c == (Crop{}) {
		return whole
	}
	return whole * c.Width / c.Height
}
