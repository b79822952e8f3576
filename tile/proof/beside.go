package proof

import (
	"context"
	"math"

	"dropsheet/tile/texture"
)

// beside is the light of pixels that look past the drop. Where the board is far out of focus that changes slowly from pixel to pixel: it is then
// worked out finely for every few pixels, and between them lies on a slope.
type beside struct {
	step   int // pixels from node to node; 1 where every pixel is its own
	across int // nodes in a row
	nodes  []texture.Light
}

// Nodes stand a fifth of the blur's standard deviation apart: a slope between them then misses light that varies as a Gaussian of that deviation by
// at most 1/8 of (1/5)², half a per cent of its range.
const (
	nodesADeviation = 5
	maxStep         = 16
)

// The board's detail is far smaller than its blur there, and a few rays catch it by chance: into a node go as many times the rays of a pixel as it has
// pixels to share them, over pixelsARay, within bounds.
const (
	pixelsARay   = 8
	leastRaysFor = 2
	mostRaysFor  = 32
)

// newBeside works the nodes out.
func (v *view) newBeside(ctx context.Context) beside {
	far := (v.lens.cameraMM + v.sight.DistanceMM) / v.lens.cameraMM
	deviationPx := math.Sqrt(v.direct.pupil.xx+v.direct.pixel.xx*pixelVariance) / (v.camera.PixelMM() * far)
	b := beside{step: max(1, min(maxStep, int(deviationPx/nodesADeviation)))}
	if b.step == 1 {
		return b
	}
	set := v.lens.aim(raySet(len(v.past) * max(leastRaysFor, min(b.step*b.step/pixelsARay, mostRaysFor))))
	b.across = v.camera.WidthPx/b.step + 2
	down := v.camera.HeightPx/b.step + 2
	b.nodes = make([]texture.Light, b.across*down)
	texture.Rows(down, func(j int) {
		if ctx.Err() != nil {
			return
		}
		for i := range b.across {
			b.nodes[j*b.across+i] = v.pastPixel(i*b.step, j*b.step, set)
		}
	})
	return b
}

// at is the light of a pixel; ok is false where there are no nodes.
func (b *beside) at(i, j int) (light texture.Light, ok bool) {
	if b.step == 1 {
		return texture.Light{}, false
	}
	x, y := i/b.step, j/b.step
	fx, fy := float64(i%b.step)/float64(b.step), float64(j%b.step)/float64(b.step)
	row, next := b.nodes[y*b.across:], b.nodes[(y+1)*b.across:]
	return mix(mix(row[x], row[x+1], fx), mix(next[x], next[x+1], fx), fy), true
}

// besidePixel is the light of a pixel as if there were no drop.
func (v *view) besidePixel(i, j int) texture.Light {
	if light, ok := v.beside.at(i, j); ok {
		return light
	}
	return v.pastPixel(i, j, v.past)
}

// pastPixel is that by the mean of a set of rays.
func (v *view) pastPixel(i, j int, set []aim) (sum texture.Light) {
	for k := range set {
		a := &set[k]
		sum = sum.Add(v.pastDrop(v.lens.ray(i, j, a), v.direct.patch(a)))
	}
	return sum.Scale(1 / float32(len(set)))
}
