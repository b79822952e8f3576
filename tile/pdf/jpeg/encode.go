package jpeg

import (
	"fmt"
	"image"
	"iter"
)

const longest = 65535 // pixels a side: the frame header has 16 bits (B.2.2)

// BlockPx is how many pixels a side the squares have that a file is made of: two pictures that are cut from one on
// corners that are multiples of it have the same pixels after decoding where they show the same.
const BlockPx = 16

// Encode returns a picture as a baseline JPEG file. It takes *image.Gray, *image.RGBA, which counts as
// opaque, and *image.YCbCr of any subsampling; colour is stored as YCbCr with chroma at full resolution (4:4:4)
// or half of it both ways (4:2:0), as asked, whatever the picture has. A picture that has it so, its Rect.Min
// even and not below zero where it is 4:2:0, loses nothing by that. Quality is 1 to 100 and means what it does in
// image/jpeg. Each side may have 1 to 65535 pixels. Another kind, quality, size or subsampling is an error.
func Encode(img image.Image, quality int, chroma image.YCbCrSubsampleRatio) ([]byte, error) {
	return EncodeBands(img.Bounds().Size(), func(yield func(image.Image) bool) { yield(img) }, quality, chroma)
}

// EncodeBands is Encode of a picture of that size which comes in bands, from the top down, and so is never held whole.
// All are as wide as it, and each but the last is a multiple of BlockPx high.
func EncodeBands(size image.Point, bands iter.Seq[image.Image], quality int,
	chroma image.YCbCrSubsampleRatio) ([]byte, error) {
	if quality < 1 || quality > 100 {
		return nil, fmt.Errorf("JPEG quality %d is out of range\nhint: take 1 to 100", quality)
	}
	if chroma != image.YCbCrSubsampleRatio420 && chroma != image.YCbCrSubsampleRatio444 {
		return nil, fmt.Errorf("JPEG with chroma of %v isn't made\nhint: take 4:2:0 or 4:4:4", chroma)
	}
	if size.X < 1 || size.Y < 1 || size.X > longest || size.Y > longest {
		return nil, fmt.Errorf("a picture of %d x %d pixels can't be a JPEG\n"+
			"hint: take 1 to %d both ways", size.X, size.Y, longest)
	}
	var s *scan
	y := 0
	for band := range bands {
		components, err := componentsOf(band)
		if err != nil {
			return nil, err
		}
		if s == nil {
			s = newScan(size, quality, components, chroma)
		}
		has := band.Bounds().Size()
		if has.X != size.X || y+has.Y > size.Y || y%BlockPx != 0 || components != len(s.components) {
			return nil, fmt.Errorf("a band of %d x %d pixels, a %T, does not fit at row %d of a JPEG of %d x %d",
				has.X, has.Y, band, y, size.X, size.Y)
		}
		s.band(band, chroma)
		y += has.Y
	}
	if y != size.Y {
		return nil, fmt.Errorf("a JPEG of %d rows got only %d", size.Y, y)
	}
	return s.finish(), nil
}

// componentsOf is how many planes a picture is made of.
func componentsOf(img image.Image) (int, error) {
	switch img.(type) {
	case *image.Gray:
		return 1, nil
	case *image.YCbCr, *image.RGBA:
		return 3, nil
	}
	return 0, fmt.Errorf("a picture of type %T can't be a JPEG\nhint: convert it to *image.Gray, *image.RGBA or "+
		"*image.YCbCr", img)
}

// band appends a band, of one of the types that componentsOf knows.
func (s *scan) band(img image.Image, chroma image.YCbCrSubsampleRatio) {
	size := img.Bounds().Size()
	switch m := img.(type) {
	case *image.Gray:
		s.gray(&plane{m.Pix[m.PixOffset(m.Rect.Min.X, m.Rect.Min.Y):], m.Stride, size.X, size.Y})
	case *image.YCbCr:
		if p, ok := planesOf(m, chroma); ok {
			s.colour(p)
			return
		}
		columns := chromaColumns(m)
		s.rows(m.Rect, func(p *planes, y int) { p.fromYCbCr(m, y, s.step, columns) })
	case *image.RGBA:
		s.rows(m.Rect, func(p *planes, y int) { p.fromRGBA(m, y, s.step) })
	}
}
