package jpeg

import (
	"fmt"
	"image"
)

const longest = 65535 // pixels a side: the frame header has 16 bits (B.2.2)

// Encode returns a picture as a baseline JPEG file. It takes *image.Gray, *image.RGBA, which counts as
// opaque, and *image.YCbCr of any subsampling; colour is stored as YCbCr with chroma at half resolution both
// ways (4:2:0), whatever the picture has, and a 4:2:0 picture whose Rect.Min is even and not below zero loses
// nothing by that. Quality is 1 to 100 and means what it does in image/jpeg. Each side may have 1 to 65535
// pixels. Another kind, quality or size is an error.
func Encode(img image.Image, quality int) ([]byte, error) {
	if quality < 1 || quality > 100 {
		return nil, fmt.Errorf("JPEG quality %d is out of range: take 1 to 100", quality)
	}
	size := img.Bounds().Size()
	if size.X < 1 || size.Y < 1 || size.X > longest || size.Y > longest {
		return nil, fmt.Errorf("a picture of %d x %d pixels can't be a JPEG: take 1 to %d both ways", size.X, size.Y, longest)
	}
	switch m := img.(type) {
	case *image.Gray:
		s := newScan(size, quality, 1)
		s.gray(&plane{m.Pix[m.PixOffset(m.Rect.Min.X, m.Rect.Min.Y):], m.Stride, size.X, size.Y})
		return s.finish(), nil
	case *image.YCbCr:
		s := newScan(size, quality, 3)
		if p, ok := planesOf(m); ok {
			s.colour(p)
			return s.finish(), nil
		}
		columns := chromaColumns(m)
		s.bands(m.Rect, func(p *planes, y int) { p.fromYCbCr(m, y, columns) })
		return s.finish(), nil
	case *image.RGBA:
		s := newScan(size, quality, 3)
		s.bands(m.Rect, func(p *planes, y int) { p.fromRGBA(m, y) })
		return s.finish(), nil
	}
	return nil, fmt.Errorf("a picture of type %T can't be a JPEG: convert it to *image.Gray, *image.RGBA or "+
		"*image.YCbCr", img)
}
