package board

import (
	"math"

	"dropsheet/layout"
)

// Patch is the part of the board that is looked at together, as the covariance of the places in it, in mm².
// A pixel that moves by a over the board with a step across, and by b with one down, sees (aaᵀ + bbᵀ) / 12.
type Patch struct{ XX, XY, YY float64 }

// sideSquared is the square of an even box's side, over its variance along that side.
const sideSquared = 12

// Box is the patch that an upright box fills evenly.
func Box(widthMM, heightMM float64) Patch {
	return Patch{XX: widthMM * widthMM / sideSquared, YY: heightMM * heightMM / sideSquared}
}

// spansMM are the sides of the upright box that has the patch's variances.
func (p Patch) spansMM() (wideMM, highMM float64) {
	return math.Sqrt(p.XX * sideSquared), math.Sqrt(p.YY * sideSquared)
}

// widestMM is the side of a box at least as wide as the patch is in any direction.
func (p Patch) widestMM() float64 { return math.Sqrt((p.XX + p.YY) * sideSquared) }

// acrossMM is the side of the box that has the patch's variance along a direction, of which x and y are the
// cosines.
func (p Patch) acrossMM(x, y float64) float64 {
	return math.Sqrt(max(0, x*x*p.XX+2*x*y*p.XY+y*y*p.YY) * sideSquared)
}

// onPicture is the patch in pixels of a picture of that size, by the slopes of what a place shows.
func (p Patch) onPicture(at layout.Shown, widthPx, heightPx float64) Patch {
	ux, uy, vx, vy := at.UX*widthPx, at.UY*widthPx, at.VX*heightPx, at.VY*heightPx
	return Patch{
		XX: ux*ux*p.XX + 2*ux*uy*p.XY + uy*uy*p.YY,
		XY: ux*vx*p.XX + (ux*vy+uy*vx)*p.XY + uy*vy*p.YY,
		YY: vx*vx*p.XX + 2*vx*vy*p.XY + vy*vy*p.YY,
	}
}

// narrow is the variance that a picture need be averaged over, alike in all directions, for one ray of a set:
// the patch's least. Where it is long, the rays of the set cover its length, and a quarter of it is enough.
func (p Patch) narrow() float64 {
	middle, half := (p.XX+p.YY)/2, math.Sqrt((p.XX-p.YY)*(p.XX-p.YY)/4+p.XY*p.XY)
	return max(middle-half, (middle+half)/4)
}

// narrowSpan is the side of a square of that variance.
func (p Patch) narrowSpan() float64 { return math.Sqrt(p.narrow() * sideSquared) }
