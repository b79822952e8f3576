package shot

import (
	"math"

	"dropsheet/layout"
)

// Remedy is another setup of the same job that mends something. Its figures are rounded so that it still
// holds when they are asked for as they stand.
type Remedy struct {
	DistanceMM   float64     `json:"distance_mm"`
	Print        layout.Size `json:"print_mm"`
	Fill         float64     `json:"fill"`
	Backdrop     layout.Size `json:"backdrop_mm"` // the print's own size unless there is a surround
	SheetsAtMost int         `json:"sheets_at_most"`
}

// Remedies are the ways to get the board's edge out of the frame. Each is nil where it is not needed or not to be had.
type Remedies struct {
	Fill     *Remedy `json:"larger_fill,omitempty"` // at this distance a larger fill, and so a larger print
	Nearer   *Remedy `json:"nearer,omitempty"`      // this print at a shorter distance, which makes its fill larger
	Further  *Remedy `json:"further,omitempty"`     // this fill at a longer distance, and so a larger print
	Surround *Remedy `json:"surround,omitempty"`    // this print with a surround
}

// CoverageRemedies finds what gets the board's edge out of the frame, by planning the job anew.
func (s Shot) CoverageRemedies() Remedies {
	var r Remedies
	if s.Coverage().Covered() {
		return r
	}
	setup := s.AsSetup()
	covers := func(setup layout.Setup) bool {
		q, err := setup.Sized()
		return err == nil && holds(q.Picture.Print(), q.Covers())
	}

	fill := setup
	fill.Print, fill.DistanceMM = layout.Size{}, nearest(setup.DistanceMM, lengthStepMM)
	// At too large a fill the drop looks backwards; that, too, is found out by the remedy's own plan.
	if fills, ok := least(s.Picture.Fill, layout.LargestFill, func(v float64) bool {
		fill.Fill = v
		q, err := fill.Sized()
		return err != nil || holds(q.Picture.Print(), q.Covers())
	}); ok {
		fill.Fill = fills
		r.Fill = remedy(asPrinted(fill), covers)
	}

	nearer := setup
	nearer.Fill, nearer.Print = 0, s.printDown()
	// Too near, the print outgrows the drop's view; that is found out by the remedy's own plan.
	if mm, ok := least(-s.Drop.DistanceMM, -s.Drop.DiameterMM, func(v float64) bool {
		nearer.DistanceMM = -v
		q, err := nearer.Sized()
		return err != nil || holds(nearer.Print, q.Covers())
	}); ok {
		nearer.DistanceMM = roundDown(-mm, lengthStepMM)
		r.Nearer = remedy(nearer, covers)
	}

	further := setup
	further.Print = layout.Size{}
	if mm, ok := least(s.Drop.DistanceMM, layout.MaxLengthMM,
		func(v float64) bool { further.DistanceMM = v; return covers(further) }); ok {
		further.DistanceMM = roundUp(mm, lengthStepMM)
		r.Further = remedy(asPrinted(further), covers)
	}

	r.Surround = s.surrounding(layout.Plan.Covers)
	return r
}

// surrounding is the plan's print with a surround so large that the board is at least what it needs to be:
// its own surround made larger, or a stretched one.
func (s Shot) surrounding(needs func(layout.Plan) layout.Size) *Remedy {
	setup := s.AsSetup()
	setup.Fill, setup.Print, setup.DistanceMM = 0, s.printDown(), nearest(setup.DistanceMM, lengthStepMM)
	q, err := setup.Sized()
	if err != nil {
		return nil
	}
	setup.Surround = s.SurroundKind()
	board := needs(q)
	setup.SurroundSize = layout.Size{WidthMM: roundUp(max(board.WidthMM, s.Backdrop.WidthMM), wholeMM),
		HeightMM: roundUp(max(board.HeightMM, s.Backdrop.HeightMM), wholeMM)}
	return remedy(setup, func(layout.Setup) bool { return true })
}

// SurroundKind is what a larger surround is filled with: what there is already, or else the picture's edge
// going on, where it has one, or black.
func (s Shot) SurroundKind() layout.Surround {
	switch {
	case s.Backdrop.Surround != "":
		return s.Backdrop.Surround
	case s.Picture.Plain():
		return layout.Stretch
	}
	return layout.Black
}

// printDown is the plan's print in whole steps, none larger.
func (s Shot) printDown() layout.Size {
	return layout.Size{WidthMM: roundDown(s.Picture.WidthMM, lengthStepMM),
		HeightMM: roundDown(s.Picture.HeightMM, lengthStepMM)}
}

// printCovering is the print at the plan's distance, which must be a whole number of steps, that is at least
// that large both ways.
func (s Shot) printCovering(board layout.Size) *Remedy {
	setup := s.AsSetup()
	k := max(1, board.WidthMM/s.Picture.WidthMM, board.HeightMM/s.Picture.HeightMM)
	setup.Fill, setup.Print = 0, layout.Size{WidthMM: roundUp(k*s.Picture.WidthMM, lengthStepMM),
		HeightMM: roundUp(k*s.Picture.HeightMM, lengthStepMM)}
	return remedy(setup, func(layout.Setup) bool { return true })
}

// Steps to which a remedy's figures are rounded: what the figures of a plan are written to.
const (
	lengthStepMM = 0.1
	wholeMM      = 1.0
)

// A hair keeps what is a whole number of steps already, but for rounding, where it is.
const stepHair = 1e-6

func roundUp(v, step float64) float64   { return math.Ceil(v/step-stepHair) * step }
func roundDown(v, step float64) float64 { return math.Floor(v/step+stepHair) * step }
func nearest(v, step float64) float64   { return math.Round(v/step) * step }

// asPrinted asks for the print that the setup's fill comes out as, rounded up, in place of the fill.
func asPrinted(s layout.Setup) layout.Setup {
	if p, err := s.Sized(); err == nil {
		s.Fill, s.Print = 0, layout.Size{WidthMM: roundUp(p.Picture.WidthMM, lengthStepMM),
			HeightMM: roundUp(p.Picture.HeightMM, lengthStepMM)}
	}
	return s
}

// remedy plans the setup. It is nil when there is no such plan, when it takes too many sheets, or when mends says no.
func remedy(s layout.Setup, mends func(layout.Setup) bool) *Remedy {
	p, err := s.Plan()
	if err != nil || !mends(s) {
		return nil
	}
	return &Remedy{
		p.Drop.DistanceMM, p.Picture.Print(), p.Picture.Fill,
		layout.Size{WidthMM: p.Backdrop.WidthMM, HeightMM: p.Backdrop.HeightMM}, len(p.Sheets),
	}
}

// holds tells whether a board is at least as large both ways.
func holds(board, needs layout.Size) bool {
	return board.WidthMM >= needs.WidthMM-tolerance && board.HeightMM >= needs.HeightMM-tolerance
}

// least is the least value between two for which mends holds; it must hold from there on. ok is false when it
// does not at the far end.
func least(from, to float64, mends func(float64) bool) (v float64, ok bool) {
	// Distances run from millimetres to a kilometre: step out first, then halve.
	step := math.Abs(from) / 8
	high := from
	for !mends(high) {
		if high >= to {
			return 0, false
		}
		from, high = high, min(to, high+step)
		step *= 2
	}
	for range 50 {
		if middle := (from + high) / 2; mends(middle) {
			high = middle
		} else {
			from = middle
		}
	}
	return high, true
}
