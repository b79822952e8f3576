package layout

import "fmt"

// WithCamera is the plan under another camera, camera distance and lamps; the print and its sheets stay as they are.
// The fill becomes what the print then gives, 1 where it outgrows the drop.
func (p Plan) WithCamera(c CameraSetup, cameraMM float64, lamps []Lamp) (Plan, error) {
	if err := allLengths(named{"the camera distance", cameraMM}); err != nil {
		return Plan{}, err
	}
	if err := CheckLamps(lamps); err != nil {
		return Plan{}, err
	}
	p.Drop.CameraMM, p.Lamps = cameraMM, lamps
	if err := checkCameraDistance(p.Sight()); err != nil {
		return Plan{}, err
	}
	if p.Sight().Reverses() != p.Drop.Reverses {
		return Plan{}, fmt.Errorf("a camera %gmm from the drop does not see the backdrop turned over as the print asks\n"+
			"hint: move it further off", cameraMM)
	}
	camera, err := c.camera(cameraMM)
	if err != nil {
		return Plan{}, err
	}
	p.Camera = camera
	p.Picture.Fill = 1
	if fill, ok := p.Sight().FillAt(p.Picture.ReachMM); ok {
		p.Picture.Fill = fill
	}
	p.Camera.FocusMM = p.focusMM(camera.Focus) // the best focus looks at the fill
	return p, nil
}

// WithShooting is the plan exposed otherwise, or with the drop coming by otherwise. It comes after WithCamera, whose
// frame rate bounds the shutter.
func (p Plan) WithShooting(s Shooting) (Plan, error) {
	if err := s.check(p.Drop.Body, p.Camera.FrameRate); err != nil {
		return Plan{}, err
	}
	p.Shooting = s
	return p, nil
}

// WithShape is the plan with a ball that is so many times as high as wide, of the same volume; the print
// stays as it is. WithCamera then works out what is seen.
func (p Plan) WithShape(heightOverWidth float64) (Plan, error) {
	p = p.Swung(heightOverWidth)
	if err := checkShape(p.Sight().Drop); err != nil {
		return Plan{}, err
	}
	return p, nil
}

// Swung is the plan while its ball swings, of the same volume: camera, focus and print stay as they are. The height
// over width is above 0 and not checked.
func (p Plan) Swung(heightOverWidth float64) Plan {
	p.Drop.HeightOverWidth = heightOverWidth
	p.Drop.FocalLengthMM = p.Sight().Drop.FocalLengthMM()
	return p
}

// WithLook is the plan laid out anew with another look: the same drop, distance and fill, and so another print.
func (p Plan) WithLook(l Look) (Plan, error) {
	s := p.AsSetup()
	s.Look, s.Print, s.MaxSheets = l, Size{}, mostSheets
	if p.Backdrop.Surround != Stretch {
		s.Background = p.Backdrop.Surround
	}
	return s.Plan()
}

// AsSetup is the plan asked for again without its surround: distance, print and fill all as they came out.
func (p Plan) AsSetup() Setup {
	b := p.Backdrop
	return Setup{
		Drop: p.Sight().Drop, CameraMM: p.Drop.CameraMM, TravelMM: p.Drop.TravelMM,
		DistanceMM: p.Drop.DistanceMM, Print: p.Picture.Print(), Fill: p.Picture.Fill,
		Fit: p.Picture.Fit, Look: p.Picture.Look, Framing: p.Picture.Framing,
		Proportions: p.Picture.FlatWidthMM / p.Picture.FlatHeightMM,
		Paper:       b.Paper, Orientation: b.Orientation, MarginMM: b.MarginMM, Margins: b.Margins,
		Printer: b.Printer, LapMM: b.LapMM,
		LightFrom: b.LightFrom,
		Camera:    p.Camera.AsSetup(), Shooting: p.Shooting, Lamps: p.Lamps, Inches: p.Inches,
		Copies: b.Copies,
	}
}
