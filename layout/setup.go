package layout

import (
	"errors"
	"fmt"
	"math"

	"dropsheet/flip"
	"dropsheet/flip/units"
)

// What holds when nothing else is asked.
const (
	DefaultFill       = 0.85
	DefaultDistanceMM = 200.0
)

// maxSheets is the most sheets a plan may take unless more are allowed by name: a slip in a unit asks for thousands.
const maxSheets = 500

// Setup is what someone asks for. A zero means that it was not asked for where a comment says so.
type Setup struct {
	Drop     flip.Drop
	Material string  // what it is made of, for people
	CameraMM float64 // entrance pupil to drop centre
	TravelMM float64 // how far the drop may move off the axis, each way; 0 when not asked for

	// Any two of distance, print and fill give the third; each is 0 when not asked for.
	DistanceMM float64
	Print      Size // its height 0 where the width alone is asked for
	Fill       float64
	Bounds

	Fit         Fit
	Look        Look
	Framing     Framing
	Proportions float64 // the picture's width over its height
	Paper       Paper
	Orientation Orientation
	MarginMM    float64  // 0 and up
	Margins     *Margins // of each edge of the upright page, in place of MarginMM; nil when not asked for
	Printer     *Printer // a measured one, whose margins count in place of MarginMM; nil when not asked for
	LapMM       float64
	LightFrom   Corner
	Camera      CameraSetup
	Shooting    Shooting
	// Surround, when not empty, fills the board beyond the picture, to SurroundSize or, where that is 0, until
	// the frame is covered.
	Surround     Surround
	SurroundSize Size
	// Background, when not empty, is the colour of what the picture leaves of the circle that the drop sees at the fill.
	Background Surround
	Lamps      []Lamp // none: the board is lit evenly
	Level      bool   // the print makes up for the lamps' fall-off
	Inches     bool   // tell lengths in inches too; on paper that is named in inches they are told so anyway
}

// Plan works the setup out. An error says what can't be and what to change.
func (s Setup) Plan() (Plan, error) {
	plan, lies, err := s.outline()
	if err != nil {
		return Plan{}, err
	}
	board, err := s.board(plan)
	if err != nil {
		return Plan{}, err
	}
	if plan.Backdrop, plan.Sheets, err = s.tile(lies, board, plan.region(board)); err != nil {
		return Plan{}, err
	}
	plan.Seams = plan.Backdrop.seams(plan.Sheets)
	if s.Level {
		plan.LevelledFor = s.Lamps
	}
	if err := plan.checkLevel(); err != nil {
		return Plan{}, err
	}
	return plan, nil
}

// Sized is the plan without board and sheets: how large the print is, how far off it hangs, and its camera.
func (s Setup) Sized() (Plan, error) {
	p, _, err := s.outline()
	return p, err
}

// outline is the plan without board and sheets, and the ways to lay the paper.
func (s Setup) outline() (Plan, []paperLie, error) {
	if err := s.check(); err != nil {
		return Plan{}, nil, err
	}
	lies, err := s.lies()
	if err != nil {
		return Plan{}, nil, err
	}
	if _, err := s.Camera.camera(s.CameraMM); err != nil {
		return Plan{}, nil, err
	}
	sight, print, fill, err := s.solve(lies)
	if err != nil {
		return Plan{}, nil, err
	}
	if err := checkDistance(sight); err != nil {
		return Plan{}, nil, err
	}
	if err := checkPrint(print.WidthMM, print.HeightMM); err != nil {
		return Plan{}, nil, err
	}
	plan, err := s.planned(sight, print, fill)
	return plan, lies, err
}

// planned is the plan without board and sheets for a distance, a print and a fill that agree.
func (s Setup) planned(sight flip.Sight, print Size, fill float64) (Plan, error) {
	camera, err := s.Camera.camera(s.CameraMM)
	if err != nil {
		return Plan{}, err
	}
	plan := Plan{
		Drop: Drop{
			Body: s.Drop.Body, DiameterMM: s.Drop.DiameterMM, HeightOverWidth: s.Drop.HeightOverWidth, Index: s.Drop.Index,
			Material:      s.Material,
			FocalLengthMM: s.Drop.FocalLengthMM(),
			DistanceMM:    sight.DistanceMM, CameraMM: s.CameraMM, Reverses: sight.Reverses(), TravelMM: s.TravelMM,
		},
		Picture: Picture{
			Fill: fill, NearAxisReachMM: sight.NearAxisReachMM(fill),
			WidthMM: print.WidthMM, HeightMM: print.HeightMM, FlatWidthMM: print.WidthMM, FlatHeightMM: print.HeightMM,
			Look: s.Look, Fit: s.Fit, Framing: s.Framing,
		},
		Camera:   camera,
		Shooting: s.Shooting,
		Lamps:    s.Lamps,
		Inches:   s.Inches || s.Paper.InInches(),
	}
	if s.plain() && !s.Drop.Oblate() {
		plan.Picture.ReachMM = s.reachMM(print)
	} else {
		plan.Picture.ReachMM, _ = sight.ReachMM(fill)
	}
	if !s.plain() {
		b, ok := s.bent(sight, fill)
		if !ok {
			return Plan{}, s.seesNothing(fill)
		}
		plan.Picture.FlatWidthMM, plan.Picture.FlatHeightMM = b.flat*s.Proportions, b.flat
		plan.Picture.MadeFor = &MadeFor{s.CameraMM, s.Drop.HeightOverWidth, fill, b.bend.FlatPerDrop}
	}
	plan.Camera.FocusMM = plan.focusMM(camera.Focus)
	plan.Backdrop.Surround, plan.Backdrop.FillOnly = s.fills(), s.fillOnly()
	return plan, nil
}

