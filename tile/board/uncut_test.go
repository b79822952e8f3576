package board

import (
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// Beyond the print of a sheet that is not cut comes the white of its paper, and only beyond that the room; of a patch
// about either edge half is one and half the other.
func TestWhiteOfAnUncutSheet(t *testing.T) {
	p := flatPlan("", flip.ReversesBoth)
	p.Picture.WidthMM, p.Picture.HeightMM = 200, 100
	p.Backdrop.Uncut, p.Backdrop.Paper = true, layout.Paper{WidthMM: 210, HeightMM: 297}
	p.Backdrop.Orientation, p.Backdrop.Columns, p.Backdrop.Rows = layout.Landscape, 1, 1
	p.Sheets = []layout.Sheet{{Cell: p.Backdrop.Board(), OnPage: layout.Point{XMM: 48.5, YMM: 55}}}
	s := New(p, quarters())
	for _, c := range []struct {
		x, y                 float64
		patch                Patch
		picture, paper, none float64
	}{
		{100, 50, Patch{}, 1, 0, 0},
		{-20, 50, Patch{}, 0, 1, 0}, {100, 150, Patch{}, 0, 1, 0},
		{-49, 50, Patch{}, 0, 0, 1}, {100, 156, Patch{}, 0, 0, 1},
		{0, 50, Box(4, 4), 0.5, 0.5, 0}, {248.5, 50, Box(4, 4), 0, 0.5, 0.5},
	} {
		seen := s.At(c.x, c.y, c.patch)
		require.InDelta(t, c.picture, seen.Picture, 1e-9, "%v", c)
		require.InDelta(t, c.paper, seen.Paper, 1e-9, "%v", c)
		require.InDelta(t, c.none, seen.None, 1e-9, "%v", c)
	}
	p.Backdrop.Uncut = false
	require.Equal(t, 1.0, New(p, quarters()).At(-20, 50, Patch{}).None, "a sheet that is cut leaves none")
}
