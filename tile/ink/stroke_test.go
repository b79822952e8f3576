package ink

import (
	"image"
	"image/color"
	"math"
	"math/rand"
	"testing"

	"github.com/stretchr/testify/require"
)

var (
	red   = color.RGBA{0xff, 0, 0, 0xff}
	green = color.RGBA{0, 0xff, 0, 0xff}
)

// inked is the area that a drawing covers, in pixels, by its alpha on a clear ground.
func inked(m *image.RGBA) float64 {
	sum := 0
	for i := 3; i < len(m.Pix); i += 4 {
		sum += int(m.Pix[i])
	}
	return float64(sum) / 0xff
}

func blank() *image.RGBA { return image.NewRGBA(image.Rect(0, 0, 300, 300)) }

// A straight line covers its length times its width, whichever way it runs; a ring covers 2 pi r w.
func TestStrokesCoverTheirArea(t *testing.T) {
	const seed = 41
	random := rand.New(rand.NewSource(seed))
	for range 50 {
		p := Point{40 + 220*random.Float64(), 40 + 220*random.Float64()}
		q := Point{40 + 220*random.Float64(), 40 + 220*random.Float64()}
		width := 1 + 6*random.Float64()
		m := blank()
		On(m).Draw(Stroke{Path{p, q}, Line{Colour: red, WidthPx: width}})
		want := width * math.Hypot(p.X-q.X, p.Y-q.Y)
		require.InDelta(t, want, inked(m), 0.01*want+2, "seed %d: %v to %v, %g wide", seed, p, q, width)
	}
	for _, radius := range []float64{5, 40, 130} {
		m := blank()
		On(m).Draw(Stroke{Circle(Point{150, 150}, radius, 1), Line{Colour: red, WidthPx: 3}})
		require.InEpsilon(t, 2*math.Pi*radius*3, inked(m), 0.01, "a ring of radius %g", radius)
	}
	m := blank()
	On(m).Draw(Stroke{Rect{20, 30, 120, 200}.Outline(), Line{Colour: red, WidthPx: 4}})
	require.InEpsilon(t, 104*174-96*166, inked(m), 0.001, "a rectangle's edge has square corners")
}

// A bend of many small pieces is as even as the curve it follows: nothing piles up where pieces meet.
func TestFinePathsAreEven(t *testing.T) {
	var path Path
	for i := range 2000 {
		a := math.Pi * float64(i) / 1999
		path = append(path, Point{150 + 120*math.Cos(a), 150 + 120*math.Sin(a)})
	}
	m := blank()
	On(m).Draw(Stroke{path, Line{Colour: red, WidthPx: 4}})
	require.InEpsilon(t, math.Pi*120*4, inked(m), 0.005)
}

func TestDashes(t *testing.T) {
	line := Line{Colour: red, WidthPx: 2, DashPx: []float64{12, 6, 2, 6}}
	for _, c := range []struct {
		name  string
		path  Path
		count int
	}{
		{"straight, four times the pattern", Path{{10, 10}, {114, 10}}, 8},
		{"stretched to end whole", Path{{10, 10}, {120, 10}}, 8},
		{"round a circle", Circle(Point{150, 150}, 104/(2*math.Pi), 0), 8},
		{"shorter than the pattern", Path{{10, 10}, {20, 10}}, 2},
		{"through corners", Path{{10, 10}, {36, 10}, {36, 62}, {62, 62}}, 8},
	} {
		t.Run(c.name, func(t *testing.T) {
			dashes := line.dashes(c.path)
			require.Len(t, dashes, c.count)
			sum := 0.0
			for _, d := range dashes {
				sum += d.Length()
			}
			require.InEpsilon(t, c.path.Length()*14/26, sum, 0.01, "the pattern's share is inked")
			require.InDelta(t, 0, apart(c.path[0], dashes[0][0]), 1e-9, "the first dash starts the path")
		})
	}
}

func TestKeylinesLieUnderLines(t *testing.T) {
	line := Line{Colour: red, WidthPx: 4, Keyline: green, KeylinePx: 3}
	m := blank()
	On(m).Draw(Stroke{Path{{20, 100}, {180, 100}}, line}, Stroke{Path{{100, 20}, {100, 180}}, line})
	require.Equal(t, red, m.RGBAAt(100, 100), "at the crossing")
	require.Equal(t, red, m.RGBAAt(104, 100), "the line that was drawn first runs through the other's keyline")
	require.Equal(t, red, m.RGBAAt(100, 104))
	require.Equal(t, green, m.RGBAAt(60, 103))
	require.Equal(t, green, m.RGBAAt(18, 100), "the keyline goes round the end")
	require.Equal(t, color.RGBA{}, m.RGBAAt(60, 106))
}

