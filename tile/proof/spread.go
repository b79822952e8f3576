package proof

import "dropsheet/tile/board"

// Variances along an axis of even distributions: a pixel of side 1, a disc of radius 1, and an exposure of 1.
const (
	pixelVariance = 1.0 / 12
	discVariance  = 1.0 / 4
	timeVariance  = 1.0 / 12
)

// spread is how far apart on the board a pixel's rays land: the patches of the pixel, of the whole pupil, and of all
// that the drop brings by while the frame is exposed.
type spread struct{ pixel, pupil, fall board.Patch }

// patch is the part of the board that one ray stands for.
func (s *spread) patch(a *aim) board.Patch {
	return board.Patch{
		XX: a.pixelShare*s.pixel.XX + a.pupilShare*s.pupil.XX + a.timeShare*s.fall.XX,
		XY: a.pixelShare*s.pixel.XY + a.pupilShare*s.pupil.XY + a.timeShare*s.fall.XY,
		YY: a.pixelShare*s.pixel.YY + a.pupilShare*s.pupil.YY + a.timeShare*s.fall.YY,
	}
}

// directSpread is the spread of rays past the drop, the same everywhere. The board stands still.
func (v *view) directSpread() spread {
	far := v.lens.cameraMM + v.sight.DistanceMM
	pixelMM := v.camera.PixelMM() * far / v.lens.cameraMM
	return spread{pixel: board.Box(pixelMM, pixelMM), pupil: disc(v.lens.pupilMM * (far/v.lens.camera.FocusMM - 1))}
}

// disc is the patch that a disc of that radius fills evenly.
func disc(radiusMM float64) board.Patch {
	variance := discVariance * radiusMM * radiusMM
	return board.Patch{XX: variance, YY: variance}
}
