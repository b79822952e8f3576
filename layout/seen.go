package layout

// pixel is the frame pixel, as a Px of Camera.At, that looks through a point of the drop's plane: At undone.
func (c Camera) pixel(through Point) (px FramePoint) {
	return FramePoint{(through.XMM/c.FrameWidthMM + 0.5) * float64(c.WidthPx),
		(through.YMM/c.FrameHeightMM + 0.5) * float64(c.HeightPx)}
}

// FramePoint is a place in the frame, in pixels as Camera.At counts them.
type FramePoint struct {
	XPx float64 `json:"x"`
	YPx float64 `json:"y"`
}

// shareOfRadius is how far out a point of the drop's plane lies in the drop, as a share of its visible
// radius; for a rod across its axis.
func (p Plan) shareOfRadius(through Point) float64 {
	return p.Sight().ShareAt(through.XMM, through.YMM)
}

// seenThrough is the point of the drop's plane that the camera sees a place through: the place lies behindMM
// behind the drop's centre, at (x, y) of the optical frame. ok is false when the drop can't show it.
func (p Plan) seenThrough(behindMM float64, place Point) (through Point, ok bool) {
	s := p.Sight()
	s.DistanceMM = behindMM
	through.XMM, through.YMM, ok = s.SeenThrough(place.XMM, place.YMM)
	return through, ok
}
