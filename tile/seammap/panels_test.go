package seammap

import (
	"fmt"
	"image"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// The panels hold all of their view and nothing of another: just outside the board's there is only white,
// just inside there is its ink, and the drop's is its square.
func TestPanelsHoldTheirViews(t *testing.T) {
	for i, change := range []func(*layout.Setup){
		nil, rod(flip.UprightRod),
		func(s *layout.Setup) { s.Proportions = 4 },
		func(s *layout.Setup) { s.Proportions = 0.3 },
		func(s *layout.Setup) { s.DistanceMM = 60 },
		func(s *layout.Setup) { s.DistanceMM = 2000 },
	} {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			p := plan(t, change)
			m := drawn(p, quartered(1.5))
			found := Find(p)
			require.Equal(t, m.Rect, found.Map)
			require.True(t, found.Board.In(m.Rect) && found.Drop.In(m.Rect))
			require.False(t, found.Board.Overlaps(found.Drop))
			require.Equal(t, found.Drop.Dx(), found.Drop.Dy())
			outside := found.Board.Inset(-2)
			for y := outside.Min.Y; y < outside.Max.Y; y++ {
				for x := outside.Min.X; x < outside.Max.X; x++ {
					if !(image.Point{X: x, Y: y}).In(found.Board) {
						require.Equal(t, paper, m.RGBAAt(x, y), "ink runs out of the board's panel at %d, %d", x, y)
					}
				}
			}
			inked := image.Rectangle{}
			for y := found.Board.Min.Y; y < found.Board.Max.Y; y++ {
				for x := found.Board.Min.X; x < found.Board.Max.X; x++ {
					if m.RGBAAt(x, y) != paper {
						inked = inked.Union(image.Rect(x, y, x+1, y+1))
					}
				}
			}
			for side, gap := range map[string]int{"left": inked.Min.X - found.Board.Min.X, "top": inked.Min.Y -
				found.Board.Min.Y, "right": found.Board.Max.X - inked.Max.X, "bottom": found.Board.Max.Y - inked.Max.Y} {
				require.Less(t, gap, 80, "%s: the panel is hardly larger than what it holds", side)
			}
			require.NotEmpty(t, found.Key)
		})
	}
}

// A single sheet's map does not speak of seams, and a rod's seams are not called bent.
func TestMapsWordsFitTheJob(t *testing.T) {
	one := plan(t, func(s *layout.Setup) { s.DistanceMM = 60 })
	require.Empty(t, one.Seams)
	require.NotContains(t, newMap(one).title()+newMap(one).shows(), "seam")
	require.NotContains(t, newMap(plan(t, rod(flip.UprightRod))).shows(), "bent")
	require.Contains(t, newMap(plan(t, nil)).shows(), "bent")
	require.Contains(t, newMap(plan(t, nil)).title(), "seams")
}
