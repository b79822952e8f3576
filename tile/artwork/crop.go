package artwork

import (
	"fmt"
	"image"
)

// Crop is a part of the picture: the pixels of an upright rectangle, which shares its memory. It is an error
// when the picture does not hold it.
func (p *Picture) Crop(upright image.Rectangle) (*Picture, error) {
	w, h := p.Size()
	if upright.Empty() || !upright.In(image.Rect(0, 0, w, h)) {
		return nil, fmt.Errorf("a part from %d,%d to %d,%d is not in a picture of %dx%d pixels", upright.Min.X,
			upright.Min.Y, upright.Max.X, upright.Max.Y, w, h)
	}
	stored := p.Image.Bounds()
	x0, y0 := p.Upright.Source(upright.Min.X, upright.Min.Y, stored.Dx(), stored.Dy())
	x1, y1 := p.Upright.Source(upright.Max.X-1, upright.Max.Y-1, stored.Dx(), stored.Dy())
	part := image.Rect(min(x0, x1), min(y0, y1), max(x0, x1)+1, max(y0, y1)+1).Add(stored.Min)
	out := *p
	out.Image = p.Image.(interface {
		SubImage(image.Rectangle) image.Image
	}).SubImage(part)
	return &out, nil
}
