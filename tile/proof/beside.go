package proof

import (
	"context"
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// beside is the light of pixels that look past the drop. Where the board is far out of focus that changes
// slowly from pixel to pixel: it is then worked out finely for every few pixels, and between them lies on a
// slope.
type beside struct {
	step         int // pixels from node to node; 1 where every pixel is its own
	across, down int // nodes in a row and in a column
	nodes        []texture.Light
	atEdge       *plane // what the rays of pixels at a drop's edge see past it; nil where each is looked up by itself
}

// Nodes stand a fifth of the blur's standard deviation apart: a slope between them then misses light that
// varies as a Gaussian of that deviation by at most 1/8 of (1/5)², half a per cent of its range.
const (
	nodesADeviation = 5
	maxStep         = 16
)

// The board's detail is far smaller than its blur there, and a few rays catch it by chance: lettering then
// shows in ghosts. Into a node go as many times the rays of a pixel as it has pixels to share them, over a
// number, within bounds: more where a plane can be had, in which rays cost little.
const (
	pixelsARay        = 8
	pixelsARayOnPlane = 4
	leastRaysFor      = 2
	mostRaysFor       = 32
)

// newBeside works the nodes out.
func (v *view) newBeside(ctx context.Context) beside {
	far := (v.lens.cameraMM + v.sight.DistanceMM) / v.lens.cameraMM
	deviationPx := math.Sqrt(v.direct.pupil.XX+v.direct.pixel.XX) / (v.camera.PixelMM() * far)
	b := beside{step: max(1, min(maxStep, int(deviationPx/nodesADeviation)))}
	if b.step == 1 {
		return b
	}
	rays := func(pixels int) []aim {
		return v.lens.aim(raySet(len(v.past) * max(leastRaysFor, min(b.step*b.step/pixels, mostRaysFor))))
	}
	b.across, b.down = v.camera.WidthPx/b.step+2, v.camera.HeightPx/b.step+2
	b.nodes = make([]texture.Light, b.across*b.down)
	frame := image.Rect(0, 0, (b.across-1)*b.step, (b.down-1)*b.step)
	set := rays(pixelsARayOnPlane)
	plane := v.newPlane(ctx, frame, set)
	if plane == nil {
		set = rays(pixelsARay)
		plane = v.newPlane(ctx, frame, set)
	}
	b.atEdge = v.newPlane(ctx, v.edgeBox(), v.atEdge)
	texture.Rows(b.down, func(j int) {
		if ctx.Err() != nil {
			return
		}
		for i := range b.across {
			x, y := i*b.step, j*b.step
			switch {
			case !v.seesPastNear(x, y, b.step): // nobody asks for it
			case plane != nil:
				b.nodes[j*b.across+i] = plane.mean(v.pastMiddle(x, y))
			default:
				b.nodes[j*b.across+i] = v.pastPixel(x, y, set)
			}
		}
	})
	return b
}

// seesPastNear tells whether a pixel within that many pixels each way of another may look past the drop.
func (v *view) seesPastNear(i, j, stepPx int) bool {
	at := v.camera.At(float64(i)+0.5, float64(j)+0.5)
	_, mostMM := v.fromEdgesMM(at, v.nearest(at))
	return mostMM+float64(stepPx)*math.Sqrt2*v.camera.PixelMM() >= -v.edgeBlurMM
}

// at is the light of a pixel; ok is false where there are no nodes.
func (b *beside) at(i, j int) (light texture.Light, ok bool) {
	if b.step == 1 {
		return texture.Light{}, false
	}
	x, y := i/b.step, j/b.step
	fx, fy := float64(i-x*b.step)/float64(b.step), float64(j-y*b.step)/float64(b.step)
	left, right, upper, lower := float32(1-fx), float32(fx), float32(1-fy), float32(fy)
	row, next := b.nodes[y*b.across+x:][:2], b.nodes[(y+1)*b.across+x:][:2]
	for c := range light {
		light[c] = upper*(left*row[0][c]+right*row[1][c]) + lower*(left*next[0][c]+right*next[1][c])
	}
	return light, true
}

// besidePixel is the light of a pixel as if there were no drop, where some of its rays may pass it.
func (v *view) besidePixel(i, j int) texture.Light {
	if light, ok := v.beside.at(i, j); ok {
		return light
	}
	return v.pastPixel(i, j, v.past)
}

// pastPixel is that by the mean of a set of rays.
func (v *view) pastPixel(i, j int, set []aim) (sum texture.Light) {
	middle := v.pastMiddle(i, j)
	var near board.Expansion
	if v.lens.pinhole() {
		over := v.direct.patch(&set[0])
		near = v.expansion(middle, v.direct, over)
		near.Average(over)
	}
	for k := range set {
		sum = sum.Add(v.pastRay(middle, &set[k], &near))
	}
	return sum.Scale(1 / float32(len(set)))
}

// pastRay is the light of one ray of a pixel whose middle lands there, near such a place of the board if one is told.
func (v *view) pastRay(middle layout.Point, a *aim, near *board.Expansion) texture.Light {
	off := v.pastOffset(a)
	return v.landed(middle.XMM+off.XMM, middle.YMM+off.YMM, v.direct.patch(a), near)
}
