package layout

import (
	"errors"
	"fmt"
	"math"

	"dropsheet/flip"
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
	WallOf   string  // likewise the wall of a tube
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
	Copies     int    // of the print on its one sheet, to be cut apart; 0 and 1 stand for the print alone
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
			HeldMM: s.Drop.HeldMM, CapillaryMM: s.Drop.CapillaryMM,
			Material: s.Material, WallMM: s.Drop.WallMM, WallIndex: s.Drop.WallIndex, WallOf: s.WallOf,
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
			Copies:    s.copies(),
			Uncut:     columns == 1 && rows == 1 && s.Copies <= 1,
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
		return Backdrop{}, nil, fmt.Errorf("a backdrop of %.0fx%.0fmm takes %.0f sheets of %s, more than %d\nhint: make the "+
			"print smaller, the paper larger or the distance shorter, or allow that many sheets (--max-sheets)",
			board.WidthMM, board.HeightMM, fewest, s.Paper.Name, maxSheets)
	}
	b, sheets := best.cutEven(region)
	return b, sheets, nil
}

// takesMore is the error of a backdrop that takes more sheets than are allowed, or more columns or rows.
func (s Setup) takesMore(board Size, columns, rows int, sheets float64) error {
	if s.Copies > 1 {
		return s.tooManyCopies(board)
	}
	const mend = "ask for a smaller print, a shorter distance, a smaller fill, larger paper or more sheets"
	if s.Columns > 0 && columns > s.Columns || s.Rows > 0 && rows > s.Rows {
		return fmt.Errorf("a backdrop of %.0fx%.0fmm takes %d columns and %d rows of %s, more than were asked for\n"+
			"hint: "+mend, board.WidthMM, board.HeightMM, columns, rows, s.Paper.Name)
	}
	return fmt.Errorf("a backdrop of %.0fx%.0fmm takes %.0f sheets of %s, and %d are allowed\nhint: "+mend, board.WidthMM,
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
