package raster

import (
	"math"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// densityPlaces is how many places across, and down, a print is sampled at for how densely it shows the
// artwork. They include its middle, about which a drop squeezes least.
const densityPlaces = 129

// NewBentGrid chooses the grid for an artwork, upright and that many pixels wide and high, that is bent,
// turned or only in part on the print; picture is where the print lies on the board. It has as many pixels as
// finest asks for, but across and down no more to the millimetre than the print shows of the artwork's own
// that way where it shows most. No pixel is invented; a rod, which stretches a picture one way, takes fewer
// that way.
func NewBentGrid(h *layout.Hanging, picture layout.Rect, artWidthPx, artHeightPx int, finest units.Resolution) Grid {
	across, down := densest(h, picture, artWidthPx, artHeightPx)
	pixels := func(mm, perMM float64) int { return evenPixels(mm * min(perMM, finest.PixelsPerMM())) }
	return Grid{pixels(picture.WidthMM, across), pixels(picture.HeightMM, down)}
}

// densest is the most artwork pixels that a millimetre of print across, and one down, run over wherever it
// shows picture, whichever way they run in the artwork.
//
// That is as many as the grid needs: detail of half a cycle a pixel, whose stripes stand whichever way in the
// artwork, has at most half that many cycles to a millimetre of that axis.
func densest(h *layout.Hanging, picture layout.Rect, artWidthPx, artHeightPx int) (acrossPerMM, downPerMM float64) {
	w, d := float64(artWidthPx), float64(artHeightPx)
	for j := range densityPlaces {
		for i := range densityPlaces {
			at := h.At(
				picture.XMM+picture.WidthMM*float64(i)/(densityPlaces-1),
				picture.YMM+picture.HeightMM*float64(j)/(densityPlaces-1),
			)
			if at.InsideMM >= 0 {
				acrossPerMM = max(acrossPerMM, math.Hypot(at.UX*w, at.VX*d))
				downPerMM = max(downPerMM, math.Hypot(at.UY*w, at.VY*d))
			}
		}
	}
	return acrossPerMM, downPerMM
}
