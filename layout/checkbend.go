package layout

import (
	"errors"
	"math"
)

// checkBend checks how the picture is bent and framed.
func (p Plan) checkBend() error {
	pic := p.Picture
	if err := allLengths(named{"the flat picture's width", pic.FlatWidthMM},
		named{"the flat picture's height", pic.FlatHeightMM}); err != nil {
		return err
	}
	if pic.Plain() {
		if pic.Look != Bulged || pic.Framing != (Framing{}) || math.Abs(pic.FlatWidthMM-pic.WidthMM)+
			math.Abs(pic.FlatHeightMM-pic.HeightMM) > tolerance {
			return errors.New("the picture is bent or framed, and what the print was made for is missing")
		}
		return nil
	}
	m := pic.MadeFor
	if err := allLengths(named{"the camera distance that the print was made for", m.CameraMM},
		named{"the flat picture's scale", m.FlatPerDrop}); err != nil {
		return err
	}
	if !(m.Fill > 0 && m.Fill < 1) {
		return errors.New("the fill that the print was made for is not between 0 and 1")
	}
	b := p.bent()
	made := b.bend.Sight
	if err := checkShape(made.Drop); err != nil {
		return err
	}
	if err := checkCameraDistance(made); err != nil || made.Reverses() != p.Drop.Reverses {
		return errors.New("the camera that the print was made for does not see it turned over")
	}
	// All of it follows from the fill: a file that says otherwise could ask for pictures of any size.
	s := p.AsSetup()
	s.Drop = made.Drop
	again, ok := s.bent(made, m.Fill)
	print, okPrint := again.print(pic.Fit)
	const within = 1e-6
	if !ok || !okPrint || !(math.Abs(again.flat/b.flat-1) <= within &&
		math.Abs(again.bend.FlatPerDrop/m.FlatPerDrop-1) <= within &&
		math.Abs(print.WidthMM/pic.WidthMM-1) <= within && math.Abs(print.HeightMM/pic.HeightMM-1) <= within) {
		return errors.New("the print is not as large as its fill, look and framing make it")
	}
	return nil
}
