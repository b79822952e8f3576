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

// planes are a picture or a band of it: luma, and two of chroma at half its width and height, rounded up.
type planes [3]plane

// newPlanes makes room for a band.
func newPlanes(width, height int) *planes {
	w, h := (width+1)/2, (height+1)/2
	return &planes{
		{make([]byte, width*height), width, width, height},
		{make([]byte, w*h), w, w, h},
		{make([]byte, w*h), w, w, h},
	}
}

// planesOf takes a 4:2:0 picture as it is. ok is false where its chroma pixels don't begin on its first pixel.
func planesOf(m *image.YCbCr) (p *planes, ok bool) {
	at, size := m.Rect.Min, m.Rect.Size()
	// Below zero, image.YCbCr rounds to the other side.
	if m.SubsampleRatio != image.YCbCrSubsampleRatio420 || at.X < 0 || at.Y < 0 || at.X%2 != 0 || at.Y%2 != 0 {
		return nil, false
	}
	w, h, c := (size.X+1)/2, (size.Y+1)/2, m.COffset(at.X, at.Y)
	return &planes{
		{m.Y[m.YOffset(at.X, at.Y):], m.YStride, size.X, size.Y},
		{m.Cb[c:], m.CStride, w, h},
		{m.Cr[c:], m.CStride, w, h},
	}, true
}
