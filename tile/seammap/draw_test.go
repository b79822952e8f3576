package seammap

import (
	"bytes"
	"image"
	"image/color"
	"math"
	"runtime"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/proof"

	"github.com/stretchr/testify/require"
)

// mapOf draws a plan and tells where things went.
func mapOf(p layout.Plan) (boardView, *dropView) {
	m := newMap(p)
	m.place()
	return m.board, m.drop
}

// The picture hangs as the body reverses it (rays cross in a ball both ways, in a rod across it alone) and shows
// upright in the drop: its corners tell.
func TestPictureIsTurned(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		// whether the board's left shows the picture's right, and its top the picture's bottom
		x, y bool
	}{
		{"ball: half a turn", nil, true, true},
		{"upright rod: left and right", rod(flip.UprightRod), true, false},
		{"level rod: top and bottom", rod(flip.LevelRod), false, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, c.change)
			got := drawn(p, quartered(1.5))
			board, drop := mapOf(p)
			area := board.area()
			for row := range 2 {
				for column := range 2 {
					shown := quarters[row][column]
					// A tenth of the board in from its corner there are no lines and no words.
					x := area.Left + (area.Right-area.Left)*pick(flipped(column, c.x), 0.08, 0.92)
					y := area.Top + (area.Bottom-area.Top)*pick(flipped(row, c.y), 0.06, 0.94)
					requireColour(t, mix(shown, paper, boardWhite), got.RGBAAt(int(x), int(y)), 2)

					m := drop.middle()
					x, y = m.X+pick(column, -0.33, 0.33)*drop.radiusPx, m.Y+pick(row, -0.22, 0.22)*drop.radiusPx
					requireColour(t, shown, got.RGBAAt(int(x), int(y)), 2)
				}
			}
		})
	}
}

func flipped(i int, flip bool) int {
	if flip {
		return 1 - i
	}
	return i
}

func pick(i int, first, second float64) float64 { return []float64{first, second}[i] }

func requireColour(t *testing.T, want, got color.RGBA, levels int) {
	t.Helper()
	far := 0
	for _, d := range []int{int(want.R) - int(got.R), int(want.G) - int(got.G), int(want.B) - int(got.B)} {
		far = max(far, d, -d)
	}
	require.LessOrEqual(t, far, levels, "want %v, got %v", want, got)
}

// On a white board, seams are dark where the plan and the closed form put them, and halfway between seams it is white.
func TestSeamsAreDrawnWhereTheyFall(t *testing.T) {
	p := plan(t, nil)
	got := drawn(p, white())
	board, drop := mapOf(p)
	for _, axis := range []string{"x", "y"} {
		onBoard, inDrop, all := 0, 0, 0
		for _, s := range p.Seams {
			if s.Axis != axis {
				continue
			}
			for i := 1; i < 40; i++ {
				along := s.FromMM + (s.ToMM-s.FromMM)*float64(i)/40
				on := layout.Point{XMM: s.AtMM, YMM: along}
				if axis == "y" {
					on = layout.Point{XMM: along, YMM: s.AtMM}
				}
				all++
				at := board.at(on)
				onBoard += count(isDark(got.RGBAAt(int(at.X), int(at.Y))))
				at = closedForm(t, p, drop, on)
				inDrop += count(isDark(got.RGBAAt(int(at.X), int(at.Y))))
			}
		}
		// Only words may cover a seam, and they go where they hide least.
		require.Greater(t, float64(onBoard), 0.97*float64(all), "axis %s, board", axis)
		require.Greater(t, float64(inDrop), 0.93*float64(all), "axis %s, drop", axis)
	}
	for _, s := range p.Sheets {
		q := layout.Point{XMM: s.Cell.XMM + s.Cell.WidthMM/2, YMM: s.Cell.YMM + s.Cell.HeightMM/4}
		at := board.at(q)
		require.False(t, isDark(got.RGBAAt(int(at.X), int(at.Y))), "a quarter down %s there is no seam", s.Name)
	}
}

