package proof

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/texture"
)

// bentPrint is what is printed at a place of the board, board mm, when the picture is not plain: the picture,
// beyond its outline the surround, or nothing but white paper. gain is what the print makes up for the lamps
// by; bare paper makes up for nothing.
func (b *board) bentPrint(xMM, yMM float64, over patch, gain float32) texture.Light {
	beyond := paper
	if b.surround != nil {
		beyond = b.surround.Scale(gain)
	}
	widestMM := math.Sqrt((over.xx + over.yy) / pixelVariance)
	at := b.bent.Near(xMM, yMM, widestMM)
	within := b.withinOutline(at, xMM, yMM, widestMM, over)
	if within == 0 {
		return beyond
	}
	w, h := b.picture.Size()
	picture := over.on(at, float64(w), float64(h))
	light := b.picture.At(at.U, at.V, math.Sqrt(picture.narrow()/pixelVariance)).Scale(gain)
	if within == 1 {
		return light
	}
	return mix(beyond, light, within)
}

// on is a patch of the board as pixels of the picture, by the slopes of what the place shows.
func (over patch) on(at layout.Shown, widthPx, heightPx float64) (c covariance) {
	ux, uy, vx, vy := at.UX*widthPx, at.UY*widthPx, at.VX*heightPx, at.VY*heightPx
	return covariance{
		xx: ux*ux*over.xx + 2*ux*uy*over.xy + uy*uy*over.yy,
		xy: ux*vx*over.xx + (ux*vy+uy*vx)*over.xy + uy*vy*over.yy,
		yy: vx*vx*over.xx + 2*vx*vy*over.xy + vy*vy*over.yy,
	}
}

// withinOutline is the share of a patch, at most that wide, that lies within the printed picture's outline.
// Near it, the outline's direction is told by what a place close by has.
func (b *board) withinOutline(at layout.Shown, xMM, yMM, widestMM float64, over patch) float64 {
	if math.Abs(at.InsideMM) >= widestMM {
		return covered(at.InsideMM, 0)
	}
	const nearMM = 1e-3
	dx := b.bent.At(xMM+nearMM, yMM).InsideMM - at.InsideMM
	dy := b.bent.At(xMM, yMM+nearMM).InsideMM - at.InsideMM
	length := math.Hypot(dx, dy)
	if length == 0 {
		return covered(at.InsideMM, 0)
	}
	dx, dy = dx/length, dy/length
	across := dx*dx*over.xx + 2*dx*dy*over.xy + dy*dy*over.yy
	return covered(at.InsideMM, math.Sqrt(max(0, across)/pixelVariance))
}
