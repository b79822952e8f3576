package seammap

import (
	"fmt"
	"image"
	"math"
	"strings"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/ink"

	"github.com/stretchr/testify/require"
)

// Cells without a sheet show neither picture nor paper: grey on the board, dark in the drop; cells that have
// one show paper beyond the picture.
func TestBareCells(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Fit, s.DistanceMM, s.Framing.TurnDeg = layout.Inside, 700, 20 })
	require.Equal(t, 20, p.Backdrop.Columns*p.Backdrop.Rows)
	require.Len(t, p.Sheets, 18)
	picture := quartered(1.5)
	got := drawn(p, picture)
	board, drop := mapOf(p)
	there := map[[2]int]bool{}
	for _, s := range p.Sheets {
		there[[2]int{s.Row, s.Column}] = true
	}
	xs, ys := p.Backdrop.XEdgesMM, p.Backdrop.YEdgesMM
	bare := 0
	ground(got, drop, inTheDrop(p, picture), 0) // without lines and words
	for row := 1; row <= p.Backdrop.Rows; row++ {
		for column := 1; column <= p.Backdrop.Columns; column++ {
			if there[[2]int{row, column}] {
				continue
			}
			bare++
			middle := layout.Point{XMM: (xs[column-1] + xs[column]) / 2, YMM: (ys[row-1] + ys[row]) / 2}
			at := board.at(middle)
			requireColour(t, mix(bareBoard, paper, boardWhite), got.RGBAAt(int(at.X), int(at.Y)), 1)
			in, ok := drop.spot(middle)
			require.True(t, ok)
			requireColour(t, wall, got.RGBAAt(int(in.X), int(in.Y)), 1)
		}
	}
	require.Equal(t, 2, bare)
	// R1C3 ends in paper at its upper right corner, the outermost fifth of it.
	corner := layout.Point{XMM: xs[3] - 0.2*(xs[3]-xs[2]), YMM: ys[0] + 0.05*(ys[1]-ys[0])}
	at := board.at(corner)
	require.Equal(t, paper, got.RGBAAt(int(at.X), int(at.Y)))
	in, ok := drop.spot(corner)
	require.True(t, ok)
	require.Equal(t, paper, got.RGBAAt(int(in.X), int(in.Y)))
}

// The words count sheets, not cells.
func TestWordsCountSheets(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		says   string
	}{
		{"all cells", nil, "15 sheets of A4"},
		{"one", func(s *layout.Setup) { s.DistanceMM = 60 }, "1 sheet of A4"},
		{"corners bare", func(s *layout.Setup) { s.Fit, s.DistanceMM, s.Framing.TurnDeg = layout.Inside, 700, 20 },
			"18 sheets of A4"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change)
			require.Contains(t, blanks(newMap(p).boardText()), c.says)
			bare := strings.Contains(strings.Join(newMap(p).caption(), " "),
				"18 of the 20 cells carry picture; the others have no sheet. The board is bare there.")
			require.Equal(t, c.name == "corners bare", bare)
		})
	}
}

// A straight picture that lies inside the drop shows there as the square that it is, its corners at the fill:
// every point of its edge lies on one of four lines at fill/√2 of the radius, by plane geometry.
func TestStraightPictureShowsSquare(t *testing.T) {
	for _, turnDeg := range []float64{0, 20} {
		p := plan(t, func(s *layout.Setup) {
			s.Fit, s.Look, s.Proportions, s.Framing.TurnDeg = layout.Inside, layout.Straight, 1, turnDeg
		})
		v := newDropView(p, square)
		edge := v.around(p.PictureOutline())
		require.Len(t, edge, 1)
		half := p.Picture.Fill * v.radiusPx / math.Sqrt2
		sin, cos := math.Sincos(turnDeg * math.Pi / 180)
		reached := map[ink.Point]bool{}
		for _, at := range edge[0] {
			x, y := at.X-v.middle().X, at.Y-v.middle().Y
			x, y = x*cos+y*sin, y*cos-x*sin // turned back: the turn is clockwise, and y runs down
			require.InDelta(t, half, max(math.Abs(x), math.Abs(y)), 0.01, "turned by %g", turnDeg)
			if min(math.Abs(x), math.Abs(y)) > half-0.1 {
				reached[ink.Point{X: sign(x), Y: sign(y)}] = true
			}
		}
		require.Len(t, reached, 4, "all four corners")
	}
}

