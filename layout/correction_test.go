package layout

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// somePrinter is a printer that errs within what is taken, measured on a paper.
func somePrinter(r *rand.Rand, paper Paper) *Printer {
	near := func() float64 { return 0.91 + 0.18*r.Float64() }
	grown := Growth{}
	if r.IntN(2) == 0 {
		grown = Growth{0.99 + 0.02*r.Float64(), 0.99 + 0.02*r.Float64()}
	}
	return &Printer{"hall", paper, near(), near(), Margins{20 * r.Float64(), 20 * r.Float64(), 20 * r.Float64(),
		20 * r.Float64()}, grown}
}

// requireDrawnFor holds a sheet against its printer: what is drawn lies within the real margins, portrait or
// landscape turned either way, and the cell, whose length on the page is that of the correction times its
// own, comes out of printer and paste as long as it is on the board.
func requireDrawnFor(t *testing.T, b Backdrop, s Sheet, p Printer) {
	t.Helper()
	c := b.Correction()
	used, cell := c.Drawn(b.OnPage(s).Used), c.Drawn(b.OnPage(s).Cell)
	for _, turned := range turns[b.Orientation] {
		at := func(x, y float64) Point { return turned(b.Paper, Point{x, y}) }
		for _, corner := range []Point{at(used.XMM, used.YMM), at(used.RightMM(), used.BottomMM())} {
			require.GreaterOrEqual(t, corner.XMM, p.Margins.LeftMM-1e-6)
			require.GreaterOrEqual(t, corner.YMM, p.Margins.TopMM-1e-6)
			require.LessOrEqual(t, corner.XMM, b.Paper.WidthMM-p.Margins.RightMM+1e-6)
			require.LessOrEqual(t, corner.YMM, b.Paper.HeightMM-p.Margins.BottomMM+1e-6)
		}
		from, to := at(cell.XMM, cell.YMM), at(cell.RightMM(), cell.BottomMM())
		across, feed := max(from.XMM, to.XMM)-min(from.XMM, to.XMM), max(from.YMM, to.YMM)-min(from.YMM, to.YMM)
		wide, high := s.Cell.WidthMM, s.Cell.HeightMM
		if b.Orientation == Landscape {
			wide, high = high, wide
		}
		growsAcross, growsFeed := 1.0, 1.0 // once it is pasted
		if p.Growth != (Growth{}) {
			growsAcross, growsFeed = p.Growth.Across, p.Growth.Feed
		}
		require.InDelta(t, wide, across*p.AcrossScale*growsAcross, 1e-6)
		require.InDelta(t, high, feed*p.FeedScale*growsFeed, 1e-6)
	}
}

// Whatever the printer, setup and lie of the paper: every sheet lies within its margins and comes out true,
// and so it does when it is printed again elsewhere.
func TestSheetsForPrinters(t *testing.T) {
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	a3, err := ParsePaper("A3")
	require.NoError(t, err)
	elsewhere, refused, stripped, lapped := 0, 0, 0, 0
	for range 1200 {
		s := plain()
		s.Printer = somePrinter(r, a4)
		s.Orientation = []Orientation{Auto, Portrait, Landscape}[r.IntN(3)]
		s.LightFrom = []Corner{TopLeft, TopRight, BottomLeft, BottomRight}[r.IntN(4)]
		s.LapMM, s.MaxSheets = minLapMM+12*r.Float64(), 1+r.IntN(12)
		p := mustPlan(t, s)
		require.NoError(t, p.Check())
		for _, sheet := range p.Sheets {
			requireDrawnFor(t, p.Backdrop, sheet, *s.Printer)
		}

		paper, other := []Paper{a4, a3}[r.IntN(2)], somePrinter(r, a4)
		switch n := r.IntN(8); {
		case paper == a3:
		case n == 0: // one that reaches the middle of its paper alone
			other.Margins = Margins{60, 60, 60, 60}
		case n == 1: // one that is true, and reaches a millimetre less than the sheets take up
			var used Size
			for _, sheet := range p.Sheets {
				u := p.Backdrop.Used(sheet)
				used = Size{max(used.WidthMM, u.WidthMM), max(used.HeightMM, u.HeightMM)}
			}
			if p.Backdrop.Orientation == Landscape {
				used = Size{used.HeightMM, used.WidthMM}
			}
			across, feed := (a4.WidthMM-used.WidthMM+1)/2, (a4.HeightMM-used.HeightMM+1)/2
			other = &Printer{"hall", a4, 1, 1, Margins{across, feed, across, feed}, Growth{}}
		}
		q, sheets, err := p.Reprint(p.Sheets, paper, other, nil)
		if err != nil {
			refused++
			require.ErrorContains(t, err, "holds")
			require.Equal(t, "A4", paper.Name, "A3 holds any sheet of A4")
			continue
		}
		elsewhere++
		require.Len(t, sheets, len(p.Sheets))
		for i, sheet := range sheets {
			requireDrawnFor(t, q.Backdrop, sheet, *other)
			sheet.OnPage = p.Sheets[i].OnPage
			require.Equal(t, p.Sheets[i], sheet, "nothing else is new")
		}
		require.Equal(t, p.Backdrop.XEdgesMM, q.Backdrop.XEdgesMM)

		if q.Backdrop.NarrowStripMM > 0 { // strips first, for what does not hold the sheets as they were
			require.GreaterOrEqual(t, q.Backdrop.NarrowStripMM, leastStripMM)
			require.Less(t, q.Backdrop.NarrowStripMM, StripMM)
			require.Equal(t, "A4", paper.Name)
			stripped++
		}
		if q.Backdrop.LapMM != p.Backdrop.LapMM { // and laps once strips are as narrow as they may be
			require.GreaterOrEqual(t, q.Backdrop.LapMM, minLapMM)
			require.Equal(t, leastStripMM, q.Backdrop.NarrowStripMM)
			lapped++
			continue
		}
		// And back again, to the last bit.
		again, sheets, err := q.Reprint(sheets, a4, s.Printer, nil)
		require.NoError(t, err)
		if again.Backdrop.Orientation == p.Backdrop.Orientation {
			require.Equal(t, p.Sheets, sheets)
			require.Equal(t, p.Backdrop, again.Backdrop)
		}
	}
	require.Positive(t, elsewhere)
	require.Positive(t, refused)
	require.Greater(t, stripped, lapped)
	require.Positive(t, lapped)
}

