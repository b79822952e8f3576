package sheet

import (
	"image/color"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// Where a reprint has room for the narrowest strips only, they still carry the whole label, cut marks and the check
// rule with its length; nothing is drawn past them, and no letter stands on the picture.
func TestNarrowStrips(t *testing.T) {
	j := flatJob(t, nil)
	first := j.Plan.Sheets[0]
	used := j.Plan.Backdrop.Used(first)
	paper := layout.Paper{Name: "scant", WidthMM: used.WidthMM - 1.4, HeightMM: used.HeightMM - 1.4}
	if j.Plan.Backdrop.Orientation == layout.Landscape {
		paper.WidthMM, paper.HeightMM = paper.HeightMM, paper.WidthMM
	}
	tight := layout.Margins{LeftMM: 1e-6, TopMM: 1e-6, RightMM: 1e-6, BottomMM: 1e-6}
	plan, sheets, err := j.Plan.Reprint(j.Plan.Sheets[:1], paper, nil, &tight)
	require.NoError(t, err)
	on := plan.Backdrop.OnPage(sheets[0])
	require.Equal(t, 4.5, on.StripMM)
	require.Equal(t, 10.0, plan.Backdrop.LapMM)

	j.Plan = plan
	doc := write(t, j, sheets)
	for _, says := range []string{"R1C1", "1 of 15", "board up", "check 4F2A91", "härbour", "100 mm"} {
		require.Contains(t, doc.Text(1), says)
	}
	page := doc.Render(1, dpi)
	for name, at := range map[string][2]float64{
		"of the left cut": {on.Cell.XMM, on.Cell.YMM - on.StripMM + 1}, "of the top cut": {on.Cell.XMM - on.StripMM + 1,
			on.Cell.YMM},
	} {
		require.True(t, dark(pagePx(page, at[0], at[1])), name)
	}
	pictureTopPt := units.MMToPoints(plan.Backdrop.Page().HeightMM - on.Printed.YMM)
	for _, l := range doc.Letters(1) {
		if l.LeftPt > units.MMToPoints(on.Cell.XMM) && strings.ContainsAny(l.Text, "RC14FA") { // of the label
			require.Greater(t, l.BottomPt, pictureTopPt-0.1, "%v stands on the picture", l)
		}
		require.LessOrEqual(t, l.TopPt, units.MMToPoints(plan.Backdrop.Page().HeightMM))
		require.GreaterOrEqual(t, l.LeftPt, 0.0)
	}
	white := color.RGBA{255, 255, 255, 255}
	for y := on.Printed.YMM + 0.3; y < on.Printed.BottomMM(); y += 0.1 {
		require.Equal(t, white, pagePx(page, on.Printed.XMM-0.25, y), "the bleed's edge, at %.1f mm", y)
	}
}
