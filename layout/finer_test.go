package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Each choice holds its width on its sheets and not a millimetre more, and no fewer sheets hold it; the plan's own
// print lies among them.
func TestChoices(t *testing.T) {
	for _, mm := range []float64{150, 275, 440, 581, 900, 1400} {
		s := plain()
		s.Print = Size{WidthMM: mm}
		p := mustPlan(t, s)
		near := p.Choices()
		require.GreaterOrEqual(t, len(near), 3)
		for i, c := range near {
			on := func(mm float64, sheets int) error {
				s := plain()
				s.Print, s.MaxSheets = Size{WidthMM: mm}, sheets
				_, err := s.Plan()
				return err
			}
			require.NoError(t, on(c.WidthMM, c.Sheets))
			require.Error(t, on(c.WidthMM+1, c.Sheets))
			if c.Sheets > 1 && i > 0 {
				require.Error(t, on(near[i-1].WidthMM+1, c.Sheets-1))
				require.Greater(t, c.WidthMM, near[i-1].WidthMM)
			}
		}
		require.LessOrEqual(t, mm, near[len(near)-2].WidthMM)
		require.Contains(t, sheetsOf(near), len(p.Sheets))
	}
	s := plain()
	s.Look, s.DistanceMM = Straight, 200
	require.Empty(t, mustPlan(t, s).Choices())
}

func sheetsOf(near []Choice) (all []int) {
	for _, c := range near {
		all = append(all, c.Sheets)
	}
	return all
}

// Two sheets that the print fills have their seam in the middle; a third moves it away. Where sheets have room to spare
// the seam can slide.
func TestMiddleKeptClear(t *testing.T) {
	s := plain()
	s.MaxSheets = 2
	full := mustPlan(t, s)
	c, ok := full.Middle()
	require.True(t, ok)
	is, canBe := full.Clear(c)
	require.False(t, is)
	require.False(t, canBe)
	cleared, ok := full.ClearedBy(c, 4)
	require.True(t, ok)
	require.Len(t, cleared.Sheets, 3)
	require.NoError(t, cleared.Check())

	s.Print = Size{WidthMM: 290}
	roomy := mustPlan(t, s)
	require.Len(t, roomy.Sheets, 2)
	c, _ = roomy.Middle()
	is, canBe = roomy.Clear(c)
	require.False(t, is)
	require.True(t, canBe)

	s.Print, s.MaxSheets = Size{WidthMM: 250}, 1
	c, _ = mustPlan(t, s).Middle()
	is, _ = mustPlan(t, s).Clear(c)
	require.True(t, is, "one sheet has no seam")
}

// Finer plans show the same backdrop on more sheets, no more than asked for, and in the order of how many.
func TestFiner(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	p := mustPlan(t, s)
	last := len(p.Sheets)
	finer := p.Finer(9)
	require.NotEmpty(t, finer)
	for _, f := range finer {
		require.NoError(t, f.Check())
		require.Equal(t, p.Backdrop.Board(), f.Backdrop.Board())
		require.GreaterOrEqual(t, len(f.Sheets), last)
		require.LessOrEqual(t, len(f.Sheets), len(p.Sheets)+9)
		last = len(f.Sheets)
	}
	_, err := p.WithCells(2, 2)
	require.ErrorContains(t, err, "take at least 5 and 3")
	_, err = p.WithCells(5, 90)
	require.ErrorContains(t, err, "under the 20mm")
}

// Where six sheets upright keep a seam out of the middle and six on their sides can't, turning the paper is told, and
// a plan so made does.
func TestMiddleClearedByTurning(t *testing.T) {
	s := plain()
	var err error
	s.Paper, err = ParsePaper("letter")
	require.NoError(t, err)
	s.Print, s.Orientation, s.DistanceMM = Size{WidthMM: 540}, Landscape, 400
	p := mustPlan(t, s)
	c, ok := p.Middle()
	require.True(t, ok)
	_, canBe := p.Clear(c)
	require.False(t, canBe)
	other, ok := p.ClearedByTurning(c)
	require.True(t, ok)
	require.Equal(t, Portrait, other)

	s.Orientation = other
	turned := mustPlan(t, s)
	require.Len(t, turned.Sheets, len(p.Sheets))
	_, canBe = turned.Clear(c)
	require.True(t, canBe)

	s.Print = Size{WidthMM: 700} // which takes more sheets the other way
	_, ok = mustPlan(t, s).ClearedByTurning(c)
	require.False(t, ok)
}
