package layout

import (
	"errors"
	"fmt"
	"math"

	"dropsheet/flip"
	"dropsheet/flip/units"
)

// Bounds of a picture's width over its height.
const (
	leastProportions = 0.02
	mostProportions  = 50
)

// named is a figure with the words for it.
type named struct {
	what string
	mm   float64
}

// Bounds of the lengths of a set-up. Nothing of it is over a kilometre or under a hundredth of a millimetre, where
// light no longer goes by rays: a drop so small is a few wavelengths wide. A slip in a unit soon is.
const (
	MaxLengthMM   = units.MaxLengthMM
	leastLengthMM = 0.01

	// leastFill is a hundred-thousandth of the drop's radius: no camera has a pixel for it.
	leastFill = 1e-5
)

// allLengths checks that each is a length within the bounds.
func allLengths(figures ...named) error {
	for _, f := range figures {
		if !(f.mm >= leastLengthMM && f.mm <= MaxLengthMM) {
			return fmt.Errorf("%s of %gmm can't be\nhint: take %gmm to %gm, and look whether the unit is the one meant",
				f.what, f.mm, leastLengthMM, MaxLengthMM/1000)
		}
	}
	return nil
}

// check refuses what can't be set up, before anything is worked out.
func (s Setup) check() error {
	if err := allLengths(named{"the drop's diameter", s.Drop.DiameterMM},
		named{"the camera distance", s.CameraMM}); err != nil {
		return err
	}
	if !(s.Drop.Index > 1 && s.Drop.Index <= flip.MaxIndex) {
		return fmt.Errorf("a refractive index of %g can't be\nhint: take one above 1, up to %d; water has 1.33",
			s.Drop.Index, flip.MaxIndex)
	}
	for _, f := range []named{{"the distance", s.DistanceMM}, {"the print's width", s.Print.WidthMM},
		{"the print's height", s.Print.HeightMM}} {
		if f.mm != 0 {
			if err := allLengths(f); err != nil {
				return err
			}
		}
	}
	switch {
	case math.IsNaN(s.Fill) || s.Fill < 0 || s.Fill >= 1:
		return fmt.Errorf("a fill of %g can't be\nhint: take one above 0 and below 1; at 1 the drop's rim lets no light "+
			"through", s.Fill)
	case s.Fill != 0 && s.Fill < leastFill:
		return fmt.Errorf("a fill of %g can't be: a print for that is as good as nothing\nhint: take at least %g",
			s.Fill, leastFill)
	case !(s.MarginMM >= 0 && s.MarginMM <= MaxLengthMM):
		return fmt.Errorf("a margin of %gmm can't be\nhint: take 0mm or more", s.MarginMM)
	case s.Margins != nil && !(s.Margins.narrowestMM() >= 0 && s.Margins.widestMM() <= MaxLengthMM):
		return fmt.Errorf("margins of %s can't be\nhint: take 0mm or more for each", s.Margins)
	case !(s.LapMM >= minLapMM && s.LapMM <= MaxLengthMM):
		return fmt.Errorf("a lap of %gmm can't be: it would not hold the landing ticks and the paste\n"+
			"hint: take %gmm or more",
			s.LapMM, minLapMM)
	case !(s.Proportions >= leastProportions && s.Proportions <= mostProportions):
		return fmt.Errorf("a picture %g times as wide as high can't be laid out\nhint: take one between 1:50 and 50:1",
			s.Proportions)
	}
	if err := s.Bounds.check(); err != nil {
		return err
	}
	if s.Printer != nil {
		if err := s.Printer.Check(); err != nil {
			return err
		}
	}
	if err := s.checkPicture(); err != nil {
		return err
	}
	if err := CheckLamps(s.Lamps); err != nil {
		return err
	}
	if err := s.checkCopies(); err != nil {
		return err
	}
	if err := s.Shooting.check(s.Drop.Body, s.Camera.FrameRate); err != nil {
		return err
	}
	if err := checkTravel(s.TravelMM); err != nil {
		return err
	}
	if s.Level && len(s.Lamps) == 0 {
		return errLevelNeedsLamps
	}
	sight := flip.Sight{Drop: s.Drop, CameraMM: s.CameraMM}
	if err := checkCameraDistance(sight); err != nil {
		return err
	}
	if s.DistanceMM == 0 {
		return nil // and checked when it is worked out
	}
	sight.DistanceMM = s.DistanceMM
	return checkDistance(sight)
}

