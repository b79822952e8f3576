package layout

import "math"

// areaPlaces are where a mean over the picture is taken, as shares of its area from the middle out, and their weights:
// Gauss's four (Abramowitz and Stegun, Handbook of Mathematical Functions, 25.4.30).
var areaPlaces = [4]struct{ share, weight float64 }{
	{(1 - 0.8611363115940526) / 2, 0.3478548451374538 / 2}, {(1 - 0.3399810435848563) / 2, 0.6521451548625461 / 2},
	{(1 + 0.3399810435848563) / 2, 0.6521451548625461 / 2}, {(1 + 0.8611363115940526) / 2, 0.3478548451374538 / 2},
}

// OverAreaPx is the picture's blur over all of its area at a stop, focused that far from the entrance pupil: the root
// of the mean square of what PictureBlurs tells of a place, over the circle of the fill, in a rod over its width there,
// in frame pixels.
func (p Plan) OverAreaPx(fNumber, focusMM float64) float64 {
	p.Camera.FNumber = fNumber
	outermost, square := p.BlurFill(), 0.0
	for _, place := range areaPlaces {
		fill := outermost * place.share
		if !p.Drop.Body.Rod() {
			fill = outermost * math.Sqrt(place.share)
		}
		px := p.pictureBlur(p.spread(fill, focusMM))
		square += place.weight * px * px
	}
	return math.Hypot(math.Sqrt(square), p.Camera.AiryPx())
}

// WholePx is the larger of the blurs of the drop's edge and of the picture over its area, in frame pixels.
func (p Plan) WholePx(fNumber, focusMM float64) float64 {
	p.Camera.FNumber = fNumber
	return max(math.Hypot(p.discPx(p.EdgeMM(), focusMM), p.Camera.AiryPx()), p.OverAreaPx(fNumber, focusMM))
}

// PictureFocusMM is the focus, from the entrance pupil, at which the picture's blur over its area is least. In the
// middle the picture hangs at ImageMM; toward the rim the drop bends it elsewhere, and that is most of it.
func (p Plan) PictureFocusMM(fNumber float64) float64 {
	return p.lowestFocusMM(areaTolerance, func(focusMM float64) float64 { return p.OverAreaPx(fNumber, focusMM) })
}

// WholeFocusMM is the focus at which the larger of the blurs of edge and picture is least, the picture's counted over
// its area.
func (p Plan) WholeFocusMM(fNumber float64) float64 {
	return p.lowestFocusMM(areaTolerance, func(focusMM float64) float64 { return p.WholePx(fNumber, focusMM) })
}

// areaTolerance is how closely a focus for the whole area is looked for, as a share of the stretch that may hold it: a
// few thousandths of a millimetre.
const areaTolerance = 1e-4

// PlaceBlurPx is the picture's blur where the drop shows it at a fill, as PictureBlurs counts it, in frame pixels.
func (p Plan) PlaceBlurPx(fNumber, focusMM, fill float64) float64 {
	p.Camera.FNumber = fNumber
	return math.Hypot(p.pictureBlur(p.spread(fill, focusMM)), p.Camera.AiryPx())
}