// tile chooses the way of laying the paper that takes the fewest sheets, and cuts the board.
//
// region tells which cells carry picture; nil when every one does.
func (s Setup) tile(lies []paperLie, board Size, region carrying) (Backdrop, []Sheet, error) {
	lay := func(l paperLie, columns, rows int) Backdrop {
		return Backdrop{
			WidthMM: board.WidthMM, HeightMM: board.HeightMM, Surround: s.fills(), FillOnly: s.fillOnly(), Columns: columns,
			Rows:  rows,
			Paper: s.Paper, Orientation: l.orientation, MarginMM: s.marginMM(), Margins: s.Margins, LapMM: s.LapMM,
			LightFrom: s.LightFrom,
			Printer:   s.Printer,
		}
	}
	if err := s.holds(board); err != nil {
		return Backdrop{}, nil, err
	}
	best, fewest := Backdrop{}, math.Inf(1)
	var cant error
	for _, l := range lies {
		columns, rows, n, err := s.laid(l, board, region)
		switch {
		case err == nil && (n < fewest || best.Columns == 0):
			best, fewest = lay(l, columns, rows), n
		case best.Columns == 0 && n < fewest:
			fewest, cant = n, err
			if errors.Is(err, errTooFewSheets) {
				cant = s.takesMore(board, columns, rows, n)
			}
		}
	}
	if best.Columns == 0 {
		return Backdrop{}, nil, cant
	}
	if s.MaxSheets == 0 && fewest > maxSheets {
		return Backdrop{}, nil, fmt.Errorf("a backdrop of %.0fx%.0fmm takes %.0f sheets of %s, more than %d: make the "+
			"print smaller, the paper larger or the distance shorter, or allow that many sheets (--max-sheets)",
			board.WidthMM, board.HeightMM, fewest, s.Paper.Name, maxSheets)
	}
	b, sheets := best.cutEven(region)
	return b, sheets, nil
}

// takesMore is the error of a backdrop that takes more sheets than are allowed, or more columns or rows.
func (s Setup) takesMore(board Size, columns, rows int, sheets float64) error {
	const mend = "ask for a smaller print, a shorter distance, a smaller fill, larger paper or more sheets"
	if s.Columns > 0 && columns > s.Columns || s.Rows > 0 && rows > s.Rows {
		return fmt.Errorf("a backdrop of %.0fx%.0fmm takes %d columns and %d rows of %s, more than were asked for: "+mend,
			board.WidthMM, board.HeightMM, columns, rows, s.Paper.Name)
	}
	return fmt.Errorf("a backdrop of %.0fx%.0fmm takes %.0f sheets of %s, and %d are allowed: "+mend, board.WidthMM,
		board.HeightMM, sheets, s.Paper.Name, s.MaxSheets)
}

// fillOnly tells whether what fills the board need not go further than the drop sees at the fill. A plain
// picture's sheets are a full rectangle all the same.
func (s Setup) fillOnly() bool { return s.Background != "" && !s.plain() }

// fills is what fills the board beyond the picture.
func (s Setup) fills() Surround {
	if s.Background != "" {
		return s.Background
	}
	return s.Surround
}

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
)

