// Package texture holds the artwork as a stack of ever smaller copies, so that pictures of the whole (the proof, the seam map, the
// guide) can be taken from it at any size without sparkle.
//
// Frame: picture coordinates, 0 to 1, x right and y down, upright as it should appear in the drop. Colours are linear light, 0 to 1.
package texture

import (
	"image"
	"image/color"
	"math"

	"dropsheet/flip"
	"dropsheet/tile/artwork"
)

// Texture is the stack. It is safe for use by many goroutines.
type Texture struct {
	art           image.Image // level 0, as decoded
	upright       flip.Turn
	width, height int           // upright, in the artwork's pixels
	halves        []*image.RGBA // level 1 and up, upright, each half the one before
}

// New builds the stack. Level 0 is the artwork itself; the rest adds a third of its pixels.
func New(p *artwork.Picture) *Texture {
	t := &Texture{art: p.Image, upright: p.Upright}
	t.width, t.height = p.Size()
	w, h := t.width, t.height
	read := t.artworkAt
	for w > 1 || h > 1 {
		half := shrink(w, h, read)
		t.halves = append(t.halves, half)
		w, h = half.Rect.Dx(), half.Rect.Dy()
		read = func(x, y int) color.RGBA { return half.RGBAAt(x, y) }
	}
	return t
}

// Size is the artwork's size, upright, in its own pixels.
func (t *Texture) Size() (widthPx, heightPx int) { return t.width, t.height }

// Reduced is the largest copy that is at most that many pixels wide and high, upright; at worst a single pixel.
// It must not be changed.
func (t *Texture) Reduced(sidePx int) *image.RGBA {
	for _, half := range t.halves {
		if half.Rect.Dx() <= sidePx && half.Rect.Dy() <= sidePx {
			return half
		}
	}
	only := image.NewRGBA(image.Rect(0, 0, 1, 1)) // an artwork of one pixel has no halves
	only.SetRGBA(0, 0, t.artworkAt(0, 0))
	return only
}

// artworkAt reads a pixel of the artwork by its upright place.
func (t *Texture) artworkAt(x, y int) color.RGBA {
	stored := t.art.Bounds()
	x, y = t.upright.Source(x, y, stored.Dx(), stored.Dy())
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

// At is the picture's colour at (u, v), averaged over about spanPx of the artwork's pixels: between two levels of the stack
// and four pixels of each. Outside 0 to 1 the outermost pixels go on.
//
// Reading a level of pixels s wide between its four nearest averages with a variance of s²/12 (the pixel) and s²/6 (the way between two):
// as much as an even square of side s√3. So the level for spanPx is the one whose pixels are spanPx/√3 wide.
func (t *Texture) At(u, v, spanPx float64) Light {
	level := min(math.Log2(max(spanPx/math.Sqrt(3), 1)), float64(len(t.halves)))
	whole := int(level)
	near := t.bilinear(whole, u, v)
	if part := level - float64(whole); part > 0 && whole < len(t.halves) {
		return near.mix(t.bilinear(whole+1, u, v), float32(part))
	}
	return near
}

// bilinear reads one level between its four nearest pixels.
func (t *Texture) bilinear(level int, u, v float64) Light {
	w, h := t.width, t.height
	if level > 0 {
		w, h = t.halves[level-1].Rect.Dx(), t.halves[level-1].Rect.Dy()
	}
	x, y := u*float64(w)-0.5, v*float64(h)-0.5
	x0, y0 := math.Floor(x), math.Floor(y)
	fx, fy := float32(x-x0), float32(y-y0)
	left, right := clamp(x0, w), clamp(x0+1, w)
	top, bottom := clamp(y0, h), clamp(y0+1, h)
	var at [4]color.RGBA
	if level == 0 {
		at = [4]color.RGBA{t.artworkAt(left, top), t.artworkAt(right, top), t.artworkAt(left, bottom), t.artworkAt(right, bottom)}
	} else {
		half := t.halves[level-1]
		at = [4]color.RGBA{half.RGBAAt(left, top), half.RGBAAt(right, top), half.RGBAAt(left, bottom), half.RGBAAt(right, bottom)}
	}
	upper := Linear(at[0]).mix(Linear(at[1]), fx)
	lower := Linear(at[2]).mix(Linear(at[3]), fx)
	return upper.mix(lower, fy)
}

// clamp makes a pixel number of v on an axis of n pixels.
func clamp(v float64, n int) int { return int(max(0, min(v, float64(n-1)))) }
