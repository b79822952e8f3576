package jpeg

import "image"

// plane is a picture of one component.
type plane struct {
	pix                   []byte
	stride, width, height int
}

// block returns the rows of the block whose first pixel is at (x, y), and how far each is after the one
// before. Beyond the plane its last pixels repeat; such blocks are made in spare.
func (p *plane) block(x, y int, spare *[64]byte) (rows []byte, stride int) {
	if x+8 <= p.width && y+8 <= p.height {
		return p.pix[y*p.stride+x:], p.stride
	}
	for j := range 8 {
		row := p.pix[min(y+j, p.height-1)*p.stride:]
		for i := range 8 {
			spare[8*j+i] = row[min(x+i, p.width-1)]
		}
	}
	return spare[:], 8
}

// planes are a picture or a band of it: luma, and two of chroma at its width and height or half of both, rounded up.
type planes [3]plane

// stepOf is how many pixels share one of chroma, across and down alike: 1 of 4:4:4, 2 of 4:2:0.
func stepOf(chroma image.YCbCrSubsampleRatio) int {
	if chroma == image.YCbCrSubsampleRatio444 {
		return 1
	}
	return 2
}

// newPlanes makes room for a band.
func newPlanes(width, height, step int) *planes {
	w, h := (width+step-1)/step, (height+step-1)/step
	return &planes{
		{make([]byte, width*height), width, width, height},
		{make([]byte, w*h), w, w, h},
		{make([]byte, w*h), w, w, h},
	}
}

// planesOf takes a picture as it is. ok is false where it has another chroma, or one whose pixels don't begin on its
// first pixel.
func planesOf(m *image.YCbCr, chroma image.YCbCrSubsampleRatio) (p *planes, ok bool) {
	at, size, step := m.Rect.Min, m.Rect.Size(), stepOf(chroma)
	// Below zero, image.YCbCr rounds to the other side.
	if m.SubsampleRatio != chroma || step > 1 && (at.X < 0 || at.Y < 0 || at.X%step != 0 || at.Y%step != 0) {
		return nil, false
	}
	w, h, c := (size.X+step-1)/step, (size.Y+step-1)/step, m.COffset(at.X, at.Y)
	return &planes{
		{m.Y[m.YOffset(at.X, at.Y):], m.YStride, size.X, size.Y},
		{m.Cb[c:], m.CStride, w, h},
		{m.Cr[c:], m.CStride, w, h},
	}, true
}
