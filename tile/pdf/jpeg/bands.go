package jpeg

import "image"

// fromRGBA fills a band from its picture's row y on; step pixels share one of chroma, across and down.
func (p *planes) fromRGBA(m *image.RGBA, y, step int) {
	luma, cb, cr := &p[0], &p[1], &p[2]
	row := func(j int) []byte {
		at := m.PixOffset(m.Rect.Min.X, y+min(j, luma.height-1))
		return m.Pix[at : at+4*luma.width]
	}
	for j := range luma.height {
		lumaOf(luma.pix[j*luma.stride:], row(j))
	}
	for j := range cb.height {
		rowB, rowR := cb.pix[j*cb.stride:][:cb.width], cr.pix[j*cr.stride:][:cb.width]
		if step == 1 {
			chromaOf(rowB, rowR, row(j))
		} else {
			halfChromaOf(rowB, rowR, row(2*j), row(2*j+1))
		}
	}
}

// chromaOf fills rows with the differences from luma of red, green, blue and what is not looked at.
func chromaOf(rowB, rowR, rgba []byte) {
	for i := range rowB {
		red, green, blue := 4*int32(rgba[4*i]), 4*int32(rgba[4*i+1]), 4*int32(rgba[4*i+2])
		rowB[i] = chroma(-11056*red - 21712*green + 32768*blue)
		rowR[i] = chroma(32768*red - 27440*green - 5328*blue)
	}
}

// halfChromaOf fills rows with those of two rows, a pixel for four.
func halfChromaOf(rowB, rowR, top, bottom []byte) {
	for i := range rowB {
		a := 8 * i
		b := min(a+4, len(top)-4)
		red := int32(top[a]) + int32(top[b]) + int32(bottom[a]) + int32(bottom[b])
		green := int32(top[a+1]) + int32(top[b+1]) + int32(bottom[a+1]) + int32(bottom[b+1])
		blue := int32(top[a+2]) + int32(top[b+2]) + int32(bottom[a+2]) + int32(bottom[b+2])
		rowB[i] = chroma(-11056*red - 21712*green + 32768*blue)
		rowR[i] = chroma(32768*red - 27440*green - 5328*blue)
	}
}

// lumaOf fills a row from red, green, blue and what is not looked at: 0.299 R + 0.587 G + 0.114 B (ITU-R
// BT.601 over the full range, as JFIF 1.02 has it; from memory).
func lumaOf(dst, rgba []byte) {
	for i := 0; len(rgba) >= 4; i++ {
		dst[i] = byte((19595*uint32(rgba[0]) + 38470*uint32(rgba[1]) + 7471*uint32(rgba[2]) + 1<<15) >> 16)
		rgba = rgba[4:]
	}
}

// chroma is the rounded mean of four pixels' differences from luma: (B - Y) / 1.772 or (R - Y) / 1.402 (same
// sources), times 2^16.
func chroma(four int32) byte {
	return byte(min((four+128<<18+1<<17)>>18, 255)) // the bluest blue comes to 255.5
}

// fromYCbCr fills a band from its picture's row y on, likewise, whatever the picture's subsampling.
func (p *planes) fromYCbCr(m *image.YCbCr, y, step int, columns []int) {
	luma, cb, cr := &p[0], &p[1], &p[2]
	left := m.Rect.Min.X
	for j := range luma.height {
		copy(luma.pix[j*luma.stride:][:luma.width], m.Y[m.YOffset(left, y+j):])
	}
	for j := range cb.height {
		top, bottom := m.COffset(left, y+step*j), m.COffset(left, y+min(step*j+step-1, luma.height-1))
		rowB, rowR := cb.pix[j*cb.stride:][:cb.width], cr.pix[j*cr.stride:][:cb.width]
		for i := range rowB {
			a := columns[step*i]
			b := columns[min(step*i+step-1, len(columns)-1)]
			mean := func(c []byte) byte {
				return byte((uint32(c[top+a]) + uint32(c[top+b]) + uint32(c[bottom+a]) + uint32(c[bottom+b]) + 2) / 4)
			}
			rowB[i], rowR[i] = mean(m.Cb), mean(m.Cr)
		}
	}
}

// chromaColumns returns how far each pixel's chroma is after that of the first in its row.
func chromaColumns(m *image.YCbCr) []int {
	columns := make([]int, m.Rect.Dx())
	for i := range columns {
		columns[i] = m.COffset(m.Rect.Min.X+i, m.Rect.Min.Y) - m.COffset(m.Rect.Min.X, m.Rect.Min.Y)
	}
	return columns
}
