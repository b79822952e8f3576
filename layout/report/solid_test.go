package report

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// Sheets that lie wholly beyond the picture are counted where a colour goes on there, and nowhere else. By hand: of
// three columns of 100 mm the picture covers the middle one, and at first 10 mm of either neighbour.
func TestSolidSheets(t *testing.T) {
	p := layout.Plan{Picture: layout.Picture{WidthMM: 120, HeightMM: 80},
		Backdrop: layout.Backdrop{WidthMM: 300, HeightMM: 80, Surround: "#000000"}}
	for i := range 3 {
		p.Sheets = append(p.Sheets, layout.Sheet{Cell: layout.Rect{XMM: 100 * float64(i), WidthMM: 100, HeightMM: 80}})
	}
	require.Equal(t, 0, solidSheets(p), "the picture reaches 10 mm into both")
	p.Picture.WidthMM = 100
	require.Equal(t, 2, solidSheets(p))
	p.Backdrop.Surround = layout.Stretch
	require.Equal(t, 0, solidSheets(p))
}