func count(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// Round the board's middle the fills' dashes lie at ReachMM, measured by the board's amber edge, and not beside it.
func TestFillRingsLieAtTheirReach(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Proportions = 1 })
	got := drawn(p, white())
	board, drop := mapOf(p)
	middle := board.at(layout.Point{XMM: p.Backdrop.WidthMM / 2, YMM: p.Backdrop.HeightMM / 2})

	// The scale, from the drawing alone: the middles of the amber edge's two sides are the board's width apart.
	y := int(middle.Y) + 40
	var first, last []int
	for x := range drop.square.Min.X {
		if isAmber(got.RGBAAt(x, y)) {
			if float64(x) < middle.X {
				first = append(first, x)
			} else {
				last = append(last, x)
			}
		}
	}
	require.NotEmpty(t, first)
	require.NotEmpty(t, last)
	pxPerMM := float64(last[0]+last[len(last)-1]-first[0]-first[len(first)-1]) / 2 / p.Backdrop.WidthMM
	require.InEpsilon(t, board.pxPerMM, pxPerMM, 0.003)

	blue := func(radius float64) float64 {
		const steps = 2000
		n := 0
		for i := range steps {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / steps)
			n += count(isBlue(got.RGBAAt(int(middle.X+radius*cos), int(middle.Y+radius*sin))))
		}
		return float64(n) / steps
	}
	for _, c := range []struct{ fill, inked float64 }{{0.25, 4.0 / 11}, {0.5, 13.0 / 21}, {0.75, 30.0 / 39}} {
		reachMM, ok := p.Sight().ReachMM(c.fill)
		require.True(t, ok)
		require.InDelta(t, c.inked, blue(reachMM*board.pxPerMM), 0.17,
			"fill %g is inked by its dashes' share, but for seams and words", c.fill)
		require.Less(t, blue(reachMM*board.pxPerMM+7), 0.08, "outside fill %g only its label is blue", c.fill)
		require.Less(t, blue(reachMM*board.pxPerMM-7), 0.08, "inside fill %g only its label is blue", c.fill)
	}
}

// Of a rod the fills are straight lines, reach to either side of the axis.
func TestRodsHaveStraightFills(t *testing.T) {
	for _, body := range []flip.Body{flip.UprightRod, flip.LevelRod} {
		p := plan(t, rod(body))
		board, drop := mapOf(p)
		reachMM, ok := p.Sight().ReachMM(0.5)
		require.True(t, ok)
		for _, c := range []struct {
			v    view
			want float64
		}{{board, reachMM * board.pxPerMM}, {drop, 0.5 * drop.radiusPx}} {
			lines := c.v.fill(0.5)
			require.Len(t, lines, 2)
			a, b := lines[0], lines[1]
			if body == flip.UprightRod {
				require.Equal(t, a[0].X, a[1].X)
				require.InDelta(t, 2*c.want, math.Abs(a[0].X-b[0].X), 1e-9)
			} else {
				require.Equal(t, a[0].Y, a[1].Y)
				require.InDelta(t, 2*c.want, math.Abs(a[0].Y-b[0].Y), 1e-9)
			}
		}
	}
}

// What the drop shows under the lines is what the proof shows: by another tracing loop, sixteen rays a pixel
// and Fresnel's losses. Those are 4 % at the middle (normal incidence, twice 2.0 %), at most 9 levels here at
// fill 0.7; the rest is sampling.
func TestDropShowsWhatTheProofShows(t *testing.T) {
	p := plan(t, nil)
	_, drop := mapOf(p)
	picture := quartered(1.5)
	got := image.NewRGBA(image.Rect(0, 0, widthPx, drop.square.Max.Y))
	ground(got, drop, inTheDrop(p, picture), 0)
	want := proof.Pinhole(p, proof.CloseUp(p, drop.square.Dx()/2, 1/dropShare), picture)
	far, n := 0, 0
	for j := range want.Rect.Dy() {
		for i := range want.Rect.Dx() {
			x, y := drop.square.Min.X+2*i+1, drop.square.Min.Y+2*j+1
			m := drop.middle()
			if math.Hypot(float64(x)-m.X, float64(y)-m.Y) < 0.7*drop.radiusPx {
				a, b := got.RGBAAt(x, y), want.RGBAAt(i, j)
				for _, d := range []int{int(a.R) - int(b.R), int(a.G) - int(b.G), int(a.B) - int(b.B)} {
					n++
					far += count(d < -2 || d > 9)
				}
			}
		}
	}
	require.Less(t, float64(far)/float64(n), 0.015, "only along the quarters' edges may they differ")
}

