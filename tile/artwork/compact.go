package artwork

import (
	"fmt"
	"image"
	"image/color"

	"dropsheet/tile/colour"
)

// What Picture.Warnings says of a conversion.
const (
	warnTransparent  = "transparent parts are laid on white"
	warnCMYK         = "cmyk is turned into rgb without a colour profile: the colours are approximate"
	warnUnmarkedInks = "the jpeg doesn't say how its cmyk is stored, and is taken for inverted as other programs do: " +
		"should it come out as a negative, save it as rgb"
)

// compact turns a decoded picture into one of the three forms of Picture.Image. grey says that it was stored
// as grey though the decoder made it RGB. It works row by row and, where the result fits, in the memory of
// the picture, which is spent.
func compact(m image.Image, grey bool) (image.Image, []string, error) {
	var notes []string
	if o, ok := m.(interface{ Opaque() bool }); ok && !o.Opaque() {
		notes = append(notes, warnTransparent)
	}
	var rgb *image.RGBA
	switch m := m.(type) {
	case *image.Gray, *image.YCbCr:
		return m, nil, nil
	case laidOnWhite:
		return m.Image, notes, nil
	case *image.Gray16:
		return narrowGrey(m), nil, nil
	case *image.NYCbCrA:
		if notes == nil {
			return &m.YCbCr, nil, nil
		}
		return planesOnWhite(m), notes, nil
	case *image.CMYK:
		return inksToRGB(m), []string{warnCMYK}, nil
	case *image.Paletted:
		return paletteOnWhite(m), notes, nil
	case *image.RGBA:
		if notes != nil {
			layOnWhite8(m.Pix, premultiplied8)
		}
		rgb = m
	case *image.NRGBA:
		if notes != nil {
			layOnWhite8(m.Pix, straight8)
		}
		rgb = &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
	case *image.RGBA64:
		rgb = layOnWhite16(m.Pix, m.Rect, premultiplied16)
	case *image.NRGBA64:
		rgb = layOnWhite16(m.Pix, m.Rect, straight16)
	default:
		return nil, nil, fmt.Errorf("no use for a %T", m)
	}
	if grey {
		return firstChannel(rgb), notes, nil
	}
	return rgb, notes, nil
}

// layOnWhite8 lays RGBA pixels on white, in place.
func layOnWhite8(pix []uint8, lay func(c, a uint8) uint8) {
	for i := 0; i+4 <= len(pix); i += 4 {
		p := pix[i : i+4 : i+4]
		if a := p[3]; a != 255 {
			p[0], p[1], p[2], p[3] = lay(p[0], a), lay(p[1], a), lay(p[2], a), 255
		}
	}
}

// layOnWhite16 lays RGBA pixels of 16 bits a sample, high byte first, on white in 8 bits, in the first half
// of their memory.
func layOnWhite16(pix []uint8, bounds image.Rectangle, lay func(c, a uint16) uint8) *image.RGBA {
	n := len(pix) / 8
	for i := range n {
		from, to := pix[8*i:8*i+8:8*i+8], pix[4*i:4*i+4:4*i+4]
		sample := func(c int) uint16 { return uint16(from[2*c])<<8 | uint16(from[2*c+1]) }
		r, g, b, a := sample(0), sample(1), sample(2), sample(3)
		to[0], to[1], to[2], to[3] = lay(r, a), lay(g, a), lay(b, a), 255
	}
	return &image.RGBA{Pix: pix[: 4*n : 4*n], Stride: 4 * bounds.Dx(), Rect: bounds}
}

// narrowGrey rounds grey of 16 bits to 8, in the first half of its memory.
func narrowGrey(m *image.Gray16) *image.Gray {
	n := len(m.Pix) / 2
	for i := range n {
		m.Pix[i] = round16(uint16(m.Pix[2*i])<<8 | uint16(m.Pix[2*i+1]))
	}
	return &image.Gray{Pix: m.Pix[:n:n], Stride: m.Rect.Dx(), Rect: m.Rect}
}

// firstChannel returns the grey picture that an RGB one holds three times over. It takes new memory, a
// quarter, to free the rest.
func firstChannel(m *image.RGBA) *image.Gray {
	grey := image.NewGray(m.Rect)
	for i := range grey.Pix {
		grey.Pix[i] = m.Pix[4*i]
	}
	return grey
}

// paletteOnWhite looks every pixel's colour up, laid on white. A frame that lies away from the origin is moved there.
func paletteOnWhite(m *image.Paletted) *image.RGBA {
	var table [256][4]uint8
	for i := range table {
		table[i] = [4]uint8{0, 0, 0, 255}
		if i < len(m.Palette) {
			table[i] = colourOnWhite(m.Palette[i])
		}
	}
	w, h := m.Rect.Dx(), m.Rect.Dy()
	rgb := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		row, out := m.Pix[y*m.Stride:y*m.Stride+w], rgb.Pix[y*rgb.Stride:]
		for x, index := range row {
			copy(out[4*x:4*x+4], table[index][:])
		}
	}
	return rgb
}

func colourOnWhite(c color.Color) [4]uint8 {
	if c, ok := c.(color.NRGBA); ok { // its RGBA method would round on the way
		return [4]uint8{straight8(c.R, c.A), straight8(c.G, c.A), straight8(c.B, c.A), 255}
	}
	r, g, b, a := c.RGBA()
	lay := func(v uint32) uint8 { return premultiplied16(uint16(v), uint16(a)) }
	return [4]uint8{lay(r), lay(g), lay(b), 255}
}

// planesOnWhite lays planes with an alpha of their own on white, as RGB: alpha is finer than the chroma planes.
func planesOnWhite(m *image.NYCbCrA) *image.RGBA {
	rgb := image.NewRGBA(m.Rect)
	for y := m.Rect.Min.Y; y < m.Rect.Max.Y; y++ {
		out := rgb.Pix[rgb.PixOffset(m.Rect.Min.X, y):]
		for i := range m.Rect.Dx() {
			x := m.Rect.Min.X + i
			c := m.COffset(x, y)
			r, g, b := color.YCbCrToRGB(m.Y[m.YOffset(x, y)], m.Cb[c], m.Cr[c])
			a := m.A[m.AOffset(x, y)]
			p := out[4*i : 4*i+4 : 4*i+4]
			p[0], p[1], p[2], p[3] = straight8(r, a), straight8(g, a), straight8(b, a), 255
		}
	}
	return rgb
}

// inksToRGB turns CMYK into RGB in its own memory.
func inksToRGB(m *image.CMYK) *image.RGBA {
	colour.InksToRGB(m.Pix)
	return &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
}
