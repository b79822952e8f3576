package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// onOneSheet is the largest print of 3 to 2 that one sheet of A4 holds.
func onOneSheet() Setup {
	s := plain()
	s.MaxSheets, s.DistanceMM, s.Proportions, s.Paper = 1, 0, 1.5, a4
	return s
}

// By hand, on A4 lying, 297 x 210 mm (ISO 216): a print of 3 to 2 with 5 mm left free all round is 287 mm wide and
// 191 1/3 high, and lies as far from the paper's upper as from its lower edge; on borderless paper it is as wide as the
// paper. Where one margin is wider than the other, the print keeps off it and else to the paper's middle.
func TestOnePrintOnOneSheet(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Setup)
		want   Rect // the print on its page
	}{
		{"margins of 5 mm", func(*Setup) {}, Rect{5, (210 - 287/1.5) / 2, 287, 287 / 1.5}},
		{"borderless", func(s *Setup) { s.MarginMM = 0 }, Rect{0, 6, 297, 198}},
		{"borderless, as high as the paper", func(s *Setup) { s.MarginMM, s.Proportions = 0, 1.25 },
			Rect{(297 - 262.5) / 2, 0, 262.5, 210}},
		{"smaller than the sheet", func(s *Setup) { s.MaxSheets, s.Print = 0, Size{150, 100} },
			Rect{30, (297 - 100) / 2.0, 150, 100}}, // upright paper is the first that holds it
		{"a wide margin below", func(s *Setup) {
			s.Orientation, s.Margins = Portrait, &Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 30}
		},
			Rect{4, (297 - 202/1.5) / 2, 202, 202 / 1.5}},
		{"a wide margin below that is in the way", func(s *Setup) {
			s.Orientation, s.Proportions = Portrait, 202/260.0
			s.Margins = &Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 30}
		}, Rect{4, 297 - 30 - 260, 202, 260}},
		{"what would take two when it is cut", func(s *Setup) { s.MaxSheets, s.Print = 0, Size{285, 190} },
			Rect{6, 10, 285, 190}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := onOneSheet()
			c.change(&s)
			p := mustPlan(t, s)
			require.NoError(t, p.Check())
			require.True(t, p.Backdrop.Uncut)
			require.Len(t, p.Sheets, 1)
			require.Empty(t, p.Seams)
			on := p.Backdrop.OnPage(p.Sheets[0])
			for _, r := range []Rect{on.Cell, on.Printed, on.Used, on.Kept} {
				require.InDeltaSlice(t, []float64{c.want.XMM, c.want.YMM, c.want.WidthMM, c.want.HeightMM},
					[]float64{r.XMM, r.YMM, r.WidthMM, r.HeightMM}, 1e-9)
			}
			require.False(t, on.CutLeft || on.CutTop || on.CutRight || on.CutBottom)
			page, paper := p.Backdrop.Page(), p.Backdrop.PaperOnBoard(p.Sheets[0])
			require.Equal(t, page, Size{paper.WidthMM, paper.HeightMM})
			require.InDelta(t, -c.want.XMM, paper.XMM, 1e-9)
		})
	}
}

// A measured printer reaches all of the print, however it is drawn, and what comes out lies in the paper's middle: by
// hand, drawn 1 / 0.99 as large about the middle between margins of 4 and 24 mm, which is 10 mm above the paper's.
func TestOneSheetOfAMeasuredPrinter(t *testing.T) {
	s := onOneSheet()
	s.Printer = &Printer{"hall", a4, 0.99, 0.99, Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 24}, Growth{}}
	p := mustPlan(t, s)
	requireDrawnFor(t, p.Backdrop, p.Sheets[0], *s.Printer)
	s.MaxSheets, s.Print, s.Orientation = 0, Size{150, 100}, Portrait
	p = mustPlan(t, s)
	requireDrawnFor(t, p.Backdrop, p.Sheets[0], *s.Printer)
	drawn := p.Backdrop.Correction().Drawn(p.Backdrop.OnPage(p.Sheets[0]).Cell)
	require.InDelta(t, 297.0/2, drawn.YMM+drawn.HeightMM/2, 1e-9)
	require.InDelta(t, 210.0/2, drawn.XMM+drawn.WidthMM/2, 1e-9)
	require.InDelta(t, 150/0.99, drawn.WidthMM, 1e-9)
}

// Columns or rows asked for, or more sheets, cut it all the same; and no seam can be put on one sheet.
func TestOneSheetIsCutWhereMoreAreAsked(t *testing.T) {
	s := onOneSheet()
	s.MaxSheets, s.Print, s.Columns = 0, Size{150, 100}, 2
	p := mustPlan(t, s)
	require.False(t, p.Backdrop.Uncut)
	require.Len(t, p.Sheets, 2)
	p.Backdrop.Uncut = true
	require.ErrorContains(t, p.Check(), "2 sheets are not one that hangs uncut")

	one := mustPlan(t, onOneSheet())
	require.Nil(t, one.Finer(0))
	finer := one.Finer(3)
	require.NotEmpty(t, finer)
	for _, q := range finer {
		require.False(t, q.Backdrop.Uncut)
		require.NoError(t, q.Check())
	}
	placed, err := one.WithSeams(NoSeamCosts(one.Backdrop), nil)
	require.NoError(t, err)
	require.Equal(t, one, placed.Plan)
	_, err = one.WithSeams(NoSeamCosts(one.Backdrop), nil, FixedSeam{ColumnSeam, 1, 100})
	require.ErrorContains(t, err, "there is no seam C1: the print hangs on one sheet")
}
