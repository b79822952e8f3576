package raster

import (
	"image"
	"image/color"
	"image/draw"

	"dropsheet/flip"
	"dropsheet/layout"
)

// planes are a picture's luma, blue and red chroma, each a grey picture of its own: luma on the grid, chroma
// on one of half as many pixels each way (4:2:0).
type planes [3]*Source

// newPlanes prepares a picture of luma and chroma, as most JPEGs are, to be cut without turning its planes
// into red, green and blue and back: less work, and nothing lost on the way. nil where chroma pixels would
// not come out whole or would have to be invented.
func newPlanes(art image.Image, upright, turn flip.Turn, grid Grid) *planes {
	ycc, ok := art.(*image.YCbCr)
	if !ok {
		return nil
	}
	x, y := chromaStep(ycc.SubsampleRatio)
	at, size := ycc.Rect.Min, ycc.Rect.Size()
	if x == 0 || at.X%x != 0 || at.Y%y != 0 || size.X%x != 0 || size.Y%y != 0 || grid.WidthPx%2 != 0 ||
		grid.HeightPx%2 != 0 {
		return nil
	}
	luma, blue, red := color.RGBToYCbCr(255, 255, 255)
	half := Grid{grid.WidthPx / 2, grid.HeightPx / 2}
	plane := func(pix []byte, stride, w, h int, g Grid, paper uint8) *Source {
		return newSource(&image.Gray{Pix: pix, Stride: stride, Rect: image.Rect(0, 0, w, h)}, upright, turn, g, gray(paper))
	}
	return &planes{
		plane(ycc.Y[ycc.YOffset(at.X, at.Y):], ycc.YStride, size.X, size.Y, grid, luma),
		plane(ycc.Cb[ycc.COffset(at.X, at.Y):], ycc.CStride, size.X/x, size.Y/y, half, blue),
		plane(ycc.Cr[ycc.COffset(at.X, at.Y):], ycc.CStride, size.X/x, size.Y/y, half, red),
	}
}

// chromaStep is how many pixels of a picture share one of chroma, across and down; 0 where they are more than two.
func chromaStep(ratio image.YCbCrSubsampleRatio) (across, down int) {
	switch ratio {
	case image.YCbCrSubsampleRatio444:
		return 1, 1
	case image.YCbCrSubsampleRatio422:
		return 2, 1
	case image.YCbCrSubsampleRatio420:
		return 2, 2
	case image.YCbCrSubsampleRatio440:
		return 1, 2
	}
	return 0, 0
}

// surround sets what stands beyond each plane's picture: its part of a colour, or its outermost pixels going
// on where there is none.
func (p *planes) surround(beyond *color.RGBA) {
	if beyond == nil {
		p[0].beyond, p[1].beyond, p[2].beyond = nil, nil, nil
		return
	}
	luma, blue, red := color.RGBToYCbCr(beyond.R, beyond.G, beyond.B)
	for i, level := range [3]uint8{luma, blue, red} {
		c := gray(level)
		p[i].beyond = &c
	}
}

func (p *planes) hang(h *layout.Hanging, picture layout.Rect) {
	for _, plane := range p {
		plane.Hang(h, picture)
	}
}

// cut makes the pixels of a rectangle of the grid; half is the rectangle of chroma.
func (p *planes) cut(r, half image.Rectangle) *image.YCbCr {
	cut := func(i int, r image.Rectangle) []byte { return p[i].Cut(r).(*image.Gray).Pix }
	return &image.YCbCr{
		Y: cut(0, r), Cb: cut(1, half), Cr: cut(2, half), YStride: r.Dx(), CStride: half.Dx(),
		SubsampleRatio: image.YCbCrSubsampleRatio420, Rect: image.Rect(0, 0, r.Dx(), r.Dy()),
	}
}

// CutSubsampled makes the pixels of a rectangle of the grid for a file that stores chroma as 4:2:0 anyway:
// what Cut makes, but an *image.YCbCr of that kind where the artwork has luma and chroma and the rectangle's
// corners are even, save where levels are made up for lamps, which goes by red, green and blue.
func (s *Source) CutSubsampled(r image.Rectangle) image.Image {
	half := image.Rect(r.Min.X/2, r.Min.Y/2, r.Max.X/2, r.Max.Y/2)
	if s.planes == nil || half.Min.Mul(2) != r.Min || half.Max.Mul(2) != r.Max {
		return s.Cut(r)
	}
	m := s.planes.cut(r, half)
	if s.level == nil {
		return m
	}
	levelled := image.NewRGBA(m.Rect)
	draw.Draw(levelled, m.Rect, m, image.Point{}, draw.Src)
	s.level.apply(levelled, r)
	return levelled
}

// Even grows a rectangle of the grid outward to even corners, where chroma pixels begin.
func Even(r image.Rectangle) image.Rectangle {
	down := func(n int) int { return n &^ 1 } // toward the left and top below zero too
	return image.Rect(down(r.Min.X), down(r.Min.Y), down(r.Max.X+1), down(r.Max.Y+1))
}