// By hand: A4 of a printer that prints 0.4 % short across and 0.6 % short along the feed, with margins of 3,
// 4, 5 and 12 mm.
func TestCorrection(t *testing.T) {
	b := Backdrop{Paper: a4, Orientation: Portrait, Printer: &Printer{"hall", a4, 0.996, 0.994, usualMargin, Growth{}}}
	require.Equal(t, Correction{Point{104, 144.5}, 1 / 0.996, 1 / 0.994}, b.Correction(),
		"about the middle of 3 to 205 and 4 to 285")
	at := b.Correction().Drawn(Rect{54.2, 45.1, 99.6, 99.4})
	require.InDelta(t, 54, at.XMM, 1e-9)
	require.InDelta(t, 44.5, at.YMM, 1e-9)
	require.InDelta(t, 100, at.WidthMM, 1e-9)
	require.InDelta(t, 100, at.HeightMM, 1e-9)
	b.Orientation = Landscape
	require.Equal(t, Correction{Point{148.5, 105}, 1 / 0.994, 1 / 0.996}, b.Correction(), "about the page's middle")
	b.Printer = nil
	require.True(t, b.Correction().None())
}

// Without a margin a sheet keeps as far off the paper's edges as a borderless driver takes that enlarges the page by
// 3 % about its middle (common practice, no source), and no further; edges with a margin keep that. By hand, 1.5 % of
// A4 are 3.15 and 4.455 mm.
func TestBorderlessKeepsMarksOnThePaper(t *testing.T) {
	none := Margins{}
	for _, o := range []Orientation{Portrait, Landscape} {
		for _, told := range []*Margins{nil, &none, {BottomMM: 12}} {
			s := plain()
			s.Orientation, s.MaxSheets, s.DistanceMM, s.MarginMM, s.Margins = o, 6, 0, 0, told
			p := mustPlan(t, s)
			require.NoError(t, p.Check())
			require.True(t, p.Backdrop.Borderless())
			page, fullest := p.Backdrop.Page(), 0.0
			for _, sheet := range p.Sheets {
				used := p.Backdrop.OnPage(sheet).Used
				enlarged := Rect{page.WidthMM/2 + 1.03*(used.XMM-page.WidthMM/2),
					page.HeightMM/2 + 1.03*(used.YMM-page.HeightMM/2), 1.03 * used.WidthMM, 1.03 * used.HeightMM}
				require.True(t, Rect{0, 0, page.WidthMM, page.HeightMM}.contains(enlarged), "%v of %v", enlarged, page)
				fullest = max(fullest, used.WidthMM/page.WidthMM, used.HeightMM/page.HeightMM)
			}
			if told == nil || *told == none {
				require.InDelta(t, 0.97, fullest, 1e-9)
			}
		}
	}
	b := Backdrop{Paper: a4, Orientation: Portrait}
	require.InDelta(t, 210-2*3.15, b.live().WidthMM, 1e-9)
	require.InDelta(t, 297-2*4.455, b.live().HeightMM, 1e-9)
	b.Margins = &Margins{LeftMM: 2, BottomMM: 12}
	require.InDelta(t, 210-2-3.15, b.live().WidthMM, 1e-9)
	require.InDelta(t, 297-4.455-12, b.live().HeightMM, 1e-9)
	require.False(t, Backdrop{Paper: a4, MarginMM: 3}.Borderless())
	require.InDelta(t, 204, Backdrop{Paper: a4, Orientation: Portrait, MarginMM: 3}.live().WidthMM, 1e-9)
}

// Margins of each edge: a sheet lies within its own on a portrait page, and on a landscape page whichever way it is
// turned; the same four as a measured printer's that prints true come to the same sheets. By hand, a print on one sheet
// of A4 with 4 and 10 mm left and right is 210 less 14 mm wide.
func TestMarginsOfEachEdge(t *testing.T) {
	four := Margins{LeftMM: 4, TopMM: 5, RightMM: 10, BottomMM: 12}
	require.Equal(t, "4,5,10,12mm", four.String())
	for _, o := range []Orientation{Portrait, Landscape} {
		s := plain()
		s.Orientation, s.MaxSheets, s.DistanceMM = o, 6, 0
		s.Margins = &four
		p := mustPlan(t, s)
		require.NoError(t, p.Check())
		require.Equal(t, 12.0, p.Backdrop.MarginMM)
		s.Margins, s.Printer = nil, &Printer{"true", a4, 1, 1, four, Growth{}}
		q := mustPlan(t, s)
		require.Equal(t, q.Sheets, p.Sheets)
		for _, sheet := range p.Sheets {
			requireDrawnFor(t, p.Backdrop, sheet, *s.Printer)
		}
	}
	s := plain()
	s.Margins, s.Orientation, s.MaxSheets, s.Print, s.DistanceMM = &four, Portrait, 1, Size{}, 0
	require.InDelta(t, 210.0-14, mustPlan(t, s).Backdrop.WidthMM, 1e-9)
	s.Margins = &Margins{LeftMM: -1}
	_, err := s.Plan()
	require.ErrorContains(t, err, "take 0mm or more for each")
}
