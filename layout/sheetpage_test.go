package layout

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A sheet on its page, by hand: laps of 10 mm where it is not cut, 2 mm of bleed and 6 mm of strip where it is; the
// cell, whose corner lies at (300, 200) of the board, at (7, 12) of the page.
func TestOnPage(t *testing.T) {
	sheet := Sheet{Row: 2, Column: 3, Cell: Rect{300, 200, 180, 250}, OnPage: Point{7, 12}}
	for _, c := range []struct {
		name                string
		light               Corner
		columns, rows       int
		kept, printed, used Rect
		cut                 [4]bool
	}{
		{"lamp at the top left, inside", TopLeft, 9, 9, Rect{7, 12, 190, 260}, Rect{5, 10, 192, 262}, Rect{1, 6, 196, 266},
			[4]bool{true, true, false, false}},
		{"lamp at the bottom right, inside", BottomRight, 9, 9, Rect{-3, 2, 190, 260}, Rect{-3, 2, 192, 262},
			Rect{-3, 2, 196, 266}, [4]bool{false, false, true, true}},
		{"lamp at the top left, in the last row", TopLeft, 9, 2, Rect{7, 12, 190, 250}, Rect{5, 10, 192, 254},
			Rect{1, 6, 196, 262}, [4]bool{true, true, false, true}},
		{"lamp at the bottom left, in the last column", BottomLeft, 3, 9, Rect{7, 2, 180, 260}, Rect{5, 2, 184, 262},
			Rect{1, 2, 192, 266}, [4]bool{true, false, true, true}},
	} {
		t.Run(c.name, func(t *testing.T) {
			on := Backdrop{LightFrom: c.light, Columns: c.columns, Rows: c.rows, LapMM: 10}.OnPage(sheet)
			require.Equal(t, Rect{7, 12, 180, 250}, on.Cell)
			require.Equal(t, c.kept, on.Kept)
			require.Equal(t, c.printed, on.Printed)
			require.Equal(t, c.used, on.Used)
			require.Equal(t, c.cut, [4]bool{on.CutLeft, on.CutTop, on.CutRight, on.CutBottom})
			require.Equal(t, Rect{17, 32, 1, 2}, on.FromBoard(Rect{310, 220, 1, 2}))
			require.Equal(t, Rect{310, 220, 1, 2}, on.ToBoard(Rect{17, 32, 1, 2}))
		})
	}
}
