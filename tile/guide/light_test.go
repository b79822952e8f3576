package guide

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// Contours of the squared distance from a point are circles: every piece lies on one, and together they are
// as long as it.
func TestContoursOfADistanceAreCircles(t *testing.T) {
	in := layout.Rect{XMM: 10, YMM: 20, WidthMM: 300, HeightMM: 200}
	const cx, cy = 160.0, 120.0
	l := newLattice(func(x, y float64) float64 { return (x-cx)*(x-cx) + (y-cy)*(y-cy) }, in, 90)
	for _, radius := range []float64{20, 55, 90} {
		long := 0.0
		for _, piece := range l.contour(radius * radius) {
			for _, p := range piece {
				require.InDelta(t, radius, math.Hypot(p.XMM-cx, p.YMM-cy), 0.1)
			}
			long += math.Hypot(piece[1].XMM-piece[0].XMM, piece[1].YMM-piece[0].YMM)
		}
		require.InEpsilon(t, 2*math.Pi*radius, long, 0.005)
	}
	require.Empty(t, l.contour(1e9))
}

// At a saddle two lines of one contour come near each other, and neither crosses over: xy = c has one branch
// in each of two quadrants.
func TestContoursKeepApartAtASaddle(t *testing.T) {
	in := layout.Rect{XMM: -10, YMM: -10, WidthMM: 20, HeightMM: 20}
	for _, level := range []float64{0.02, -0.02} {
		pieces := newLattice(func(x, y float64) float64 { return x * y }, in, 21).contour(level)
		require.NotEmpty(t, pieces)
		for _, p := range pieces {
			for _, end := range p {
				require.Positive(t, end.XMM*end.YMM*level, "a piece crosses the saddle: %v", p)
			}
		}
	}
}

func TestLightSectionTellsWhatTheLampsDo(t *testing.T) {
	for _, c := range []struct {
		name   string
		lamps  []layout.Lamp
		level  bool
		says   []string
		silent []string
	}{
		{"no lamp", nil, false, []string{"no lamp was named", "--level"}, []string{"Shiny paper"}},
		// The cosine-fourth law at the corner of the print of 889.2 x 592.8 mm: -4 log2(800 / sqrt(800² +
		// 444.6² + 296.4²)) = 1.06 stops.
		{"one on the axis", []layout.Lamp{{ZMM: 800}}, false, []string{"falls off by 1.06 stops", "under half a stop",
			"Shiny paper mirrors lamp 1 in the drop, at 445 mm", "matt paper"}, []string{"make up for the fall-off"}},
		{"one at the side, levelled", []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}}, true,
			[]string{"600 mm left", "400 mm up", "1153.3 mm", "make up for the fall-off", "throws no shadow"}, nil},
		{"far aside", []layout.Lamp{{XMM: 2500, YMM: 0, ZMM: 900}}, false,
			[]string{"No lamp stands where", "--light-from"}, []string{"Shiny paper"}},
		{"in the frame", []layout.Lamp{{XMM: 20, YMM: 0, ZMM: 500}}, false, []string{"Lamp 1 stands in the frame itself"},
			nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := usual()
			s.Lamps, s.Level = c.lamps, c.level
			texts := pageTexts(worded(t, jobOf(t, s)))
			all := strings.Join(texts, " ")
			for _, words := range c.says {
				require.Contains(t, all, words)
			}
			for _, words := range c.silent {
				require.NotContains(t, all, words)
			}
		})
	}
}

// Where lamps are named the guide keeps to them: it says nothing of light from the corner that the sheets are cut for
// unless it comes from there, and sends to the section that has them.
func TestLampsThatAreNamed(t *testing.T) {
	left, right := layout.Lamp{XMM: -600, YMM: -400, ZMM: 900}, layout.Lamp{XMM: 600, YMM: -400, ZMM: 900}
	for _, c := range []struct {
		name  string
		lamps []layout.Lamp
		says  []string
		not   []string
	}{
		{"none", nil, []string{"Lamp From the top left", "Light comes from the top left", "Start at the lamp’s corner",
			"to light the board evenly from the top left", "lamp, toward the board’s top left"},
			[]string{"the section Light has"}},
		{"where the sheets are cut for", []layout.Lamp{left}, []string{"Lamp Where the section Light has it",
			"cut for light from the top left", "Start at the lamp’s corner", "1 lamp, which the section Light describes"},
			[]string{"Light comes from", "evenly from"}},
		{"from both sides", []layout.Lamp{left, right}, []string{"Lamps 2, where the section Light has them",
			"Start in the corner that the sheets are cut for", "2 lamps, which the section Light describes",
			"lamps: where the section Light has them"}, []string{"Light comes from", "the lamp’s corner",
			"the lamp’s side"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := usual()
			s.Lamps = c.lamps
			all := strings.Join(pageTexts(opened(t, parts(jobOf(t, s), (*book).overview, (*book).shopping, (*book).setup,
				(*book).board, (*book).order, (*book).paste))), " ")
			for _, says := range c.says {
				require.Contains(t, all, says)
			}
			for _, not := range c.not {
				require.NotContains(t, all, not)
			}
		})
	}
}
