package proof

import (
	"image"
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// edgePixel is the light of a pixel near a drop's edge, some of whose rays may go through the drop and some past it.
//
// What these few rays see past the drop tells how it differs over the pupil; its mean is what the pixels
// further out have, as far as the pixel looks past the drop. Two sets of rays never quite agree, and where
// one took over from the other there would be a step.
func (v *view) edgePixel(i, j int, at, drop layout.Point) texture.Light {
	n := len(v.atEdge)
	var few [2 * DefaultSamples * edgeMultiple]float64
	shares := few[:0] // of each ray's patch, what passes beside the drop
	if n > len(few) {
		shares = make([]float64, 0, n)
	}
	shares = shares[:n]
	var most, sum float64
	for k := range v.atEdge {
		a := &v.atEdge[k]
		met := v.met(at, drop, a)
		fromEdge := v.fromEdgeMM(at, met)
		switch reachMM := v.edgeReachesMM[k]; {
		case fromEdge > reachMM:
			shares[k] = 1
		case fromEdge >= -reachMM:
			shares[k] = board.Covered(v.tracer.ClearanceMM(fromDrop(v.lens.ray(i, j, a), met)), v.edgeSpanMM(k, at, met))
		}
		most, sum = max(most, shares[k]), sum+shares[k]
	}
	shown := sum / float64(n)
	if shown == 1 {
		return v.besidePixel(i, j)
	}
	through, mirrored := v.throughSpread(i, j, at, drop), v.mirrorSpread(at, drop)
	skinEvery := 1
	if most == 0 && !v.lens.pinhole() {
		skinEvery = 2 // within the edge there are more rays than the skin needs
	}
	var light, past texture.Light
	for k := range v.atEdge {
		a := &v.atEdge[k]
		r := v.lens.ray(i, j, a)
		if shares[k] < 1 {
			met := v.met(at, drop, a)
			meets := v.through(r, met, through.patch(a), nil)
			if k%skinEvery == 0 {
				meets = meets.Add(v.thrown(r, met, mirrored.patch(a)).Scale(float32(skinEvery)))
			}
			light = light.Add(meets.Scale(float32(1 - shares[k])))
		}
		if most > 0 {
			// The differences from the mean: weights that add up to nothing.
			past = past.Add(v.pastEdge(i, j, k).Scale(float32(shares[k] - shown)))
		}
	}
	light = light.Add(past).Scale(1 / float32(n))
	if most > 0 {
		light = light.Add(v.besidePixel(i, j).Scale(float32(shown)))
	}
	return light
}

// pastEdge is the light of one of the rays of a pixel at a drop's edge as if there were no drop.
func (v *view) pastEdge(i, j, k int) texture.Light {
	middle := v.pastMiddle(i, j)
	if v.beside.atEdge != nil {
		return v.beside.atEdge.ray(k, middle)
	}
	return v.pastRay(middle, &v.atEdge[k], nil)
}

// edgeBox holds all pixels of the frame that may be near a drop's edge, its sides included.
func (v *view) edgeBox() (box image.Rectangle) {
	furthest := 1 + v.edgeBlurMM/min(v.outline.WidthMM, v.outline.HeightMM) // the share of such a pixel
	between := func(px float64, most int) int { return int(max(0, min(px, float64(most)))) }
	asideMM, upMM, downMM := v.sight.BoundsMM()
	for _, drop := range v.drops {
		at := func(xMM, yMM float64) image.Point {
			return image.Point{
				X: between(v.lens.middleXPx+(drop.XMM+furthest*xMM)/v.camera.PixelMM(), v.camera.WidthPx),
				Y: between(v.lens.middleYPx+(drop.YMM+yMM)/v.camera.PixelMM(), v.camera.HeightPx),
			}
		}
		// A rectangle with an empty side is left out of a union.
		box = box.Union(image.Rectangle{at(-asideMM, v.sweep.fromMM-furthest*upMM),
			at(asideMM, v.sweep.toMM+furthest*downMM).Add(image.Pt(1, 1))})
	}
	return box
}

// edgePupilMM is the radius of the pupil's blur in the plane of the drop's edge.
func (v *view) edgePupilMM() float64 {
	return v.lens.pupilMM * math.Abs(v.lens.cameraMM/v.lens.camera.FocusMM-1)
}

// patchesAtEdge are the patches that the rays at the edge stand for in the plane of the drop's edge, the same for every
// pixel.
func (v *view) patchesAtEdge() (patches []board.Patch) {
	pixelMM, pupilMM := v.camera.PixelMM(), v.edgePupilMM()
	s := spread{board.Box(pixelMM, pixelMM), disc(pupilMM), board.Box(0, v.sweep.mm())}
	for k := range v.atEdge {
		patches = append(patches, s.patch(&v.atEdge[k]))
	}
	return patches
}

// edgeSpanMM is the width of such a patch across the edge, near a point of the drop's plane.
func (v *view) edgeSpanMM(k int, at, drop layout.Point) float64 {
	p := &v.edgePatches[k]
	variance := p.XX
	if v.moves() { // the edge moves along itself at the drop's sides, and across at its top and bottom
		x := (at.XMM - drop.XMM) / (v.outline.WidthMM * v.outline.WidthMM)
		y := (at.YMM - drop.YMM) / (v.outline.HeightMM * v.outline.HeightMM)
		variance += (p.YY - p.XX) * y * y / (x*x + y*y)
	}
	return math.Sqrt(variance / pixelVariance)
}

// reachesAtEdge are how far from the drop's edge, in the plane of the edge, a pixel may be for each of its
// rays to be at the edge: further off, the whole patch is on the pixel's own side.
func (v *view) reachesAtEdge() (reachesMM []float64) {
	for k := range v.atEdge {
		a := &v.atEdge[k]
		thrownMM := (1 + math.Hypot(a.xPx, a.yPx)) * v.camera.PixelMM()
		reachesMM = append(reachesMM, thrownMM+v.edgePupilMM()+math.Sqrt(v.edgePatches[k].YY/pixelVariance))
	}
	return reachesMM
}
