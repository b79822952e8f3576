package sheet

import (
	"image"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// turned is a picture turned by 20 degrees, of which two opposite corner cells carry nothing, whatever the
// lamp's corner.
func turned(light layout.Corner) func(*layout.Setup) {
	return func(s *layout.Setup) {
		s.Fit, s.DistanceMM, s.LightFrom = layout.Inside, 700, light
		s.Framing.TurnDeg = 20
	}
}

// named finds a sheet.
func named(t *testing.T, p layout.Plan, name string) layout.Sheet {
	t.Helper()
	for _, s := range p.Sheets {
		if s.Name == name {
			return s
		}
	}
	require.Failf(t, "no such sheet", name)
	return layout.Sheet{}
}

// A lap that no neighbour is pasted over shows when all is done: nothing is printed on it but the cut mark at
// its outer end, and no seam tick goes on into it from round the corner. A lap with a neighbour has its ticks.
func TestBareLapsAreClean(t *testing.T) {
	for _, c := range []struct {
		light         layout.Corner
		side, endwise string // sheets whose lap across, and whose lap down, is bare
		other         string // has neighbours on both
	}{
		{layout.TopLeft, "R1C3", "R4C1", "R2C2"},
		{layout.BottomRight, "R5C2", "R2C4", "R3C3"},
	} {
		t.Run(string(c.light), func(t *testing.T) {
			j := flatJob(t, turned(c.light))
			p := j.Plan
			require.Equal(t, [3]int{4, 5, 18}, [3]int{p.Backdrop.Columns, p.Backdrop.Rows, len(p.Sheets)})
			sheets := []layout.Sheet{named(t, p, c.side), named(t, p, c.endwise), named(t, p, c.other)}
			doc := write(t, j, sheets)
			pages := []*image.RGBA{doc.Render(1, dpi), doc.Render(2, dpi), doc.Render(3, dpi)}
			inked := func(page int, across bool) (inked int) {
				s := sheets[page-1]
				on, lap := p.Backdrop.OnPage(s), p.Backdrop.LapMM
				cell, kept := on.Cell, on.Kept
				for y := kept.YMM + 0.1; y < kept.BottomMM()-0.1; y += 0.08 {
					for x := kept.XMM + 0.1; x < kept.RightMM()-0.1; x += 0.08 {
						beyond := math.Max(cell.XMM-x, x-cell.RightMM())
						from, to := cell.YMM-y, y-cell.BottomMM() // past the ends
						if !across {
							beyond, from, to = math.Max(cell.YMM-y, y-cell.BottomMM()), cell.XMM-x, x-cell.RightMM()
						}
						cutMark := beyond > lap-5.5 && (math.Abs(from) < 1.3 || math.Abs(to) < 1.3)
						if beyond <= 0.1 || cutMark {
							continue
						}
						if got := pagePx(pages[page-1], x, y); dark(got) || white(got) {
							inked++
						}
					}
				}
				return inked
			}
			require.Zero(t, inked(1, true), "%s has no neighbour across", c.side)
			require.Zero(t, inked(2, false), "%s has no neighbour that way down", c.endwise)
			require.Positive(t, inked(1, false))
			require.Positive(t, inked(2, true))
			require.Positive(t, inked(3, true))
			require.Positive(t, inked(3, false))
		})
	}
}

// Which laps are bare, and what of the board is, told by hand from the plan's shape: of 4 columns and 5 rows,
// R1C4 and R5C1 are missing.
func TestBare(t *testing.T) {
	p := flatJob(t, turned(layout.TopLeft)).Plan
	for name, want := range map[string][4]bool{
		"R1C3": {false, false, true, false}, "R4C1": {false, false, false, true}, "R2C4": {}, "R5C2": {}, "R3C3": {},
	} {
		var got [4]bool
		got[0], got[1], got[2], got[3] = Bare(p, named(t, p, name))
		require.Equal(t, want, got, name)
	}
	xs, ys := p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM
	require.Equal(t, []layout.Rect{
		{XMM: xs[3], YMM: 0, WidthMM: xs[4] - xs[3], HeightMM: ys[1]},
		{XMM: 0, YMM: ys[4], WidthMM: xs[1], HeightMM: ys[5] - ys[4]},
	}, BareBoard(p))
	require.Empty(t, BareBoard(flatJob(t, nil).Plan))

	// Sheets and bare board make up the whole, wherever the bare cells lie.
	p = flatJob(t, func(s *layout.Setup) {
		s.Fit, s.Proportions = layout.Inside, 1
		s.Framing = layout.Framing{TurnDeg: 45, OffX: 0.3, OffY: -0.1}
		s.DistanceMM = 900
	}).Plan
	area := 0.0
	for _, r := range BareBoard(p) {
		area += r.WidthMM * r.HeightMM
	}
	require.Greater(t, area, 0.2*p.Backdrop.WidthMM*p.Backdrop.HeightMM)
	for _, s := range p.Sheets {
		area += s.Cell.WidthMM * s.Cell.HeightMM
	}
	require.InEpsilon(t, p.Backdrop.WidthMM*p.Backdrop.HeightMM, area, 1e-9)
}
