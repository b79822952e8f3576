package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Beside a print that is not cut stands its label alone, off the print and within what the printer reaches: above it,
// else below, else at a side; where there is no room for it the sheet has none, and says so.
func TestLabelBesideAnUncutPrint(t *testing.T) {
	for _, c := range []struct {
		name  string
		print layout.Size
		where string
	}{
		{"above", layout.Size{WidthMM: 287, HeightMM: 191}, "above"},
		{"at the left", layout.Size{WidthMM: 250, HeightMM: 200}, "left"},
		{"nowhere", layout.Size{WidthMM: 287, HeightMM: 200}, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := flatJob(t, func(s *layout.Setup) {
				s.Paper, _ = layout.ParsePaper("A4")
				s.Orientation, s.DistanceMM, s.Fill = layout.Landscape, 0, 0
				s.Proportions, s.Print = c.print.WidthMM/c.print.HeightMM, c.print
			})
			s := j.Plan.Sheets[0]
			require.True(t, j.Plan.Backdrop.Uncut)
			require.Zero(t, CheckRuleMM(j.Plan, s))
			doc := write(t, j, j.Plan.Sheets)
			require.Equal(t, c.where != "", ShowsCode(j.Plan, s, j.Label))
			text := strings.Join(strings.Fields(doc.Text(1)), " ")
			if c.where == "" {
				require.Empty(t, text)
				return
			}
			require.Equal(t, "up check "+j.Label.Code+" "+j.Label.Job, text)
			on, reached := j.Plan.Backdrop.OnPage(s), j.Plan.Backdrop.Reached()
			page := j.Plan.Backdrop.Page()
			for _, l := range doc.Letters(1) {
				left, right := units.PointsToMM(l.LeftPt), units.PointsToMM(l.RightPt)
				top, bottom := page.HeightMM-units.PointsToMM(l.TopPt), page.HeightMM-units.PointsToMM(l.BottomPt)
				require.GreaterOrEqual(t, left, reached.XMM)
				require.GreaterOrEqual(t, top, reached.YMM)
				if c.where == "above" {
					require.Less(t, bottom, on.Cell.YMM)
				} else {
					require.Less(t, right, on.Cell.XMM)
				}
			}
		})
	}
}
