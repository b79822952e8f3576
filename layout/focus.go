package layout

// EdgeMM is how far the drop's visible edge lies from the entrance pupil, along the axis: the tangent ray
// touches the drop R²/D before its centre.
func (p Plan) EdgeMM() float64 {
	r := p.Drop.DiameterMM / 2
	return p.Drop.CameraMM - r*r/p.Drop.CameraMM
}

// ImageMM is how far the near-axis image of the backdrop lies from the entrance pupil: it hangs fL/(L-f) in
// front of the drop's centre (thin lens, Hecht, Optics, 5.2.3).
func (p Plan) ImageMM() float64 {
	f, l := p.Drop.FocalLengthMM, p.Drop.DistanceMM
	return p.Drop.CameraMM - f*l/(l-f)
}

// focusMM is the distance from the entrance pupil that a focus stands for.
func (p Plan) focusMM(f Focus) float64 {
	switch f {
	case FocusEdge:
		return p.EdgeMM()
	case FocusPicture:
		return p.ImageMM()
	default:
		return p.bestFocusMM(p.Camera.FNumber)
	}
}
