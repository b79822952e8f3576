package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Sheets of one printer are refused by paper that does not hold them, with the figures; a printer that was
// not measured is bound by the paper's edge alone.
func TestReprintRefuses(t *testing.T) {
	s := plain()
	s.MaxSheets, s.Printer = 4, &Printer{"hall", a4, 1, 1, usualMargin, Growth{}}
	p := mustPlan(t, s)
	a5, err := ParsePaper("A5")
	require.NoError(t, err)
	_, _, err = p.Reprint(p.Sheets, a5, s.Printer, nil)
	require.ErrorContains(t, err, `within the margins of printer "hall"`+"\nhint: take paper or a printer that holds it")
	require.ErrorContains(t, err, "even with strips of 4.5mm and laps of 3mm")
	require.ErrorContains(t, err, `(dropsheet make JOB --paper A5 --printer "hall")`)
	tight := Paper{"tight", 203, 282} // holds the 202 x 281 mm that the printer reaches of A4
	_, _, err = p.Reprint(p.Sheets, tight, s.Printer, nil)
	require.Error(t, err)
	q, _, err := p.Reprint(p.Sheets, tight, nil, nil)
	require.NoError(t, err)
	require.Nil(t, q.Backdrop.Printer)
}

// What lacks room comes narrower in the order of what it costs: strips, which are cut off, and then laps. By hand: each
// sheet but the last of a row takes up one strip and one lap across.
func TestReprintNarrowsStripsFirst(t *testing.T) {
	s := plain()
	s.Orientation, s.MaxSheets, s.DistanceMM = Portrait, 6, 0
	p := mustPlan(t, s)
	first := p.Sheets[:1]
	used := p.Backdrop.Used(first[0])
	require.Equal(t, 10.0, p.Backdrop.LapMM)
	for _, c := range []struct{ lacksMM, stripMM, lapMM float64 }{
		{0, 6, 10}, {0.4, 5.5, 10}, {1, 5, 10}, {1.5, 4.5, 10}, {1.6, 4.5, 9.5}, {5, 4.5, 6.5}, {8.5, 4.5, 3}, {8.6, 0, 0},
	} {
		paper := Paper{"strange", used.WidthMM - c.lacksMM, 2 * used.HeightMM}
		q, sheets, err := p.Reprint(first, paper, nil, &Margins{LeftMM: 1e-9, TopMM: 1e-9, RightMM: 1e-9, BottomMM: 1e-9})
		if c.stripMM == 0 {
			require.ErrorContains(t, err, "sheet R1C1 needs")
			require.ErrorContains(t, err, "even with strips of 4.5mm and laps of 3mm")
			continue
		}
		require.NoError(t, err)
		on := q.Backdrop.OnPage(sheets[0])
		require.InDelta(t, c.stripMM, on.StripMM, 1e-9, "%g mm short", c.lacksMM)
		require.InDelta(t, c.stripMM, on.Cell.XMM-on.Used.XMM, 1e-9)
		require.InDelta(t, c.lapMM, on.Used.RightMM()-on.Cell.RightMM(), 1e-9, "%g mm short", c.lacksMM)
		require.Equal(t, first[0].Cell, sheets[0].Cell)
		again, _, err := q.Reprint(sheets, a4, nil, &Margins{LeftMM: 5, TopMM: 5, RightMM: 5, BottomMM: 5})
		require.NoError(t, err)
		require.Zero(t, again.Backdrop.NarrowStripMM, "strips are whole again where there is room")
	}
}
