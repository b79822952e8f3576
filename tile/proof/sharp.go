package proof

import (
	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// sharpPixel is the light of a pixel through a drop when everything is in focus: its rays land within what
// one pixel sees of the board. Where it is known how landings change from pixel to pixel only its middle is
// traced. A ray half a pixel off then misses its place by 1/8 of the landing's second derivative, and slopes
// that were traced to the next pixel by twice that more: in a drop of radius 1 the derivative is under 7 slopes
// out to nodesWithin, and with 140 pixels to the radius or more that makes a fiftieth of a pixel at most. A drop
// that moves is traced for each ray.
func (v *view) sharpPixel(i, j int, at, drop layout.Point) (sum texture.Light) {
	slopes, known := v.slopesAt(i, j, at, drop)
	even := known && v.share(at, drop) <= nodesWithin &&
		min(v.outline.WidthMM, v.outline.HeightMM) >= 2*stepsARadius*v.camera.PixelMM()
	if !known {
		slopes, _ = v.slopes(v.within(at, drop), drop)
	}
	spread := v.spread(&slopes)
	over := spread.patch(&v.inside[0])
	var near board.Expansion
	middle, transmittance, ok := v.middle(i, j, drop)
	if ok {
		near = v.expansion(middle, spread, over)
		near.Average(over)
	}
	for k := range v.inside {
		a := &v.inside[k]
		if !even || !ok || v.moves() {
			sum = sum.Add(v.throughInside(i, j, k, at, drop, over, &near))
			continue
		}
		x, y := middle.XMM+a.xPx*slopes.across.xMM+a.yPx*slopes.down.xMM, middle.YMM+a.xPx*slopes.across.yMM+
			a.yPx*slopes.down.yMM
		sum = sum.Add(v.landed(x, y, over, &near).Scale(float32(transmittance)))
	}
	return sum.Scale(1 / float32(len(v.inside)))
}
