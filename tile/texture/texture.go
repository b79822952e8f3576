// Package texture holds the artwork as a stack of ever smaller copies, so that pictures of the whole (the
// proof, the seam map, the guide) can be taken from it at any size without sparkle.
//
// Frame: picture coordinates, 0 to 1, x right and y down, upright as it should appear in the drop. Colours
// are linear light of the sRGB primaries, 0 to 1.
package texture

import (
	"image"
	"image/color"
	"math"
	"sync"

	"dropsheet/flip"
	"dropsheet/tile/artwork"
)

// Texture is the stack. It is safe for use by many goroutines.
type Texture struct {
	art           image.Image // level 0, as decoded
	upright       flip.Turn
	width, height int       // upright, in the artwork's pixels
	halves        []level   // level 1 and up, upright, each half the one before, in sRGB's levels
	own           *ownSpace // what level 0's levels mean; nil when they are sRGB's too
	first         sync.Once // that fills level 1
	mean          meanFunc  // that it is filled by
}

// New builds the stack. Level 0 is the artwork itself, and the rest adds a third of its pixels at most. Colours are
// those of the artwork's profile; of one that can't be followed (artwork.Picture.OwnSpace tells why) the levels are
// taken for sRGB's.
func New(p *artwork.Picture) *Texture {
	t := &Texture{art: p.Image, upright: p.Upright, mean: meanSRGB}
	if space, err := p.OwnSpace(); err == nil && space != nil {
		t.own = (*ownSpace)(space)
		t.mean = t.own.mean
	}
	t.width, t.height = p.Size()
	if t.width > 1 || t.height > 1 {
		t.halves = append(t.halves, level{width: (t.width + 1) / 2, height: (t.height + 1) / 2, channels: t.channels()})
	}
	row := t.firstRow
	for n := len(t.halves); n > 0 && (t.halves[n-1].width > 1 || t.halves[n-1].height > 1); n++ {
		from := t.halves[n-1]
		half := shrink(from.width, from.height, from.channels, row, meanSRGB)
		t.halves = append(t.halves, half)
		row = func(y int, _ []uint8) []uint8 { return half.row(y) }
	}
	return t
}

// channels is how many levels a pixel has.
func (t *Texture) channels() int {
	if _, grey := t.art.(*image.Gray); grey {
		return 1
	}
	return 3
}

// Size is the artwork's size, upright, in its own pixels.
func (t *Texture) Size() (widthPx, heightPx int) { return t.width, t.height }

// Reduced is the largest copy that is at most that many pixels wide and high, upright; at worst a single pixel.
func (t *Texture) Reduced(sidePx int) *image.RGBA {
	for i, half := range t.halves {
		if half.width <= sidePx && half.height <= sidePx {
			return t.half(i + 1).picture()
		}
	}
	only := image.NewRGBA(image.Rect(0, 0, 1, 1)) // an artwork of one pixel has no halves
	only.SetRGBA(0, 0, t.FromArtwork(t.artworkAt(0, 0)).SRGB())
	return only
}

// FromArtwork is the light of a colour in the artwork's own levels, as a surround's are.
func (t *Texture) FromArtwork(c color.RGBA) Light {
	if t.own == nil {
		return Linear(c)
	}
	return t.own.inSRGB(t.own.light(c))
}

// artworkRow reads a row of the artwork by its upright place into buffer: a byte a pixel of a grey one, three
// of any other.
func (t *Texture) artworkRow(y int, buffer []uint8) []uint8 {
	stored := t.art.Bounds()
	if _, grey := t.art.(*image.Gray); grey {
		for x := range t.width {
			buffer[x] = t.artworkAt(x, y).R
		}
		return buffer
	}
	art, ycc := t.art.(*image.YCbCr)
	if !ycc || t.upright != (flip.Turn{}) {
		for x := range t.width {
			c := t.artworkAt(x, y)
			buffer[3*x], buffer[3*x+1], buffer[3*x+2] = c.R, c.G, c.B
		}
		return buffer
	}
	// Most artworks are upright JPEGs.
	for x := range t.width {
		luma, chroma := art.YOffset(x+stored.Min.X, y+stored.Min.Y), art.COffset(x+stored.Min.X, y+stored.Min.Y)
		p := buffer[3*x : 3*x+3 : 3*x+3]
		p[0], p[1], p[2] = color.YCbCrToRGB(art.Y[luma], art.Cb[chroma], art.Cr[chroma])
	}
	return buffer
}

// artworkAt reads a pixel of the artwork by its upright place.
func (t *Texture) artworkAt(x, y int) color.RGBA {
	stored := t.art.Bounds()
	if t.upright != (flip.Turn{}) {
		x, y = t.upright.Source(x, y, stored.Dx(), stored.Dy())
	}
	x, y = x+stored.Min.X, y+stored.Min.Y
	switch art := t.art.(type) {
	case *image.Gray:
		v := art.Pix[art.PixOffset(x, y)]
		return color.RGBA{v, v, v, 0xff}
	case *image.YCbCr:
		luma, chroma := art.YOffset(x, y), art.COffset(x, y)
		r, g, b := color.YCbCrToRGB(art.Y[luma], art.Cb[chroma], art.Cr[chroma])
		return color.RGBA{r, g, b, 0xff}
	default:
		return art.(*image.RGBA).RGBAAt(x, y)
	}
}

