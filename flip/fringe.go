package flip

// FringeMM is how much further from the axis, in the drop's plane, a place of the backdrop is seen in red light
// than in blue, by FillAt with the material's index for either. The place is told by how far it lies from the
// axis. Bent more, blue shows the whole picture smaller: it ends in a red fringe. ok is false where the
// dispersion is not known, or either light never comes from there.
func (s Sight) FringeMM(reachMM float64, d Dispersion) (fringeMM float64, ok bool) {
	if !d.Known() {
		return 0, false
	}
	seenAt := func(index float64) (fill float64, ok bool) {
		s.Drop.Index = index
		return s.FillAt(reachMM)
	}
	red, okRed := seenAt(d.RedIndex)
	blue, okBlue := seenAt(d.BlueIndex)
	if !okRed || !okBlue {
		return 0, false
	}
	return (red - blue) * s.ApparentRadiusMM(), true
}
