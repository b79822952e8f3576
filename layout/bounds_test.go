package layout

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
)

// boundedSetup is the usual one, with the print free.
func boundedSetup(change func(*Setup)) Setup {
	s := plain()
	s.DistanceMM, s.Fill, s.Print = 0, 0, Size{}
	change(&s)
	return s
}

// The largest print keeps to all its bounds, and one a thousandth larger does not; whatever surrounds it counts.
func TestLargestPrintWithinBounds(t *testing.T) {
	black := func(s *Setup) { s.Background, s.Fit, s.Fill, s.Drop.DiameterMM = Black, Inside, 0.95, 3 }
	rod := func(s *Setup) { s.Drop.Body, s.Drop.DiameterMM, s.Surround = flip.UprightRod, 20, "#000080" }
	for _, c := range []struct {
		name   string
		bounds Bounds
		change func(*Setup)
	}{
		{"sheets", Bounds{MaxSheets: 12}, func(*Setup) {}},
		{"one sheet, its fill printed black", Bounds{MaxSheets: 1}, black},
		{"seven sheets, its fill printed black", Bounds{MaxSheets: 7}, black},
		{"a rod with a surround", Bounds{MaxSheets: 6}, rod},
		{"a surround at a distance", Bounds{MaxSheets: 12}, func(s *Setup) { s.Surround, s.DistanceMM = Stretch, 300 }},
		{"a surround of its own size", Bounds{MaxSheets: 12}, func(s *Setup) {
			s.Surround, s.SurroundSize = "#000080", Size{700, 500}
		}},
		{"a straight picture in a surround", Bounds{MaxSheets: 15}, func(s *Setup) {
			s.Surround, s.Look, s.DistanceMM = "#000080", Straight, 200
		}},
		{"columns", Bounds{Columns: 3}, func(*Setup) {}},
		{"columns and rows", Bounds{Columns: 4, Rows: 3}, func(*Setup) {}},
		{"rows, at a distance", Bounds{Rows: 2}, func(s *Setup) { s.DistanceMM = 300 }},
		{"a board's width", Bounds{Board: Size{WidthMM: 600}}, func(*Setup) {}},
		{"a board's height, of a drop out of round", Bounds{Board: Size{HeightMM: 400}},
			func(s *Setup) { s.Drop.HeightOverWidth = 0.9 }},
		{"a board and sheets", Bounds{MaxSheets: 6, Board: Size{600, 450}}, func(*Setup) {}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := boundedSetup(c.change)
			s.Bounds = c.bounds
			p, err := s.Plan()
			require.NoError(t, err)
			requireWithin(t, p, c.bounds)
			larger := s
			larger.DistanceMM, larger.Fill = p.Drop.DistanceMM, p.Picture.Fill
			if s.DistanceMM > 0 {
				larger.Fill = min(1-(1-larger.Fill)*0.998, LargestFill)
			} else {
				larger.DistanceMM *= 1.001
			}
			_, err = larger.Plan()
			if larger.Fill < LargestFill {
				require.Error(t, err)
			}
		})
	}
}

func requireWithin(t *testing.T, p Plan, b Bounds) {
	t.Helper()
	for _, most := range []struct {
		is, most float64
	}{{float64(len(p.Sheets)), float64(b.MaxSheets)}, {p.Backdrop.WidthMM + 2*BorderMM, b.Board.WidthMM},
		{p.Backdrop.HeightMM + 2*BorderMM, b.Board.HeightMM}} {
		if most.most > 0 {
			require.LessOrEqual(t, most.is, most.most+1e-6)
		}
	}
	if b.Columns > 0 {
		require.Equal(t, b.Columns, p.Backdrop.Columns)
	}
	if b.Rows > 0 {
		require.Equal(t, b.Rows, p.Backdrop.Rows)
	}
	require.NoError(t, p.Check())
}

// A print that is known is cut into the columns and rows asked for, if it needs no more of them and none is a sliver.
func TestColumnsAndRows(t *testing.T) {
	at := func(b Bounds) Setup {
		s := boundedSetup(func(*Setup) {})
		s.DistanceMM, s.Fill, s.Bounds = 400, 0.85, b
		return s
	}
	p, err := at(Bounds{Columns: 6, Rows: 4}).Plan()
	require.NoError(t, err)
	require.Len(t, p.Sheets, 24)
	requireWithin(t, p, Bounds{Columns: 6, Rows: 4})
	for _, c := range []struct {
		bounds Bounds
		says   string
	}{
		{Bounds{Columns: 2}, "more than were asked for"},
		{Bounds{Columns: 80}, "under the 20mm that can be cut and pasted"},
		{Bounds{Columns: 4, Rows: 4, MaxSheets: 15}, "more than the 15 sheets that are allowed"},
		{Bounds{Columns: 1000, Rows: 1000}, "can't be"},
		{Bounds{Board: Size{WidthMM: 600}}, "does not go on a board of 600mm, which holds 560.0mm with its border of 20mm"},
		{Bounds{Board: Size{HeightMM: 44}}, "leaves nothing for a print"},
		{Bounds{Board: Size{WidthMM: -5}}, "hint: take 0.01mm to 1000m"},
	} {
		_, err := at(c.bounds).Plan()
		require.ErrorContains(t, err, c.says)
	}
}
