package jpeg

import (
	"image"
	"image/color"
	"math"
	"math/rand/v2"
)

// The ways that Encode stores chroma.
const half, full = image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio444

var ratios = []image.YCbCrSubsampleRatio{
	image.YCbCrSubsampleRatio420, image.YCbCrSubsampleRatio444, image.YCbCrSubsampleRatio422, image.YCbCrSubsampleRatio440,
	image.YCbCrSubsampleRatio411, image.YCbCrSubsampleRatio410,
}

// kinds are how many kinds of picture paint makes: grey, RGBA and the YCbCr of each ratio.
var kinds = 2 + len(ratios)

// paint makes a picture of a kind whose levels of red, green and blue (or luma and both chromas) at, given
// places from the first pixel, returns.
func paint(kind int, r image.Rectangle, at func(x, y, component int) byte) image.Image {
	switch kind {
	case 0:
		m := image.NewGray(r)
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				m.Pix[m.PixOffset(x, y)] = at(x-r.Min.X, y-r.Min.Y, 0)
			}
		}
		return m
	case 1:
		m := image.NewRGBA(r)
		for y := r.Min.Y; y < r.Max.Y; y++ {
			for x := r.Min.X; x < r.Max.X; x++ {
				p := func(component int) byte { return at(x-r.Min.X, y-r.Min.Y, component) }
				m.SetRGBA(x, y, color.RGBA{p(0), p(1), p(2), 255})
			}
		}
		return m
	}
	m := image.NewYCbCr(r, ratios[kind-2])
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			m.Y[m.YOffset(x, y)] = at(x-r.Min.X, y-r.Min.Y, 0)
			c := m.COffset(x, y)
			m.Cb[c], m.Cr[c] = at(x-r.Min.X, y-r.Min.Y, 1), at(x-r.Min.X, y-r.Min.Y, 2)
		}
	}
	return m
}

// window cuts a rectangle out of a picture.
func window(m image.Image, r image.Rectangle) image.Image {
	return m.(interface {
		SubImage(image.Rectangle) image.Image
	}).SubImage(r)
}

// like is a photograph as far as an encoder cares: slopes, an edge, waves that grow finer, and grain.
func like(rng *rand.Rand) func(x, y, component int) byte {
	return func(x, y, component int) byte {
		v := 90 + 60*math.Sin(float64(x*(component+1))/40) + 30*math.Cos(float64(x*y)/900)
		if x+2*y > 250 {
			v += 60
		}
		return byte(min(max(v+4*rng.NormFloat64(), 0), 255))
	}
}

// noise is every level, no two pixels alike.
func noise(rng *rand.Rand) func(x, y, component int) byte {
	return func(_, _, _ int) byte { return byte(rng.Uint32()) }
}

// chequers are squares of black and white of a few pixels.
func chequers(side int) func(x, y, component int) byte {
	return func(x, y, component int) byte { return -byte((x/side + y/side + component) & 1) }
}

// truth returns what a picture's planes should hold, worked out in floating point: luma, and chroma of each pixel or
// as the mean of each two by two pixels, the last repeated.
func truth(img image.Image, chroma image.YCbCrSubsampleRatio) [][]float64 {
	r := img.Bounds()
	at := func(x, y int) [3]float64 {
		x, y = min(x, r.Max.X-1), min(y, r.Max.Y-1)
		switch m := img.(type) {
		case *image.Gray:
			return [3]float64{float64(m.GrayAt(x, y).Y)}
		case *image.YCbCr:
			c := m.YCbCrAt(x, y)
			return [3]float64{float64(c.Y), float64(c.Cb), float64(c.Cr)}
		}
		c := img.(*image.RGBA).RGBAAt(x, y)
		red, green, blue := float64(c.R), float64(c.G), float64(c.B)
		luma := 0.299*red + 0.587*green + 0.114*blue // JFIF 1.02, recalled from memory
		return [3]float64{luma, 128 + (blue-luma)/1.772, 128 + (red-luma)/1.402}
	}
	planes := make([][]float64, 3)
	for y := r.Min.Y; y < r.Max.Y; y++ {
		for x := r.Min.X; x < r.Max.X; x++ {
			planes[0] = append(planes[0], at(x, y)[0])
		}
	}
	if _, ok := img.(*image.Gray); ok {
		return planes[:1]
	}
	step, next := 2, 1
	if chroma == full {
		step, next = 1, 0
	}
	for y := r.Min.Y; y < r.Max.Y; y += step {
		for x := r.Min.X; x < r.Max.X; x += step {
			for k := 1; k < 3; k++ {
				planes[k] = append(planes[k], (at(x, y)[k]+at(x+next, y)[k]+at(x, y+next)[k]+at(x+next, y+next)[k])/4)
			}
		}
	}
	return planes
}
