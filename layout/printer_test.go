package layout

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var (
	a4          = Paper{"A4", 210, 297}
	gaugeRules  = Size{200, 250}
	usualMargin = Margins{LeftMM: 3, TopMM: 4, RightMM: 5, BottomMM: 12}
)

func TestNewPrinter(t *testing.T) {
	p, err := NewPrinter("study inkjet", a4, gaugeRules, Size{199.2, 248.5}, usualMargin)
	require.NoError(t, err)
	require.InDelta(t, 0.996, p.AcrossScale, 1e-12)
	require.InDelta(t, 0.994, p.FeedScale, 1e-12)
	require.Equal(t, usualMargin, p.Margins)

	text, err := json.Marshal(p)
	require.NoError(t, err)
	var again Printer
	require.NoError(t, json.Unmarshal(text, &again))
	require.Equal(t, p, again)
}

func TestNewPrinterRefuses(t *testing.T) {
	for _, c := range []struct {
		name    string
		printer string
		read    Size
		margins Margins
		says    string
	}{
		{"across 12 % short", "hall", Size{176, 250}, usualMargin, "176mm read across, where 200mm were drawn, is " +
			"off by 12 %"},
		{"feed 12 % long", "hall", Size{200, 280}, usualMargin, "scale to fit"},
		{"just over a twentieth", "hall", Size{189.9, 250}, usualMargin, "no printer errs by more than 5 %"},
		{"letter's rule along the feed", "hall", Size{200, 230}, usualMargin, "for other paper than A4 (--paper)"},
		{"swapped", "hall", Size{249, 199}, usualMargin, "taken for each other"},
		{"nothing read", "hall", Size{}, usualMargin, "scale to fit"},
		{"not a number", "hall", Size{math.NaN(), 250}, usualMargin, "scale to fit"},
		{"infinite", "hall", Size{200, math.Inf(1)}, usualMargin, "scale to fit"},
		{"margins that meet across", "hall", gaugeRules, Margins{LeftMM: 105, RightMM: 105}, "leave nothing of A4"},
		{"margins that meet along the feed", "hall", gaugeRules, Margins{TopMM: 290, BottomMM: 12}, "leave nothing of A4"},
		{"a margin below zero", "hall", gaugeRules, Margins{TopMM: -1}, "0mm or more"},
		{"a margin that is no number", "hall", gaugeRules, Margins{BottomMM: math.NaN()}, "0mm or more"},
		{"no name", "", gaugeRules, usualMargin, "needs a name"},
		{"a name of blanks", "  ", gaugeRules, usualMargin, "needs a name"},
		{"a name that moves the cursor", "hall\x1b[2J", gaugeRules, usualMargin, "can't be printed"},
		{"a name with a line's end", "hall\n", gaugeRules, usualMargin, "blanks at its ends"},
		{"a long name", strings.Repeat("ä", 81), gaugeRules, usualMargin, "81 letters"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := NewPrinter(c.printer, a4, gaugeRules, c.read, c.margins)
			require.ErrorContains(t, err, c.says)
		})
	}
	_, err := NewPrinter("hall", a4, gaugeRules, Size{190, 262.5}, usualMargin)
	require.NoError(t, err, "a twentieth off is the most that is taken")
}

// The ways that a page may come to lie on the upright sheet: where a point of it falls. Two of a landscape
// page, since drivers turn it either way.
var turns = map[Orientation][]func(Paper, Point) Point{
	Portrait: {func(_ Paper, at Point) Point { return at }},
	Landscape: {
		func(p Paper, at Point) Point { return Point{at.YMM, p.HeightMM - at.XMM} }, // anticlockwise
		func(p Paper, at Point) Point { return Point{p.WidthMM - at.YMM, at.XMM} },  // clockwise
	},
}

// A cell drawn at 1 / Scale comes out true, and Live keeps to what the sheet's own margins leave, portrait
// and landscape turned either way, whatever the printer.
func TestPrinterCorrectsBothOrientations(t *testing.T) {
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	r := rand.New(rand.NewPCG(seed, 0))
	near := func() float64 { return 0.9 + 0.2*r.Float64() }
	for range 200 {
		p := Printer{"hall", a4, near(), near(), Margins{20 * r.Float64(), 20 * r.Float64(), 20 * r.Float64(),
			20 * r.Float64()}, Growth{}}
		require.NoError(t, p.Check())
		for o, ways := range turns {
			live := p.Live(a4, o)
			x, y := p.Scale(o)
			for _, turned := range ways {
				const wide, high = 120.0, 80.0
				from := turned(a4, Point{live.XMM, live.YMM})
				to := turned(a4, Point{live.XMM + wide/x, live.YMM + high/y})
				across, feed := math.Abs(to.XMM-from.XMM)*p.AcrossScale, math.Abs(to.YMM-from.YMM)*p.FeedScale
				if o == Landscape {
					across, feed = feed, across
				}
				require.InDelta(t, wide, across, 1e-9, o)
				require.InDelta(t, high, feed, 1e-9, o)

				corner := turned(a4, Point{live.RightMM(), live.BottomMM()})
				left, right := min(from.XMM, corner.XMM), max(from.XMM, corner.XMM)
				top, bottom := min(from.YMM, corner.YMM), max(from.YMM, corner.YMM)
				require.GreaterOrEqual(t, left, p.Margins.LeftMM-1e-9, o)
				require.GreaterOrEqual(t, top, p.Margins.TopMM-1e-9, o)
				require.LessOrEqual(t, right, 210-p.Margins.RightMM+1e-9, o)
				require.LessOrEqual(t, bottom, 297-p.Margins.BottomMM+1e-9, o)
			}
		}
	}
}

// By hand, for a printer that keeps most at a sheet's foot: a portrait A4 page keeps its own margins; a
// landscape one 12 mm left and right, where the sheet's foot may come, and 5 mm above and below.
func TestLandscapeMargins(t *testing.T) {
	p := Printer{"hall", a4, 0.996, 0.994, usualMargin, Growth{}}
	require.Equal(t, Sides{LeftMM: 3, TopMM: 4, RightMM: 5, BottomMM: 12}, p.PageMargins(Portrait))
	require.Equal(t, Sides{LeftMM: 12, TopMM: 5, RightMM: 12, BottomMM: 5}, p.PageMargins(Landscape))
	require.Equal(t, Rect{12, 5, 273, 200}, p.Live(a4, Landscape))
	require.Equal(t, Rect{3, 4, 202, 281}, p.Live(a4, Portrait))
}