// checkDistance refuses a backdrop that is too close to be turned over.
func checkDistance(s flip.Sight) error {
	nearestMM, _ := s.NearestInvertingMM()
	nearestMM = max(nearestMM, s.Drop.RadiusMM())
	if s.DistanceMM <= nearestMM {
		return fmt.Errorf("a backdrop %s from the drop's centre is too close: the focal length is %s, and nearer "+
			"than %s, for this camera distance, the drop does not turn the picture over\nhint: move the backdrop further off",
			units.Typed(s.DistanceMM), units.Typed(s.Drop.FocalLengthMM()), units.Typed(nearestMM))
	}
	return nil
}

// Bounds of a drop out of round: far beyond what a drop that holds together takes on (common practice, no source).
const (
	leastHeightOverWidth = 0.8
	mostHeightOverWidth  = 1.35
)

// checkShape refuses a drop that is out of round beyond bounds.
func checkShape(d flip.Drop) error {
	switch k := d.HeightOverWidth; {
	case d.Body == flip.Hanging && k != 0:
		return fmt.Errorf("a hanging drop has its height by its weight, and %g times its width was given\n"+
			"hint: leave that out", k)
	case d.Body == flip.Hanging:
		return d.CheckHanging()
	case d.HeldMM != 0:
		return fmt.Errorf("only a hanging drop is held, and a width of %gmm was given for that\n"+
			"hint: leave that out, or take the body hanging", d.HeldMM)
	case k == 0:
		return nil
	case d.Body.Rod():
		return fmt.Errorf("a rod has no height over width, and %g was given\n"+
			"hint: leave it out; only a ball is pressed flat or drawn long", k)
	case !(k >= leastHeightOverWidth && k <= mostHeightOverWidth):
		return fmt.Errorf("a drop %g times as high as wide can't be taken\nhint: give a figure from %g to %g", k,
			leastHeightOverWidth, mostHeightOverWidth)
	}
	return nil
}

// checkPicture refuses a picture that can't be framed or filled up as asked, and a drop out of shape.
func (s Setup) checkPicture() error {
	if err := s.Drop.CheckWall(); err != nil {
		return err
	}
	if err := checkShape(s.Drop); err != nil {
		return err
	}
	if err := s.Framing.check(s.Fit); err != nil {
		return err
	}
	_, colour := s.Background.Colour()
	switch {
	case !(s.Look >= Bulged && s.Look <= Straight):
		return fmt.Errorf("a look of %g can't be\nhint: take one from 0 (bulged) to 1 (straight)", float64(s.Look))
	case s.Framing.Round && s.Drop.Body.Rod():
		return errors.New("a rod bends light one way only, and shows no round picture to its edge\nhint: leave out --round")
	case s.Framing.Round && s.Fit == Inside:
		return errors.New("a round picture covers the drop by itself\n" +
			"hint: leave out the fit, which is for pictures with corners")
	case s.Background != "" && !colour:
		return fmt.Errorf("%q is not a background\nhint: take a colour such as #203040 or navy", string(s.Background))
	case s.Background != "" && s.Surround != "":
		return errors.New("a surround fills what the picture leaves, and so does a background\nhint: ask for one of them")
	case s.Surround == Stretch && !s.plain():
		return errors.New("a picture that is bent, turned, moved off its middle or round has no edge to stretch on\n" +
			"hint: surround it with a colour, or take the look bulged")
	}
	return nil
}

// leastPrintMM is the least side of a print: smaller ones can't be cut and pasted by hand (common practice, no source).
const leastPrintMM = 5.0

// checkPrint refuses a print that nobody could cut out.
func checkPrint(widthMM, heightMM float64) error {
	if !(min(widthMM, heightMM) >= leastPrintMM) {
		return fmt.Errorf("a print of %.1fx%.1fmm is too small to be cut out, under %gmm\nhint: take a longer distance, a "+
			"larger fill or a larger print", widthMM, heightMM, leastPrintMM)
	}
	return nil
}

// checkCameraDistance refuses a camera that is too close to see anything inverted.
func checkCameraDistance(s flip.Sight) error {
	if _, ok := s.NearestInvertingMM(); !ok || s.CameraMM <= s.Drop.RadiusMM() {
		return fmt.Errorf("a camera %s from the drop's centre is inside its focal length of %s and sees nothing "+
			"inverted\nhint: move it further off", units.Typed(s.CameraMM), units.Typed(s.Drop.FocalLengthMM()))
	}
	return nil
}

// maxTravelMM is far beyond any frame.
const maxTravelMM = 1000.0

// checkTravel refuses a travel that can't be traced.
func checkTravel(mm float64) error {
	if !(mm >= 0 && mm <= maxTravelMM) {
		return fmt.Errorf("a travel of %gmm can't be\nhint: take one up to %gm", mm, maxTravelMM/1000)
	}
	return nil
}
