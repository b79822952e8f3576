package raster

import (
	"image"
	"image/color"
	"image/draw"

	"dropsheet/flip"
	"dropsheet/layout"
)

// planes are a picture's luma, blue and red chroma, each a grey picture of its own: luma on the grid, chroma on it
// too (4:4:4) or on one of half as many pixels each way (4:2:0).
type planes [3]*Source

// newPlanes prepares a picture of luma and chroma, as most JPEGs are, to be cut without turning its planes
// into red, green and blue and back: less work, and nothing lost on the way. nil where chroma pixels would
// not come out whole.
func newPlanes(art image.Image, upright, turn flip.Turn, grid Grid, chroma image.YCbCrSubsampleRatio) *planes {
	ycc, ok := art.(*image.YCbCr)
	if !ok {
		return nil
	}
	x, y := chromaStep(ycc.SubsampleRatio)
	at, size := ycc.Rect.Min, ycc.Rect.Size()
	across, down := chromaStep(chroma)
	if x == 0 || at.X%x != 0 || at.Y%y != 0 || size.X%x != 0 || size.Y%y != 0 || grid.WidthPx%across != 0 ||
		grid.HeightPx%down != 0 {
		return nil
	}
	luma, blue, red := color.RGBToYCbCr(255, 255, 255)
	chromaGrid := Grid{grid.WidthPx / across, grid.HeightPx / down}
	plane := func(pix []byte, stride, w, h int, g Grid, paper uint8) *Source {
		return newSource(&image.Gray{Pix: pix, Stride: stride, Rect: image.Rect(0, 0, w, h)}, upright, turn, g, gray(paper))
	}
	return &planes{
		plane(ycc.Y[ycc.YOffset(at.X, at.Y):], ycc.YStride, size.X, size.Y, grid, luma),
		plane(ycc.Cb[ycc.COffset(at.X, at.Y):], ycc.CStride, size.X/x, size.Y/y, chromaGrid, blue),
		plane(ycc.Cr[ycc.COffset(at.X, at.Y):], ycc.CStride, size.X/x, size.Y/y, chromaGrid, red),
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

// CutYCbCr makes the pixels of a rectangle of the grid for a file that stores luma and chroma anyway: what Cut makes,
// but an *image.YCbCr of the source's subsampling where the artwork has luma and chroma and the rectangle's corners
// lie between pixels of chroma, save where levels are made up for lamps, which goes by red, green and blue. Where the
// artwork has less chroma than the grid, what lies between is interpolated, while Cut repeats it.
func (s *Source) CutYCbCr(r image.Rectangle) image.Image {
	across, down := chromaStep(s.chroma)
	chroma := image.Rect(r.Min.X/across, r.Min.Y/down, r.Max.X/across, r.Max.Y/down)
	if s.planes == nil ||
		image.Rect(chroma.Min.X*across, chroma.Min.Y*down, chroma.Max.X*across, chroma.Max.Y*down) != r {
		return s.Cut(r)
	}
	cut := func(i int, r image.Rectangle) []byte { return s.planes[i].Cut(r).(*image.Gray).Pix }
	m := &image.YCbCr{
		Y: cut(0, r), Cb: cut(1, chroma), Cr: cut(2, chroma), YStride: r.Dx(), CStride: chroma.Dx(),
		SubsampleRatio: s.chroma, Rect: image.Rect(0, 0, r.Dx(), r.Dy()),
	}
	if s.level == nil {
		return m
	}
	levelled := image.NewRGBA(m.Rect)
	draw.Draw(levelled, m.Rect, m, image.Point{}, draw.Src)
	s.level.apply(levelled, r)
	return levelled
}
