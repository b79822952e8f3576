package layout

import "math"

// BoardPerDrop is how many millimetres of the board's plane a millimetre of the drop's plane hides from the
// entrance pupil's centre.
func (p Plan) BoardPerDrop() float64 {
	return (p.Drop.CameraMM + p.Drop.DistanceMM) / p.Drop.CameraMM
}

// Sees is what the frame takes in of the board's plane.
func (p Plan) Sees() Size {
	far := p.BoardPerDrop()
	return Size{p.Camera.FrameWidthMM * far, p.Camera.FrameHeightMM * far}
}

// BoardBlurMM is the width of the patch of the board's plane that one point of the frame sees through the
// whole pupil: by similar triangles from the plane in focus, d away, the pupil's diameter times |D + L - d| /
// d (thin lens; Hecht, Optics, 5.2.3).
func (p Plan) BoardBlurMM() float64 {
	boardMM := p.Drop.CameraMM + p.Drop.DistanceMM
	return p.Camera.PupilMM() * math.Abs(boardMM-p.Camera.FocusMM) / p.Camera.FocusMM
}

// Covers is the least board that fills the frame, blur and all.
func (p Plan) Covers() Size {
	sees, blur := p.Sees(), p.BoardBlurMM()
	return Size{sees.WidthMM + blur, sees.HeightMM + blur}
}