func TestWithinClips(t *testing.T) {
	m := blank()
	part := image.Rect(50, 60, 200, 150)
	c := On(m).Within(part)
	c.Fill(red, Rect{-1e9, -1e9, 1e9, 1e9}.Outline())
	c.Draw(Stroke{Path{{0, 0}, {300, 300}}, Line{Colour: green, WidthPx: 9}})
	c.Text(NewFace(Bold, 30), Point{30, 70}, green, "clipped")
	c.TextWithKeyline(NewFace(Bold, 30), Point{150, 140}, green, red, 3, "clipped")
	for y := range 300 {
		for x := range 300 {
			if !image.Pt(x, y).In(part) {
				require.Equal(t, color.RGBA{}, m.RGBAAt(x, y), "%d, %d", x, y)
			}
		}
	}
	require.Equal(t, red, m.RGBAAt(60, 140))
}

// Two outlines that run opposite ways leave a hole.
func TestFillLeavesHoles(t *testing.T) {
	m := blank()
	On(m).Fill(red, Rect{10, 10, 110, 110}.Outline(), Rect{40, 40, 60, 60}.Outline().Reversed())
	require.InDelta(t, 100*100-20*20, inked(m), 0.5)
	require.Equal(t, color.RGBA{}, m.RGBAAt(50, 50))
}

// Nothing that a path may hold makes a drawing fail or go on without end, and it inks what it should: lines 5
// wide with their keylines, which go on 1 past the ends. The areas are by hand.
func TestOddPaths(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for _, c := range []struct {
		name                  string
		path                  Path
		solid, dashed, filled float64 // inked, in square pixels
	}{
		{"empty", nil, 0, 0, 0},
		{"a point", Path{{5, 5}}, 0, 0, 0},
		{"a point twice", Path{{5, 5}, {5, 5}}, 0, 0, 0},
		{"no number", Path{{5, 5}, {nan, 9}, {30, 30}}, 0, 0, 0},
		{"infinite", Path{{5, 5}, {inf, 9}, {30, 30}}, 0, 0, 0},
		// Closed, it has no ends. The dashes back lie in the gaps of those there, whose keylines they touch.
		{"there and back", Path{{15, 20.5}, {64, 20.5}, {15, 20.5}}, 5 * 49, 5 * (49 + 2), 0},
		{"many points in one place", Path{{5, 5}, {5.1, 5}, {5, 5.1}, {5.1, 5.1}, {5, 5}}, 0, 0, 0.01},
		{"far off", Path{{1e8, 1e8}, {1e8 + 10, 1e8}}, 0, 0, 0},
		// Dashes of 3 and gaps of 4 leave gaps of 2 between keylines.
		{"all across, from far off", Path{{-1e4, 50}, {1e4, 50}}, 5 * 300, 5 * 300 * 5. / 7, 0},
		{"on all sides, far off", Rect{-1e8, -1e8, 1e8, 1e8}.Outline(), 0, 0, 300 * 300},
	} {
		t.Run(c.name, func(t *testing.T) {
			line := Line{Colour: red, WidthPx: 3, Keyline: green, KeylinePx: 1}
			m := blank()
			On(m).Draw(Stroke{c.path, line})
			require.InDelta(t, c.solid, inked(m), 0.01*c.solid)
			if c.path.Length() < 1e6 || math.IsInf(c.path.Length(), 0) { // dashes without number are not asked for
				line.DashPx = []float64{3, 4}
				m = blank()
				On(m).Draw(Stroke{c.path, line})
				require.InDelta(t, c.dashed, inked(m), 0.01*c.dashed)
			}
			m = blank()
			On(m).Fill(red, c.path)
			require.InDelta(t, c.filled, inked(m), 0.01)
		})
	}
}

// Corners are mitred up to a turn of 120 degrees and blunt beyond. By hand, with h half of the width: the
// strips of two pieces share a kite of h² tan(turn/2) on the inner side. A mitre adds as much outside, and
// its tip is h / cos(turn/2) from the corner; a blunt corner adds a triangle of h²/2 sin(turn).
func TestCornersAreMitredOrBlunt(t *testing.T) {
	const h, leg = 10, 100
	for _, c := range []struct {
		turnDeg float64
		mitred  bool
	}{{30, true}, {90, true}, {115, true}, {125, false}, {150, false}, {160, false}} {
		turn := c.turnDeg * math.Pi / 180
		sin, cos := math.Sincos(turn / 2)
		corner := Point{150, 100} // the tip of a roof
		path := Path{{150 - leg*cos, 100 + leg*sin}, corner, {150 + leg*cos, 100 + leg*sin}}
		m := blank()
		On(m).Draw(Stroke{path, Line{Colour: red, WidthPx: 2 * h}})
		want, top := 2.*h*2*leg, 100-h/cos
		if !c.mitred {
			want += h * h * (math.Sin(turn)/2 - math.Tan(turn/2))
			top = 100 - h*cos
		}
		require.InDelta(t, want, inked(m), 5, "turned by %g degrees", c.turnDeg)
		first := 0
		for m.RGBAAt(150, first).A < 128 && first < 200 {
			first++
		}
		require.InDelta(t, top, first, 1.5, "the corner's top, turned by %g degrees", c.turnDeg)
	}
}
