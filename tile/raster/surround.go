package raster

import (
	"image"
	"image/color"
	"image/draw"

	"dropsheet/layout"
)

// Surround sets what stands beyond the picture, and returns s: the surround's colour, or the picture's outermost pixels going on where it has none.
// A grey artwork in a coloured surround makes coloured pictures. It must not be called any more once Cut has been.
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

func isGray(c color.RGBA) bool { return c.R == c.G && c.G == c.B }

// cutSurrounded makes the pixels of a rectangle with the surround's colour beyond the picture. The picture ends on whole grid pixels,
// so no pixel is mixed.
func (s *Source) cutSurrounded(r image.Rectangle) image.Image {
	inner := r.Intersect(image.Rect(0, 0, s.grid.WidthPx, s.grid.HeightPx))
	_, grayArt := s.art.(*image.Gray)
	if inner == r && grayArt == s.Gray() {
		return s.cutPicture(r)
	}
	at := inner.Sub(r.Min)
	if s.Gray() {
		dst := image.NewGray(image.Rect(0, 0, r.Dx(), r.Dy()))
		repeat(dst.Pix, []byte{s.beyond.R})
		if !inner.Empty() {
			part := s.cutPicture(inner).(*image.Gray)
			for y := range at.Dy() {
				copy(dst.Pix[dst.PixOffset(at.Min.X, at.Min.Y+y):], part.Pix[y*part.Stride:][:at.Dx()])
			}
		}
		return dst
	}
	dst := image.NewRGBA(image.Rect(0, 0, r.Dx(), r.Dy()))
	draw.Draw(dst, dst.Rect, image.NewUniform(*s.beyond), image.Point{}, draw.Src)
	if !inner.Empty() {
		draw.Draw(dst, at, s.cutPicture(inner), image.Point{}, draw.Src)
	}
	return dst
}
