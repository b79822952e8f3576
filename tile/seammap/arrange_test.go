package seammap

import (
	"image"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/ink"

	"github.com/stretchr/testify/require"
)

// For boards of every shape the panels and the notes lie on the map, clear of each other.
func TestNothingOverlaps(t *testing.T) {
	for _, notes := range []float64{100, 300, 700} {
		for aspect := 0.02; aspect <= 50; aspect *= 1.1 {
			board := layout.Rect{WidthMM: 100 * aspect, HeightMM: 100}
			// Narrow notes grow taller, as text does.
			height := func(widthPx float64) float64 { return notes * 900 / widthPx }
			a := arrange(board, height)
			v := boardView{board: board, pxPerMM: a.pxPerMM, origin: a.boardOrigin}
			drawn := v.area().Grow(surroundPx)
			drawn.Left -= rulerLeftPx
			drawn.Right += numbersPx
			drawn.Bottom += rulerLowPx
			blocks := map[string]ink.Rect{
				"board": drawn,
				"drop": {Left: float64(a.drop.Min.X), Top: float64(a.drop.Min.Y), Right: float64(a.drop.Max.X),
					Bottom: float64(a.drop.Max.Y)},
				"notes": {Left: a.notes.X, Top: a.notes.Y, Right: a.notes.X + a.notesWidth, Bottom: a.notes.Y +
					height(a.notesWidth)},
			}
			for _, heading := range []ink.Point{a.boardHeading, a.dropHeading} {
				require.GreaterOrEqual(t, heading.Y, float64(titlePx))
			}
			for name, r := range blocks {
				require.GreaterOrEqual(t, r.Left, marginPx-1e-6, "%s at aspect %g", name, aspect)
				require.LessOrEqual(t, r.Right, widthPx-marginPx+1e-6, "%s at aspect %g", name, aspect)
				require.GreaterOrEqual(t, r.Top, float64(titlePx+headingPx), "%s at aspect %g", name, aspect)
				require.LessOrEqual(t, r.Bottom, float64(a.height-marginPx)+1, "%s at aspect %g", name, aspect)
				for other, s := range blocks {
					require.False(t, name != other && r.Overlaps(s), "%s and %s at aspect %g", name, other, aspect)
				}
			}
			require.Equal(t, image.Pt(dropSidePx, dropSidePx), a.drop.Size())
		}
	}
}

func TestRulerStep(t *testing.T) {
	for _, c := range []struct {
		name          string
		pxPerMM, step float64
		parts         int
	}{
		{"a pixel to the millimetre", 1, 100, 5},
		{"a kilometre on the map", 800 / 1e6, 200_000, 4},
		{"a stamp", 40, 5, 5},
		{"just enough", 0.45, 200, 4},
		{"not quite", 0.449, 500, 5},
	} {
		t.Run(c.name, func(t *testing.T) {
			step, parts := rulerStep(c.pxPerMM)
			require.InEpsilon(t, c.step, step, 1e-9)
			require.Equal(t, c.parts, parts)
		})
	}
}

func TestNumberStep(t *testing.T) {
	for _, c := range []struct {
		name          string
		cell, leastPx float64
		want          int
	}{
		{"room for all", 40, 30, 1},
		{"every second", 20, 30, 2},
		{"every fifth", 14, 50, 5},
		{"every tenth", 7, 50, 10},
		{"every two hundredth", 0.3, 50, 200},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.want, numberStep(c.cell, c.leastPx))
		})
	}
}

func TestKey(t *testing.T) {
	texts := func(change func(*layout.Setup)) (out []string) {
		m := newMap(plan(t, change))
		m.place()
		for _, n := range m.key() {
			out = append(out, n.text)
		}
		return out
	}
	// 400 mm behind a drop of 5 mm; the figures are flip's own (layout/plan_test.go checks them), here it is
	// their words that count.
	many := texts(nil)
	require.Contains(t, many, "seam that shows")
	require.Contains(t, many, "the drop's edge")
	require.Contains(t, many, "picture's fill 85\u00a0%: 296.4\u00a0mm")
	require.Len(t, many, 11)

	one := texts(func(s *layout.Setup) { s.MaxSheets, s.DistanceMM, s.Fill = 1, 0, 0.75 })
	require.NotContains(t, one, "seam that shows")
	require.Len(t, one, 6, "the picture's own fill takes the place of the same one")

	inside := texts(func(s *layout.Setup) { s.Drop.Index, s.Fill, s.Fit = 1.5168, 0.5, layout.Inside })
	require.Contains(t, inside, "fill 75\u00a0%: off the board")

	require.Contains(t, texts(rod(flip.LevelRod)), "the rod's edge")
}

// Words on rings stay inside the view, clear of each other and off the lines where they can.
func TestLabelsKeepClear(t *testing.T) {
	board := boardView{board: layout.Rect{WidthMM: 400, HeightMM: 300}, pxPerMM: 2, origin: ink.Point{X: 50, Y: 50}}
	frame := board.frame()
	canvas := ink.On(image.NewRGBA(image.Rect(0, 0, 900, 700)))
	l := &labels{canvas: canvas, view: board}
	middle := ink.Point{X: 450, Y: 350}
	l.lines = []ink.Path{{{X: 450, Y: 50}, {X: 450, Y: 650}}, {{X: 50, Y: 350}, {X: 850, Y: 350}}}
	face := newFaces().fill
	for radius := 60.0; radius <= 300; radius += 20 {
		at, ok := l.best(face, "0.25", []ink.Path{ink.Circle(middle, radius, 0)})
		require.True(t, ok)
		require.InDelta(t, radius, math.Hypot(at.X-middle.X, at.Y-middle.Y), 0.03, "on its ring")
		require.Zero(t, l.hiddenPx(face.Box(at, "0.25").Grow(labelPad)), "off the seams")
		l.put(face, at, blue, "0.25")
	}
	for i, a := range l.boxes {
		require.True(t, image.Rect(int(a.Left), int(a.Top), int(a.Right), int(a.Bottom)).In(frame))
		for _, b := range l.boxes[i+1:] {
			require.False(t, a.Overlaps(b))
		}
	}
	_, ok := l.best(face, "0.25", []ink.Path{ink.Circle(middle, 2000, 0)})
	require.False(t, ok, "a ring out of sight gets no label")
}
