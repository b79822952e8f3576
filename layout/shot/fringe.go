package shot

import "dropsheet/flip"

// Fringe is how far, in frame pixels, colours part at the picture's edge in the drop: red light at the C line lies that
// much further out than blue at the F line. ok is false where the material's dispersion is not known.
func (s Shot) Fringe() (px float64, ok bool) {
	m, _ := flip.MaterialByName(s.Drop.Material)
	sight := s.Sight()
	reachMM, ok := sight.ReachMM(s.Picture.Fill)
	if !ok {
		return 0, false
	}
	fringeMM, ok := sight.FringeMM(reachMM, m.Dispersion)
	return fringeMM / s.Camera.PixelMM(), ok
}