// At is the picture's colour at (u, v), averaged over about spanPx of the artwork's pixels: between two
// levels of the stack and four pixels of each. Outside 0 to 1 the outermost pixels go on.
//
// Reading a level of pixels s wide between its four nearest averages with a variance of s²/12 (the pixel) and
// s²/6 (the way between two): as much as an even square of side s√3. So the level for spanPx is the one whose
// pixels are spanPx/√3 wide. Between two levels, of variances one and four, a share p of the coarser has the
// variance 1 + 3p: that of pixels m times as wide as the finer's with p = (m² - 1)/3.
func (t *Texture) At(u, v, spanPx float64) Light { return t.AtDepth(u, v, DepthFor(spanPx)) }

// Depth is where in the stack to read for a span: between which two levels, and how much of the coarser.
type Depth struct {
	level  int
	deeper float32
}

// DepthFor is the depth for an average over about so many of the artwork's pixels, which many places may share.
func DepthFor(spanPx float64) Depth {
	const widest = 1 << 30 // wider than any artwork
	if !(spanPx < widest) {
		spanPx = widest
	}
	fraction, exponent := math.Frexp(max(spanPx/math.Sqrt(3), 1)) // from 0.5 up to 1, times 2 to the exponent
	return Depth{exponent - 1, float32((4*fraction*fraction - 1) / 3)}
}

// AtDepth is At for a span whose depth is known.
func (t *Texture) AtDepth(u, v float64, d Depth) Light {
	if d.level >= len(t.halves) {
		return t.bilinear(len(t.halves), u, v)
	}
	near := t.bilinear(d.level, u, v)
	if d.deeper > 0 {
		return near.Mix(t.bilinear(d.level+1, u, v), d.deeper)
	}
	return near
}

// bilinear reads one level between its four nearest pixels.
func (t *Texture) bilinear(level int, u, v float64) Light {
	if level == 0 {
		if t.own != nil {
			return t.bilinearOwn(u, v)
		}
		return t.bilinearArtwork(u, v)
	}
	if level == 1 && !t.holdsFirst() {
		return t.bilinearFirst(u, v)
	}
	half := t.half(level)
	left, right, fx := neighbours(u, half.width)
	top, bottom, fy := neighbours(v, half.height)
	upper, lower := half.row(top), half.row(bottom)
	n := half.channels
	return blend(upper[n*left:], upper[n*right:], lower[n*left:], lower[n*right:], n, fx, fy)
}

// blend is the light between four pixels, of one channel or of red, green and blue first.
func blend(a, b, c, d []uint8, channels int, fx, fy float32) Light {
	if channels == 1 {
		grey := between(a[0], b[0], c[0], d[0], fx, fy)
		return Light{grey, grey, grey}
	}
	a, b, c, d = a[:3], b[:3], c[:3], d[:3]
	return Light{between(a[0], b[0], c[0], d[0], fx, fy), between(a[1], b[1], c[1], d[1], fx, fy),
		between(a[2], b[2], c[2], d[2], fx, fy)}
}

// between is the light between four levels of one channel.
func between(a, b, c, d uint8, fx, fy float32) float32 {
	return mix(mix(toLinear[a], toLinear[b], fx), mix(toLinear[c], toLinear[d], fx), fy)
}

// bilinearArtwork does so in the artwork itself.
func (t *Texture) bilinearArtwork(u, v float64) Light {
	left, right, fx := neighbours(u, t.width)
	top, bottom, fy := neighbours(v, t.height)
	at, upright := t.art.Bounds().Min, t.upright == (flip.Turn{})
	switch art := t.art.(type) { // of which two are stored as blend reads them
	case *image.Gray:
		if upright {
			upper, lower := art.Pix[art.PixOffset(at.X, top+at.Y):], art.Pix[art.PixOffset(at.X, bottom+at.Y):]
			return blend(upper[left:], upper[right:], lower[left:], lower[right:], 1, fx, fy)
		}
	case *image.RGBA:
		if upright {
			upper, lower := art.Pix[art.PixOffset(at.X, top+at.Y):], art.Pix[art.PixOffset(at.X, bottom+at.Y):]
			return blend(upper[4*left:], upper[4*right:], lower[4*left:], lower[4*right:], 4, fx, fy)
		}
	}
	var levels [4][3]uint8
	for i, p := range [4][2]int{{left, top}, {right, top}, {left, bottom}, {right, bottom}} {
		c := t.artworkAt(p[0], p[1])
		levels[i] = [3]uint8{c.R, c.G, c.B}
	}
	return blend(levels[0][:], levels[1][:], levels[2][:], levels[3][:], 3, fx, fy)
}

// neighbours is which two of n pixels a share of the way lies between, and how far from the first; at either
// end both are the outermost. Places are told apart to a millionth of a pixel: in the digits beyond, processors differ.
func neighbours(share float64, n int) (first, second int, part float32) {
	at := share*float64(n) - 0.5
	switch {
	case !(at > 0):
		return 0, 0, 0
	case at >= float64(n-1):
		return n - 1, n - 1, 0
	}
	const parts = 1 << 20
	steps := int64(at*parts + 0.5)
	first = int(steps / parts)
	if first >= n-1 {
		return n - 1, n - 1, 0
	}
	return first, first + 1, float32(steps%parts) / parts
}
