package proof

import "dropsheet/layout/shot"

// At is the scene at a moment of its drops' passage: as it is then recorded, where the scene itself is as it is
// recorded with the drops in their places.
func (s Scene) At(m shot.Moment) Scene {
	drops := s.places()
	s.Drops = nil
	for _, at := range drops {
		at.YMM += m.FallsMM
		s.Drops = append(s.Drops, at)
	}
	s.Motion.SpeedMMPerS = m.SpeedMMPerS
	if m.HeightOverWidth != 1 || s.Plan.Drop.HeightOverWidth != 0 { // else it is a ball, which is traced faster
		s.Plan = s.Plan.Swung(m.HeightOverWidth)
	}
	return s
}