// allLengths checks that each is a length within the bounds.
func allLengths(figures ...named) error {
	for _, f := range figures {
		if !(f.mm >= leastLengthMM && f.mm <= MaxLengthMM) {
			return fmt.Errorf("%s of %gmm can't be: it must be at least %gmm and at most %gm", f.what, f.mm, leastLengthMM,
				MaxLengthMM/1000)
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
		return fmt.Errorf("a refractive index of %g can't be: it must be above 1 and at most %d", s.Drop.Index, flip.MaxIndex)
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
		return fmt.Errorf("a fill of %g can't be: it must lie between 0 and 1, both excluded (at 1 the drop's rim lets "+
			"no light through)", s.Fill)
	case !(s.MarginMM >= 0 && s.MarginMM <= MaxLengthMM):
		return fmt.Errorf("a margin of %gmm can't be: it must be 0mm or more", s.MarginMM)
	case s.Margins != nil && !(s.Margins.narrowestMM() >= 0 && s.Margins.widestMM() <= MaxLengthMM):
		return fmt.Errorf("margins of %s can't be: each must be 0mm or more", s.Margins)
	case !(s.LapMM >= minLapMM && s.LapMM <= MaxLengthMM):
		return fmt.Errorf("a lap of %gmm can't be: it must be at least %gmm, to hold the landing ticks and the paste",
			s.LapMM, minLapMM)
	case !(s.Proportions >= leastProportions && s.Proportions <= mostProportions):
		return fmt.Errorf("a picture %g times as wide as high can't be laid out: take one between 1:50 and 50:1",
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
			"than %s, for this camera distance, the drop does not turn the picture over; move the backdrop further off",
			units.Typed(s.DistanceMM), units.Typed(s.Drop.FocalLengthMM()), units.Typed(nearestMM))
	}
	return nil
}

// Bounds of a drop out of round: far beyond what a drop that holds together takes on (common practice, no source).
const (
	leastHeightOverWidth = 0.8
	mostHeightOverWidth  = 1.2
)

// checkShape refuses a drop that is out of round beyond bounds.
func checkShape(d flip.Drop) error {
	switch k := d.HeightOverWidth; {
	case k == 0:
		return nil
	case d.Body != flip.Ball:
		return fmt.Errorf("a rod has no height over width, and %g was given: only a ball is pressed flat or drawn long", k)
	case !(k >= leastHeightOverWidth && k <= mostHeightOverWidth):
		return fmt.Errorf("a drop %g times as high as wide can't be taken: give a figure from %g to %g", k,
			leastHeightOverWidth, mostHeightOverWidth)
	}
	return nil
}

// checkPicture refuses a picture that can't be framed or filled up as asked, and a drop out of shape.
func (s Setup) checkPicture() error {
	if err := checkShape(s.Drop); err != nil {
		return err
	}
	if err := s.Framing.check(s.Fit); err != nil {
		return err
	}
	_, colour := s.Background.Colour()
	switch {
	case !(s.Look >= Bulged && s.Look <= Straight):
		return fmt.Errorf("a look of %g can't be: take one from 0 (bulged) to 1 (straight)", float64(s.Look))
	case s.Framing.Round && s.Drop.Body != flip.Ball:
		return errors.New("a rod bends light one way only, and shows no round picture to its edge: leave out --round")
	case s.Framing.Round && s.Fit == Inside:
		return errors.New("a round picture covers the drop by itself: leave out the fit, which is for pictures with corners")
	case s.Background != "" && !colour:
		return fmt.Errorf("%q is not a background: take a colour such as #203040 or navy", string(s.Background))
	case s.Background != "" && s.Surround != "":
		return errors.New("a surround fills what the picture leaves, and so does a background: ask for one of them")
	case s.Surround == Stretch && !s.plain():
		return errors.New("a picture that is bent, turned, moved off its middle or round has no edge to stretch on: " +
			"surround it with a colour, or take the look bulged")
	}
	return nil
}

// leastPrintMM is the least side of a print: smaller ones can't be cut and pasted by hand (common practice, no source).
const leastPrintMM = 5.0

// checkPrint refuses a print that nobody could cut out.
func checkPrint(widthMM, heightMM float64) error {
	if !(min(widthMM, heightMM) >= leastPrintMM) {
		return fmt.Errorf("a print of %.1fx%.1fmm is too small to be cut out, under %gmm: take a longer distance, a "+
			"larger fill or a larger print", widthMM, heightMM, leastPrintMM)
	}
	return nil
}

// checkCameraDistance refuses a camera that is too close to see anything inverted.
func checkCameraDistance(s flip.Sight) error {
	if _, ok := s.NearestInvertingMM(); !ok || s.CameraMM <= s.Drop.RadiusMM() {
		return fmt.Errorf("a camera %s from the drop's centre is inside its focal length of %s and sees nothing "+
			"inverted: move it further off", units.Typed(s.CameraMM), units.Typed(s.Drop.FocalLengthMM()))
	}
	return nil
}

// maxTravelMM is far beyond any frame.
const maxTravelMM = 1000.0

// checkTravel refuses a travel that can't be traced.
func checkTravel(mm float64) error {
	if !(mm >= 0 && mm <= maxTravelMM) {
		return fmt.Errorf("a travel of %gmm can't be: it must lie between 0 and %gm", mm, maxTravelMM/1000)
	}
	return nil
}