func TestSamePixelsEveryRun(t *testing.T) {
	p := plan(t, nil)
	first := drawn(p, quartered(1.5))
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	require.True(t, bytes.Equal(first.Pix, drawn(p, quartered(1.5)).Pix), "one processor or many, the pixels are the same")
}

// Whatever the plan, the map is as wide as promised, of a reasonable height, has a clean margin, and shows the board.
func TestExtremePlans(t *testing.T) {
	small, err := layout.ParsePaper("60x90mm")
	require.NoError(t, err)
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
	}{
		{"one sheet", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM, s.Fill = 1, 0, 0.8 }},
		{"sixty columns", func(s *layout.Setup) {
			s.Paper, s.Proportions, s.DistanceMM, s.Orientation = small, 7, 200, layout.Portrait
		}},
		{"4:1", func(s *layout.Setup) { s.Proportions = 4 }},
		{"1:4", func(s *layout.Setup) { s.Proportions = 0.25 }},
		{"50:1", func(s *layout.Setup) { s.Proportions, s.DistanceMM = 50, 60 }},
		{"1:50", func(s *layout.Setup) { s.Proportions, s.DistanceMM = 0.02, 60 }},
		{"upright rod", rod(flip.UprightRod)},
		{"level rod", rod(flip.LevelRod)},
		{"thin rod", func(s *layout.Setup) { s.Drop.Body = flip.UprightRod }},
		{"inside", func(s *layout.Setup) { s.Fit = layout.Inside }},
		{"glass, its half fill inside", func(s *layout.Setup) { s.Drop.Index, s.Fill, s.Fit = 1.5168, 0.5, layout.Inside }},
		{"dense glass, far rim", func(s *layout.Setup) { s.Drop.Index, s.Fill, s.DistanceMM = 2.4, 0.8, 100 }},
		{"tiny fill", func(s *layout.Setup) { s.Fill, s.DistanceMM = 0.05, 900 }},
		{"nearly full", func(s *layout.Setup) { s.Fill, s.DistanceMM = 0.995, 60 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			requireSound(t, plan(t, c.change))
		})
	}
	t.Run("a camera inside the drop", func(t *testing.T) {
		p := plan(t, nil)
		p.Drop.CameraMM = 1
		p.Drop.Reverses = p.Sight().Reverses()
		require.Error(t, p.Check(), "no job file may hold it, and yet it does no harm")
		requireSound(t, p)
	})
	t.Run("a plan that is not turned over", func(t *testing.T) {
		p := plan(t, nil)
		p.Drop.DistanceMM = 4
		p.Drop.Reverses = p.Sight().Reverses()
		require.Equal(t, flip.ReversesNone, p.Drop.Reverses)
		requireSound(t, p)
	})
}

func requireSound(t *testing.T, p layout.Plan) {
	t.Helper()
	got := drawn(p, quartered(min(4, max(0.25, p.Backdrop.WidthMM/p.Backdrop.HeightMM))))
	require.Equal(t, widthPx, got.Rect.Dx())
	require.Less(t, got.Rect.Dy(), 2*widthPx)
	const clear = marginPx / 2
	for y := range got.Rect.Dy() {
		for x := range widthPx {
			if min(x, y, widthPx-1-x, got.Rect.Dy()-1-y) < clear {
				if got.RGBAAt(x, y) != paper {
					t.Fatalf("the margin at %d, %d is %v, want white", x, y, got.RGBAAt(x, y))
				}
			}
		}
	}
	board, _ := mapOf(p)
	area := board.area()
	ambers := 0
	for x := int(area.Left) + 6; x < int(area.Right)-6; x++ {
		ambers += count(isAmber(got.RGBAAt(x, int(math.Round(area.Bottom)))))
	}
	require.Greater(t, float64(ambers), 0.4*(area.Right-area.Left-12),
		"the picture's edge is drawn along the board's lower side")
}
