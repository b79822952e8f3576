package shot

import (
	"math"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Travel is how far the drop may move off the axis, in its own plane, while camera and board stay. Through a
// drop that is t off the axis the middle looks at a place t (D + L)/D off the board's middle, so the board's
// edge, and with it the dark rim, comes nearer on one side.
type Travel struct {
	// HeldFill is what has to stay free of the dark rim: the picture's fill, or where the rim comes further in
	// even on the axis (fit inside), what it leaves free there.
	HeldFill float64 `json:"held_fill"`
	// AcrossMM and DownMM are how far the drop may move to either side, and up and down, before the rim comes
	// into HeldFill on the side that the board's edge comes nearer, or of a picture that does not fill its
	// board the edge of what is printed; square to that it may come in by a hundredth of the radius. Of two
	// sides that differ the worse counts. nil along a rod, where any travel leaves the view as it is. A
	// picture that covers the fill allows none along its shorter side.
	AcrossMM *float64 `json:"across_mm,omitempty"`
	DownMM   *float64 `json:"down_mm,omitempty"`

	Asked *AskedTravel `json:"asked,omitempty"` // nil when no travel was asked for
}

// AskedTravel is what becomes of a travel that was asked for, in any direction across the axis.
type AskedTravel struct {
	TravelMM float64 `json:"travel_mm"`
	// that stays free of the dark rim all along; 0 when the drop's middle looks past the board
	Fill  float64 `json:"fill"`
	Holds bool    `json:"holds"` // HeldFill does
	// NeedsBoard is the least board, filled to its edges, with which HeldFill stays free. nil when none does.
	NeedsBoard *layout.Size `json:"needs_board_mm,omitempty"`
	// Print is the print at this distance that is such a board; nil when it is not needed or not to be had.
	Print *Remedy `json:"larger_print,omitempty"`
	// Surround is this print on such a board: the drop then sees the surround there in place of the dark room.
	// nil likewise.
	Surround *Remedy `json:"surround,omitempty"`
}

// Bounds of the search.
const (
	// rays round a circle of the drop: between two of them the board's place is off by at most a 100,000th of its reach
	azimuths  = 720
	noTravel  = 1e-3 // mm; less is rounding, and nothing that a drop keeps to
	traceSlip = 1e-6 // mm at the board: how far trace and closed form may differ
	// a change of the fill that no one sees: a hundredth of the drop's radius (common practice, no source)
	hardlyFill = 0.01
)

// Travel works out what is tolerated and, when TravelMM is above 0, what becomes of it.
func (s Shot) Travel() Travel {
	rim := s.DarkRim()
	t := Travel{HeldFill: min(s.Picture.Fill, 1-max(rim.AcrossShare, rim.DownShare))}
	turn := s.Drop.Reverses.Turn()
	if turn.ReverseX {
		t.AcrossMM = s.tolerated(t.HeldFill, layout.Point{XMM: 1})
	}
	if turn.ReverseY {
		t.DownMM = s.tolerated(t.HeldFill, layout.Point{YMM: 1})
	}
	if s.Drop.TravelMM > 0 {
		t.Asked = s.askedTravel(t.HeldFill)
	}
	return t
}

// tolerated is how far the drop may move along a direction, of length 1, and against it, with a fill free of the rim.
func (s Shot) tolerated(fill float64, along layout.Point) *float64 {
	if !s.Filled() {
		return s.toleratedByInk(fill, along)
	}
	return s.furthestFree(along, func(mm float64) bool {
		to := layout.Point{XMM: mm * along.XMM, YMM: mm * along.YMM}
		halves, ok := s.seesRound(fill, to)
		within, okWithin := s.seesRound(fill-hardlyFill, to)
		// Square to the movement the view grows in second order only. A picture that just covers the fill there
		// must not forbid it.
		if along.XMM == 0 {
			halves.WidthMM = within.WidthMM
		} else {
			halves.HeightMM = within.HeightMM
		}
		return ok && okWithin && s.onBoard(halves)
	})
}

// furthestFree is the largest travel along a direction that leaves the view free, by halving.
func (s Shot) furthestFree(along layout.Point, free func(mm float64) bool) *float64 {
	// The drop's middle looks at the board's edge from here on.
	low, high := 0.0, math.Hypot(s.Backdrop.WidthMM*along.XMM, s.Backdrop.HeightMM*along.YMM)/2/s.BoardPerDrop()
	for range 60 {
		if middle := (low + high) / 2; free(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	if low < noTravel {
		low = 0
	}
	return &low
}

// onBoard tells whether an extent about the board's middle lies on the board; a rod's own direction does not count.
func (s Shot) onBoard(halves layout.Size) bool {
	turn := s.Drop.Reverses.Turn()
	return (!turn.ReverseX || halves.WidthMM <= s.Backdrop.WidthMM/2+traceSlip) &&
		(!turn.ReverseY || halves.HeightMM <= s.Backdrop.HeightMM/2+traceSlip)
}

// seesRound is how far from the board's middle, across and down, the drop looks round the circle of a fill
// when its centre is at a place off the axis, in its plane: traced rays from the entrance pupil, round the
// line to the drop's centre, which is the middle of its outline. For a rod they are the two that cross its
// axis at right angles. ok is false where one of them never reaches the board's plane.
func (s Shot) seesRound(fill float64, drop layout.Point) (halves layout.Size, ok bool) {
	ok = s.looksRound(drop, func(_, _ float64) float64 { return fill }, func(at layout.Point) bool {
		halves.WidthMM, halves.HeightMM = max(halves.WidthMM, math.Abs(at.XMM)), max(halves.HeightMM, math.Abs(at.YMM))
		return true
	})
	if !ok {
		return layout.Size{}, false
	}
	return halves, true
}

// looksRound goes round such a circle, at the fill for each direction's sine and cosine, and tells whether
// all the places there, from the board's middle, are as asked.
func (s Shot) looksRound(drop layout.Point, fill func(sin, cos float64) float64,
	asked func(at layout.Point) bool) bool {
	sight := s.Sight()
	// In the drop's own frame, with the drop at the origin, pupil and board's middle move the other way.
	if sight.Drop.Body == flip.UprightRod {
		drop.YMM = 0
	}
	if sight.Drop.Body == flip.LevelRod {
		drop.XMM = 0
	}
	pupil := flip.Vec{X: -drop.XMM, Y: -drop.YMM, Z: -sight.CameraMM}
	to := pupil.Scale(-1)
	awayMM := math.Sqrt(to.Dot(to))
	axis := to.Unit()
	// Two directions square to the axis: sideways in the drop's plane, and the one square to both.
	side := flip.Vec{X: axis.Z, Y: 0, Z: -axis.X}.Unit()
	down := flip.Vec{X: axis.Y*side.Z - axis.Z*side.Y, Y: axis.Z*side.X - axis.X*side.Z, Z: axis.X*side.Y - axis.Y*side.X}
	halfWidthMM, halfHeightMM := sight.Drop.RadiusMM(), sight.Drop.HalfHeightMM()
	edge := math.Tan(math.Asin(halfWidthMM / awayMM))
	tracer := sight.Tracer()
	first, step, n := 0.0, 2*math.Pi/azimuths, azimuths
	switch sight.Drop.Body {
	case flip.UprightRod:
		step, n = math.Pi, 2
	case flip.LevelRod:
		first, step, n = math.Pi/2, math.Pi, 2
	}
	for i := range n {
		sin, cos := math.Sincos(first + float64(i)*step)
		radiusMM := fill(sin, cos) * awayMM * edge
		dir := to.Add(side.Scale(radiusMM * cos)).
			Add(down.Scale(radiusMM * sin * halfHeightMM / halfWidthMM)).Unit()
		l, lands := tracer.Trace(flip.Ray{From: pupil, Dir: dir})
		if !lands || !l.Through || !asked(layout.Point{XMM: l.XMM + drop.XMM, YMM: l.YMM + drop.YMM}) {
			return false
		}
	}
	return true
}

// askedTravel is what becomes of the plan's travel. On a board, which is a rectangle, moves straight across
// and straight down are the worst.
func (s Shot) askedTravel(held float64) *AskedTravel {
	if !s.Filled() {
		return s.askedOfInk(held)
	}
	a := &AskedTravel{TravelMM: s.Drop.TravelMM, Fill: 1}
	for _, to := range s.furthest() {
		a.Fill = min(a.Fill, s.freeFill(to))
	}
	needs, ok := s.boardFor(held)
	if !ok {
		return a
	}
	a.NeedsBoard = &needs
	if a.Holds = s.onBoard(layout.Size{WidthMM: needs.WidthMM / 2, HeightMM: needs.HeightMM / 2}); !a.Holds {
		s.Drop.DistanceMM = nearest(s.Drop.DistanceMM, lengthStepMM) // which a remedy names it by
		if needs, ok := s.boardFor(held); ok {
			a.Print = s.printCovering(needs)
		}
		a.Surround = s.surroundHolding(held)
	}
	return a
}

// surroundHolding is the plan's print in a surround on which a fill stays free of the dark rim.
func (s Shot) surroundHolding(held float64) *Remedy {
	return s.surrounding(func(q layout.Plan) layout.Size {
		needs, _ := Of(q).boardFor(held)
		return needs
	})
}

// furthest is where the drop is after its travel to one side and down; to the other side and up is the same.
func (s Shot) furthest() []layout.Point {
	turn := s.Drop.Reverses.Turn()
	var all []layout.Point
	if turn.ReverseX {
		all = append(all, layout.Point{XMM: s.Drop.TravelMM})
	}
	if turn.ReverseY {
		all = append(all, layout.Point{YMM: s.Drop.TravelMM})
	}
	return all
}

// boardFor is the least board on which a fill stays free of the dark rim over the plan's travel; not less
// than the picture. ok is false when no board is large enough.
func (s Shot) boardFor(fill float64) (board layout.Size, ok bool) {
	turn := s.Drop.Reverses.Turn()
	board = s.Picture.Print()
	for _, to := range s.furthest() {
		halves, ok := s.seesRound(fill, to)
		if !ok {
			return layout.Size{}, false
		}
		if turn.ReverseX {
			board.WidthMM = max(board.WidthMM, 2*halves.WidthMM)
		}
		if turn.ReverseY {
			board.HeightMM = max(board.HeightMM, 2*halves.HeightMM)
		}
	}
	return board, true
}

// freeFill is the largest fill that sees nothing but board when the drop is at a place off the axis.
func (s Shot) freeFill(drop layout.Point) float64 {
	return largestFree(func(fill float64) bool {
		halves, ok := s.seesRound(fill, drop)
		return ok && s.onBoard(halves)
	})
}

// largestFree is the largest fill that is free, by halving.
func largestFree(free func(fill float64) bool) float64 {
	low, high := 0.0, 1.0
	for range 50 {
		if middle := (low + high) / 2; free(middle) {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}
