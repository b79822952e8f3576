package proof

import "dropsheet/tile/board"

// Variances along an axis of even distributions: a pixel of side 1, and a disc of radius 1.
const (
	pixelVariance = 1.0 / 12
	discVariance  = 1.0 / 4
)

// spread is how far apart on the board a pixel's rays land: the patches of the pixel and of the whole pupil.
type spread struct{ pixel, pupil board.Patch }

// patch is the part of the board that one ray stands for.
func (s *spread) patch(a *aim) board.Patch {
	return board.Patch{
		XX: a.pixelShare*s.pixel.XX + a.pupilShare*s.pupil.XX,
		XY: a.pixelShare*s.pixel.XY + a.pupilShare*s.pupil.XY,
		YY: a.pixelShare*s.pixel.YY + a.pupilShare*s.pupil.YY,
	}
}

// directSpread is the spread of rays past the drop, the same everywhere.
func (v *view) directSpread() spread {
	far := v.lens.cameraMM + v.sight.DistanceMM
	pixelMM := v.camera.PixelMM() * far / v.lens.cameraMM
	return spread{board.Box(pixelMM, pixelMM), disc(v.lens.pupilMM * (far/v.lens.camera.FocusMM - 1))}
}

// disc is the patch that a disc of that radius fills evenly.
func disc(radiusMM float64) board.Patch {
	variance := discVariance * radiusMM * radiusMM
	return board.Patch{XX: variance, YY: variance}
}
