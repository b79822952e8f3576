package artwork

import (
	"fmt"
	"image"
	"image/color"
	"runtime"
	"slices"
	"sync"

	"dropsheet/tile/colour"
)

// What Picture.Warnings says of a conversion.
const (
	warnTransparent  = "transparent parts are laid on white"
	warnUnder        = "transparent parts are laid on the background, %s"
	warnCMYK         = "its CMYK comes without a colour profile: the RGB made of it is approximate"
	warnPlainInks    = "its CMYK is turned into RGB without its colour profile, as when the job was made"
	warnInksProfile  = "its CMYK is turned into RGB roughly, since its colour profile can't be followed: %v"
	warnUnmarkedInks = "the JPEG doesn't say how its CMYK is stored, and is taken for inverted as other programs do: " +
		"should it come out as a negative, save it as RGB"
)

// compact turns a decoded picture into one of the three forms of Picture.Image, transparent parts laid on a colour.
// grey says that it was stored as grey though the decoder made it RGB. It works row by row and, where the result
// fits, in the memory of the picture, which is spent.
func compact(m image.Image, grey bool, on ground, inks *colour.Inks) (of image.Image, transparent bool,
	err error) {
	o, ok := m.(interface{ Opaque() bool })
	transparent = ok && !o.Opaque()
	under := on.RGBA
	var rgb *image.RGBA
	switch m := m.(type) {
	case *image.Gray, *image.YCbCr:
		return m, false, nil
	case laid:
		return m.only(grey), transparent, nil
	case *image.Gray16:
		return narrowGrey(m, on), false, nil
	case *image.NYCbCrA:
		if !transparent {
			return &m.YCbCr, false, nil
		}
		return planesOn(m, under), true, nil
	case *image.CMYK:
		return inksToRGB(m, inks), false, nil
	case *image.Paletted:
		return paletteOn(m, under), transparent, nil
	case *image.RGBA:
		if transparent {
			layOn8(m.Pix, under, premultiplied8)
		}
		rgb = m
	case *image.NRGBA:
		if transparent {
			layOn8(m.Pix, under, straight8)
		}
		rgb = &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
	case *image.RGBA64:
		rgb = layOn16(m.Pix, m.Rect, on, premultiplied16)
	case *image.NRGBA64:
		rgb = layOn16(m.Pix, m.Rect, on, straight16)
	default:
		return nil, false, fmt.Errorf("no use for a %T", m)
	}
	if grey && !(transparent && coloured(under)) {
		return firstChannel(rgb), transparent, nil
	}
	return rgb, transparent, nil
}

// coloured tells whether a colour is no grey.
func coloured(c color.RGBA) bool { return c.R != c.G || c.G != c.B }

// layOn8 lays RGBA pixels on a colour, in place.
func layOn8(pix []uint8, under color.RGBA, lay func(c, a, under uint8) uint8) {
	for i := 0; i+4 <= len(pix); i += 4 {
		p := pix[i : i+4 : i+4]
		if a := p[3]; a != 255 {
			p[0], p[1], p[2], p[3] = lay(p[0], a, under.R), lay(p[1], a, under.G), lay(p[2], a, under.B), 255
		}
	}
}

// layOn16 lays RGBA pixels of 16 bits a sample, high byte first, on a colour in 8 bits, in the first half of their
// memory.
func layOn16(pix []uint8, bounds image.Rectangle, on ground,
	lay func(c, a uint16, under uint8, add threshold) uint8) *image.RGBA {
	n := len(pix) / 8
	for i := range n {
		add := on.threshold(i%bounds.Dx(), i/bounds.Dx())
		from, to := pix[8*i:8*i+8:8*i+8], pix[4*i:4*i+4:4*i+4]
		sample := func(c int) uint16 { return uint16(from[2*c])<<8 | uint16(from[2*c+1]) }
		r, g, b, a := sample(0), sample(1), sample(2), sample(3)
		to[0], to[1], to[2], to[3] = lay(r, a, on.R, add), lay(g, a, on.G, add), lay(b, a, on.B, add), 255
	}
	return &image.RGBA{Pix: pix[: 4*n : 4*n], Stride: 4 * bounds.Dx(), Rect: bounds}
}

// narrowGrey brings grey of 16 bits to 8, in the first half of its memory.
func narrowGrey(m *image.Gray16, on ground) *image.Gray {
	n := len(m.Pix) / 2
	for i := range n {
		m.Pix[i] = narrow16(uint16(m.Pix[2*i])<<8|uint16(m.Pix[2*i+1]), on.threshold(i%m.Rect.Dx(), i/m.Rect.Dx()))
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

// paletteOn looks every pixel's colour up, laid on a colour. A frame that lies away from the origin is moved there.
func paletteOn(m *image.Paletted, under color.RGBA) *image.RGBA {
	var table [256][4]uint8
	for i := range table {
		table[i] = [4]uint8{0, 0, 0, 255}
		if i < len(m.Palette) {
			table[i] = colourOn(m.Palette[i], under)
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

func colourOn(c color.Color, under color.RGBA) [4]uint8 {
	if c, ok := c.(color.NRGBA); ok { // its RGBA method would round on the way
		return [4]uint8{straight8(c.R, c.A, under.R), straight8(c.G, c.A, under.G), straight8(c.B, c.A, under.B), 255}
	}
	r, g, b, a := c.RGBA()
	lay := func(v uint32, under uint8) uint8 { return premultiplied16(uint16(v), uint16(a), under, halfThreshold) }
	return [4]uint8{lay(r, under.R), lay(g, under.G), lay(b, under.B), 255}
}

// planesOn lays planes with an alpha of their own on a colour, as RGB: alpha is finer than the chroma planes.
func planesOn(m *image.NYCbCrA, under color.RGBA) *image.RGBA {
	rgb := image.NewRGBA(m.Rect)
	for y := m.Rect.Min.Y; y < m.Rect.Max.Y; y++ {
		out := rgb.Pix[rgb.PixOffset(m.Rect.Min.X, y):]
		for i := range m.Rect.Dx() {
			x := m.Rect.Min.X + i
			c := m.COffset(x, y)
			r, g, b := color.YCbCrToRGB(m.Y[m.YOffset(x, y)], m.Cb[c], m.Cr[c])
			a := m.A[m.AOffset(x, y)]
			p := out[4*i : 4*i+4 : 4*i+4]
			p[0], p[1], p[2], p[3] = straight8(r, a, under.R), straight8(g, a, under.G), straight8(b, a, under.B), 255
		}
	}
	return rgb
}

// inksToRGB turns CMYK into RGB in its own memory, on all processors.
func inksToRGB(m *image.CMYK, inks *colour.Inks) *image.RGBA {
	rows := max(1, m.Rect.Dy()/(8*runtime.GOMAXPROCS(0))) // of each piece
	var group sync.WaitGroup
	for piece := range slices.Chunk(m.Pix, max(1, rows*m.Stride)) {
		group.Go(func() { inks.ToRGB(piece) })
	}
	group.Wait()
	return &image.RGBA{Pix: m.Pix, Stride: m.Stride, Rect: m.Rect}
}
