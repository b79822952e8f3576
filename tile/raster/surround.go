package raster

import (
	"image"
	"image/color"

	"dropsheet/layout"
)

// Surround sets what stands beyond the picture, and returns s: the surround's colour, or the picture's
// outermost pixels going on where it has none. A grey artwork in a coloured surround makes coloured pictures.
// It must not be called any more once Cut has been.
func (s *Source) Surround(surround layout.Surround) *Source {
	s.beyond = nil
	if c, ok := surround.Colour(); ok {
		s.beyond = &c
	}
	if s.planes != nil {
		s.planes.surround(s.beyond)
	}
	return s
}

// printsGray tells whether an artwork prints grey with that beyond it, nil for its outermost pixels.
func printsGray(art image.Image, beyond *color.RGBA) bool {
	_, gray := art.(*image.Gray)
	return gray && (beyond == nil || beyond.R == beyond.G && beyond.G == beyond.B)
}

// PrintsGray tells whether the sheets of an artwork in a surround are grey: where both are.
func PrintsGray(art image.Image, surround layout.Surround) bool {
	if c, ok := surround.Colour(); ok {
		return printsGray(art, &c)
	}
	return printsGray(art, nil)
}

// cutSurrounded makes the pixels of a rectangle with the surround's colour beyond the picture. The picture
// ends on whole grid pixels, so no pixel is mixed.
func (s *Source) cutSurrounded(r image.Rectangle) image.Image {
	inner := r.Intersect(image.Rect(0, 0, s.grid.WidthPx, s.grid.HeightPx))
	if inner == r && s.Gray() == printsGray(s.art, nil) {
		return s.cutPicture(r)
	}
	to := newCanvas(r, s.Gray(), *s.beyond)
	if inner.Empty() {
		return to.Image
	}
	pix, stride, channels := bytesOf(s.cutPicture(inner))
	for y := range inner.Dy() {
		to.put(inner.Min.X, inner.Min.Y+y, to.asPixels(pix[y*stride:][:inner.Dx()*channels], channels))
	}
	return to.Image
}
