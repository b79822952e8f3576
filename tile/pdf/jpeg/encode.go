package jpeg

import (
	"fmt"
	"image"
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
	if quality < 1 || quality > 100 {
		return nil, fmt.Errorf("JPEG quality %d is out of range\nhint: take 1 to 100", quality)
	}
	if chroma != image.YCbCrSubsampleRatio420 && chroma != image.YCbCrSubsampleRatio444 {
		return nil, fmt.Errorf("JPEG with chroma of %v isn't made\nhint: take 4:2:0 or 4:4:4", chroma)
	}
	size := img.Bounds().Size()
	if size.X < 1 || size.Y < 1 || size.X > longest || size.Y > longest {
		return nil, fmt.Errorf("a picture of %d x %d pixels can't be a JPEG\n"+
			"hint: take 1 to %d both ways", size.X, size.Y, longest)
	}
	switch m := img.(type) {
	case *image.Gray:
		s := newScan(size, quality, 1, chroma)
		s.gray(&plane{m.Pix[m.PixOffset(m.Rect.Min.X, m.Rect.Min.Y):], m.Stride, size.X, size.Y})
		return s.finish(), nil
	case *image.YCbCr:
		s := newScan(size, quality, 3, chroma)
		if p, ok := planesOf(m, chroma); ok {
			s.colour(p)
			return s.finish(), nil
		}
		columns := chromaColumns(m)
		s.bands(m.Rect, func(p *planes, y int) { p.fromYCbCr(m, y, s.step, columns) })
		return s.finish(), nil
	case *image.RGBA:
		s := newScan(size, quality, 3, chroma)
		s.bands(m.Rect, func(p *planes, y int) { p.fromRGBA(m, y, s.step) })
		return s.finish(), nil
	}
	return nil, fmt.Errorf("a picture of type %T can't be a JPEG\nhint: convert it to *image.Gray, *image.RGBA or "+
		"*image.YCbCr", img)
}
