package raster

import (
	"image"

	"dropsheet/flip"
)

// newPlanes prepares a 4:2:0 picture, as most JPEGs are, to be cut without turning its planes into red, green and blue and back: half the work, and nothing lost on the way. nil where
// chroma pixels would not lie on every second pixel of artwork and grid.
func newPlanes(art image.Image, turn flip.Turn, grid Grid) *[3]*Source {
	ycc, ok := art.(*image.YCbCr)
	even := func(numbers ...int) bool {
		for _, n := range numbers {
			if n%2 != 0 {
				return false
			}
		}
		return true
	}
	if !ok || ycc.SubsampleRatio != image.YCbCrSubsampleRatio420 || !even(ycc.Rect.Min.X, ycc.Rect.Min.Y, ycc.Rect.Dx(), ycc.Rect.Dy(), grid.WidthPx, grid.HeightPx) {
		return nil
	}
	at := ycc.Rect.Min
	plane := func(pix []byte, stride, w, h int, g Grid) *Source {
		p := &Source{art: &image.Gray{Pix: pix, Stride: stride, Rect: image.Rect(0, 0, w, h)}, turn: turn, grid: g}
		p.width, p.height = turn.Size(w, h)
		return p
	}
	w, h, half := ycc.Rect.Dx()/2, ycc.Rect.Dy()/2, Grid{grid.WidthPx / 2, grid.HeightPx / 2}
	return &[3]*Source{
		plane(ycc.Y[ycc.YOffset(at.X, at.Y):], ycc.YStride, 2*w, 2*h, grid),
		plane(ycc.Cb[ycc.COffset(at.X, at.Y):], ycc.CStride, w, h, half),
		plane(ycc.Cr[ycc.COffset(at.X, at.Y):], ycc.CStride, w, h, half),
	}
}

// CutPlanes makes the pixels of a rectangle of the grid, whose corners must be even, as luma and chroma in 4:2:0. ok is false where they are not to be had so: the artwork is of another kind, or its
// pixels are bent, levelled or surrounded.
func (s *Source) CutPlanes(r image.Rectangle) (m *image.YCbCr, ok bool) {
	if s.planes == nil || s.beyond != nil || s.level != nil || s.warp != nil {
		return nil, false
	}
	half := image.Rect(r.Min.X/2, r.Min.Y/2, r.Max.X/2, r.Max.Y/2)
	if half.Min.Mul(2) != r.Min || half.Max.Mul(2) != r.Max {
		return nil, false
	}
	cut := func(i int, r image.Rectangle) []byte { return s.planes[i].cutPicture(r).(*image.Gray).Pix }
	return &image.YCbCr{
		Y: cut(0, r), Cb: cut(1, half), Cr: cut(2, half), YStride: r.Dx(), CStride: half.Dx(),
		SubsampleRatio: image.YCbCrSubsampleRatio420, Rect: image.Rect(0, 0, r.Dx(), r.Dy()),
	}, true
}

// Even grows a rectangle of the grid outward to even corners, where chroma pixels begin.
func Even(r image.Rectangle) image.Rectangle {
	down := func(n int) int { return n &^ 1 } // toward the left and top below zero too
	return image.Rect(down(r.Min.X), down(r.Min.Y), down(r.Max.X+1), down(r.Max.Y+1))
}
