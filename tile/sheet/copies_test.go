package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// Each copy on a sheet looks like the first, marks and label with it.
func TestCopiesAreAlike(t *testing.T) {
	j := flatJob(t, func(s *layout.Setup) { s.DistanceMM, s.Copies, s.Orientation = 40, 3, layout.Portrait })
	doc := write(t, j, j.Plan.Sheets)
	require.Equal(t, 1, doc.PageCount())
	require.Equal(t, 3, strings.Count(doc.Text(1), "4F2A91"), "a label on each")
	page := doc.Render(1, dpi)
	on := j.Plan.Backdrop.OnSheet(j.Plan.Sheets[0])
	require.Len(t, on, 3)
	first := j.Plan.Backdrop.OnPage(on[0])
	for _, copied := range on {
		used := j.Plan.Backdrop.OnPage(copied).Used
		differ, all := 0, 0
		const step = 0.4
		for y := step; y < used.HeightMM; y += step {
			for x := step; x < used.WidthMM; x += step {
				a := pagePx(page, first.Used.XMM+x, first.Used.YMM+y)
				b := pagePx(page, used.XMM+x, used.YMM+y)
				all++
				if dark(a) != dark(b) || white(a) != white(b) {
					differ++
				}
			}
		}
		require.Less(t, float64(differ), 0.01*float64(all), "but for hairlines between pixels")
		cell := j.Plan.Backdrop.OnPage(copied).Cell
		require.False(t, white(pagePx(page, cell.XMM+cell.WidthMM/2, cell.YMM+cell.HeightMM/2)), "picture in each")
	}
}