// What the drop shows of its board ends at its outline, an ellipse as high against its width as the drop (of
// a spheroid seen level, by flip.Sight.OutlineMM), which fits its square whether it is flat or long; a round
// drop's is the circle.
func TestOutlineOfADropOutOfRound(t *testing.T) {
	for _, ratio := range []float64{0.8, 1, 1.2} {
		t.Run(fmt.Sprint(ratio), func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) { s.Drop.HeightOverWidth = ratio })
			v := newDropView(p, square)
			require.InEpsilon(t, float64(square.Dx())*dropShare/2, max(v.radiusPx, v.halfHeightPx), 1e-9)
			require.InEpsilon(t, ratio, v.halfHeightPx/v.radiusPx, 1e-9)
			img := image.NewRGBA(image.Rect(0, 0, widthPx, square.Max.Y))
			ground(img, v, inTheDrop(p, white()), 0)
			m := v.middle()
			extent := func(dx, dy int) (px float64) { // to where nothing is painted
				x, y := int(m.X), int(m.Y)
				for img.RGBAAt(x, y).A != 0 {
					x, y, px = x+dx, y+dy, px+1
				}
				return px
			}
			require.InDelta(t, v.radiusPx, extent(1, 0), 1.5)
			require.InDelta(t, v.halfHeightPx, extent(0, 1), 1.5)
			for _, path := range v.fill(1) {
				for _, at := range path {
					require.InDelta(t, 0, v.inside(at), 1e-6)
					require.InDelta(t, 1, math.Hypot((at.X-m.X)/v.radiusPx, (at.Y-m.Y)/v.halfHeightPx), 1e-9)
				}
			}
		})
	}
}

// Where an oblate drop looks at a fill is one line on both panels: what the board's shows lies at that share
// of the drop's outline.
func TestFillsOfAnOblateDrop(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.85 })
	board, drop := mapOf(p)
	for _, fill := range []float64{0.25, 0.75} {
		paths := board.fill(fill)
		require.Len(t, paths, 1)
		for _, at := range paths[0] {
			on, _ := board.land(at)
			in, ok := drop.spot(on)
			require.True(t, ok)
			m := drop.middle()
			require.InDelta(t, fill, math.Hypot((in.X-m.X)/drop.radiusPx, (in.Y-m.Y)/drop.halfHeightPx), 1e-5)
		}
	}
	require.Contains(t, blanks(newMap(p).scene()), "5.28 mm wide and 4.49 mm high") // 5/0.85^(1/3), and 0.85 of it
}

// Maps of pictures that are bent, turned or moved are sound, like any.
func TestFramedPlans(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
	}{
		{"off the axis", func(s *layout.Setup) { s.Fit, s.Framing = layout.Inside, layout.Framing{OffX: 0.3, OffY: -0.2} }},
		{"in a surround", func(s *layout.Setup) {
			s.Look, s.Framing.Round, s.Surround, s.SurroundSize = 0.5, true, "#203040",
				layout.Size{WidthMM: 1200, HeightMM: 1100}
		}},
		{"straight level rod", func(s *layout.Setup) { rod(flip.LevelRod)(s); s.Look = layout.Straight }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change)
			got := drawn(p, quartered(1.5))
			require.Equal(t, Find(p).Map, got.Rect)
			for y := range got.Rect.Dy() {
				for x := range widthPx {
					if min(x, y, widthPx-1-x, got.Rect.Dy()-1-y) < marginPx/2 {
						require.Equal(t, paper, got.RGBAAt(x, y), "the margin at %d, %d", x, y)
					}
				}
			}
		})
	}
}
