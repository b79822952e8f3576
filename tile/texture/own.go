package texture

import (
	"image/color"

	"dropsheet/tile/colour"
)

// ownSpace is the artwork's colours when they are not sRGB's. Its levels are mixed in their own light, and what
// comes of it taken to sRGB's: the same colour as that of levels taken there first and then mixed, for a
// matrix in place of four, and only what sRGB can't show even so is cut off.
type ownSpace colour.Space

// light is the light of the artwork's levels, of its own primaries.
func (o *ownSpace) light(c color.RGBA) Light {
	return (*colour.Space)(o).Light(c.R, c.G, c.B)
}

// inSRGB goes from light of the artwork's own primaries to that of sRGB's, each clipped to what can be shown.
func (o *ownSpace) inSRGB(own Light) (out Light) {
	for i, row := range o.ToSRGB {
		out[i] = max(0, min(float32(row[0]*own[0])+float32(row[1]*own[1])+float32(row[2]*own[2]), 1))
	}
	return out
}

// bilinearOwn reads the artwork between its four nearest pixels when it has colours of its own.
func (t *Texture) bilinearOwn(u, v float64) Light {
	left, right, fx := neighbours(u, t.width)
	top, bottom, fy := neighbours(v, t.height)
	upper := t.own.light(t.artworkAt(left, top)).Mix(t.own.light(t.artworkAt(right, top)), fx)
	lower := t.own.light(t.artworkAt(left, bottom)).Mix(t.own.light(t.artworkAt(right, bottom)), fx)
	return t.own.inSRGB(upper.Mix(lower, fy))
}

// mean fills a row of the first half, in sRGB's levels, from the artwork's own.
func (o *ownSpace) mean(half, upper, lower []uint8, w, channels int) {
	space := (*colour.Space)(o)
	for x := range (w + 1) / 2 {
		left, right := 2*x*channels, min(2*x+1, w-1)*channels
		if channels == 1 { // a grey picture's matrix changes nothing
			sum := space.Grey(upper[left]) + space.Grey(upper[right]) + space.Grey(lower[left]) + space.Grey(lower[right])
			half[x] = encoded(sum / 4)
			continue
		}
		var own Light
		for _, p := range [4][]uint8{upper[left:], upper[right:], lower[left:], lower[right:]} {
			for i, v := range space.Light(p[0], p[1], p[2]) {
				own[i] += v / 4
			}
		}
		for i, v := range o.inSRGB(own) {
			half[x*channels+i] = encoded(v)
		}
	}
}
