package proof

import (
	"math"

	"dropsheet/layout"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"
)

// paper is a sheet where nothing is printed.
var paper = texture.Light{board.PaperWhite, board.PaperWhite, board.PaperWhite}

// landed is the light that the board's plane sends back from where a ray lands, optical mm from the axis: the
// print as lamps light it, bare paper at its seams, and the dark of the room where there is no sheet. near is
// nil, or what the picture shows thereabouts.
func (v *view) landed(x, y float64, over board.Patch, near *board.Expansion) texture.Light {
	x, y = x+v.surface.CentreMM.XMM, y+v.surface.CentreMM.YMM
	seen := v.surface.AtRay(x, y, over, near)
	switch {
	case seen.None == 1:
		return board.Room
	case seen.Paper+seen.None == 0:
		return seen.Print.Scale(float32(v.lamps.At(x, y)))
	}
	return seen.Under(float32(v.lamps.At(x, y)), paper, board.Room)
}

// expansion is that of what the board shows about the place where a pixel's middle lands, optical mm, for rays
// that spread so and have such a patch each.
func (v *view) expansion(at layout.Point, rays spread, over board.Patch) board.Expansion {
	// The pupil's radius is twice its standard deviation, and half an exposure is the root of three of its own.
	reachMM := func(pixel, pupil, fall float64) float64 {
		return v.thrownPx*math.Sqrt(pixel/pixelVariance) + 2*math.Sqrt(pupil) + math.Sqrt(3*fall)
	}
	return v.surface.Expand(at.XMM+v.surface.CentreMM.XMM, at.YMM+v.surface.CentreMM.YMM, board.Reach{
		XMM:   reachMM(rays.pixel.XX, rays.pupil.XX, rays.fall.XX),
		YMM:   reachMM(rays.pixel.YY, rays.pupil.YY, rays.fall.YY),
		Pixel: rays.pixel, Ray: over, FirstOrder: v.lens.pinhole() && !v.moves(),
	})
}
