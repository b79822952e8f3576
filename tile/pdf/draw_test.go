package pdf

import (
	"image"
	"image/color"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/pdf/pdftest"
)

// Inks that tell apart what was drawn.
var (
	redInk, blueInk    = Shade{255, 0, 0}, Shade{0, 0, 255}
	redDot, blueDot    = color.RGBA{255, 0, 0, 255}, color.RGBA{0, 0, 255, 255}
	blackDot, whiteDot = color.RGBA{0, 0, 0, 255}, color.RGBA{255, 255, 255, 255}
)

// drawn draws on a page of 100 x 100 mm, and returns it as PDFium draws it, a tenth of a millimetre to the pixel.
func drawn(t *testing.T, draw func(*Document)) *image.RGBA {
	d := New("drawn")
	d.AddPage(100, 100)
	draw(d)
	return pdftest.Open(t, streamed(t, d, none)).Render(1, tenPerMM)
}

// requireDots looks at places of a rendered page, in page mm.
func requireDots(t *testing.T, page *image.RGBA, dots map[layout.Point]color.RGBA) {
	t.Helper()
	for at, want := range dots {
		requireNear(t, want, page.RGBAAt(int(10*at.XMM), int(10*at.YMM)), 2, "at %v", at)
	}
}

// darkInRow counts the pixels of a row of a rendered page that are darker than half of white.
func darkInRow(page *image.RGBA, rowMM float64) (px int) {
	for x := range page.Rect.Dx() {
		if page.RGBAAt(x, int(10*rowMM)).G < 128 {
			px++
		}
	}
	return px
}

// Each pen draws all the lines before the next does, so that no keyline cuts a line that it crosses.
func TestLinesLieOnAllKeylines(t *testing.T) {
	page := drawn(t, func(d *Document) {
		d.Fill(rect(0, 0, 100, 100), redInk)
		d.Lines([]Line{{layout.Point{XMM: 10, YMM: 50}, layout.Point{XMM: 90, YMM: 50}},
			{layout.Point{XMM: 50, YMM: 10}, layout.Point{XMM: 50, YMM: 90}}},
			Pen{Shade: Grey(255), WidthMM: 6}, Pen{Shade: Grey(0), WidthMM: 2})
	})
	requireDots(t, page, map[layout.Point]color.RGBA{
		{XMM: 50, YMM: 50}: blackDot, {XMM: 47.5, YMM: 50}: blackDot, {XMM: 50, YMM: 52.5}: blackDot,
		{XMM: 47.5, YMM: 47.5}: whiteDot, {XMM: 20, YMM: 52.5}: whiteDot, {XMM: 20, YMM: 54}: redDot,
		{XMM: 9, YMM: 50}: redDot, {XMM: 91, YMM: 50}: redDot, // the ends are cut off square
	})
}

// A dashed line is followed by a whole one, within a turn and after it, and on the next page.
func TestDashesEnd(t *testing.T) {
	whole := Pen{WidthMM: 1}
	dashes := Pen{WidthMM: 1, DashMM: []float64{3, 2}}
	d := New("dashes")
	d.AddPage(100, 100)
	d.Turned(50, 50, func() {
		d.Line(40, 10, 40, 90, dashes) // turned, it runs across at y = 60
	})
	d.Line(10, 20, 90, 20, whole)
	d.Line(10, 30, 90, 30, dashes)
	d.Turned(50, 50, func() { d.Line(10, 10, 10, 90, whole) }) // across at y = 90
	d.Line(10, 40, 90, 40, dashes)
	d.AddPage(100, 100)
	d.Line(10, 20, 90, 20, whole)
	d.Turned(50, 50, func() { d.Line(40, 10, 40, 90, dashes) })
	d.Line(10, 30, 90, 30, dashes)
	doc := pdftest.Open(t, streamed(t, d, none))
	first, second := doc.Render(1, tenPerMM), doc.Render(2, tenPerMM)
	const long, inDashes = 800, 480 // pixels: 16 dashes of 3 mm
	for _, c := range []struct {
		name string
		page *image.RGBA
		atMM float64
		want int
	}{
		{"dashed in a turn", first, 60, inDashes}, {"whole after it", first, 20, long}, {"dashed", first, 30, inDashes},
		{"whole in a turn", first, 90, long}, {"dashed after it", first, 40, inDashes}, {"the next page", second, 20, long},
		{"dashed after dashes in a turn", second, 30, inDashes},
	} {
		require.InDelta(t, c.want, darkInRow(c.page, c.atMM), 2, c.name)
	}
}

// What was filled within a clip does not colour the words after it, nor do words take the fill's colour.
func TestWordsKeepTheirShadeAfterAClip(t *testing.T) {
	page := drawn(t, func(d *Document) {
		d.Fill(rect(0, 0, 100, 10), redInk)
		d.Clipped(rect(0, 20, 50, 10), func() { d.Fill(rect(0, 20, 100, 10), blueInk) })
		d.Put(Sans(200).In(blueInk).Bold(), 10, 95, "I")
	})
	requireDots(t, page, map[layout.Point]color.RGBA{
		{XMM: 5, YMM: 5}: redDot, {XMM: 45, YMM: 25}: blueDot, {XMM: 55, YMM: 25}: whiteDot,
		{XMM: 10 + Sans(200).Bold().Width("I")/2, YMM: 70}: blueDot,
	})
}

func TestFrames(t *testing.T) {
	square := func(d *Document) { d.Fill(rect(10, 20, 10, 5), redInk) }
	for _, c := range []struct {
		name string
		draw func(*Document)
		dots map[layout.Point]color.RGBA
	}{
		{"as it is", square, map[layout.Point]color.RGBA{
			{XMM: 10.5, YMM: 20.5}: redDot, {XMM: 19.5, YMM: 24.5}: redDot, {XMM: 9, YMM: 22}: whiteDot,
			{XMM: 15, YMM: 26}: whiteDot}},
		// Counted from (10, 20), the square stays where it is and grows to 20 x 15 mm.
		{"scaled", func(d *Document) { d.Scale(2, 3, layout.Point{XMM: 10, YMM: 20}); square(d) },
			map[layout.Point]color.RGBA{{XMM: 10.5, YMM: 20.5}: redDot, {XMM: 29.5, YMM: 34.5}: redDot,
				{XMM: 30.5, YMM: 30}: whiteDot, {XMM: 20, YMM: 35.5}: whiteDot, {XMM: 9.5, YMM: 25}: whiteDot}},
		{"scaled anew", func(d *Document) {
			d.Scale(2, 3, layout.Point{XMM: 10, YMM: 20})
			d.Scale(1, 2, layout.Point{XMM: 10, YMM: 20})
			square(d)
		}, map[layout.Point]color.RGBA{{XMM: 19.5, YMM: 29.5}: redDot, {XMM: 20.5, YMM: 22}: whiteDot,
			{XMM: 15, YMM: 30.5}: whiteDot}},
		// (8, 18) falls on the corner (50, 50): the square begins 2 mm, which is 6, right of it and below.
		{"inset", func(d *Document) {
			d.Inset(rect(50, 50, 30, 12), 3, layout.Point{XMM: 8, YMM: 18}, func() { square(d) })
			d.Fill(rect(0, 0, 5, 5), blueInk)
		}, map[layout.Point]color.RGBA{{XMM: 56.5, YMM: 56.5}: redDot, {XMM: 79.5, YMM: 61.5}: redDot,
			{XMM: 55.5, YMM: 58}: whiteDot, {XMM: 60, YMM: 62.5}: whiteDot, {XMM: 80.5, YMM: 60}: whiteDot,
			{XMM: 2, YMM: 2}: blueDot}},
		// Turned to the left about (50, 50), right becomes up: (10, 20) comes to (20, 90), (20, 25) to (25, 80).
		{"turned", func(d *Document) { d.Turned(50, 50, func() { square(d) }) }, map[layout.Point]color.RGBA{
			{XMM: 20.5, YMM: 89.5}: redDot, {XMM: 24.5, YMM: 80.5}: redDot, {XMM: 15, YMM: 22}: whiteDot,
			{XMM: 25.5, YMM: 85}: whiteDot}},
	} {
		t.Run(c.name, func(t *testing.T) { requireDots(t, drawn(t, c.draw), c.dots) })
	}
}

// A scale ends with its page.
func TestScaleEndsWithItsPage(t *testing.T) {
	d := New("scaled")
	for page := range 3 {
		d.AddPage(100, 100)
		if page == 1 {
			d.Scale(3, 3, layout.Point{})
		}
		d.Fill(rect(10, 10, 10, 10), redInk)
	}
	doc := pdftest.Open(t, streamed(t, d, none))
	for page, want := range []color.RGBA{redDot, whiteDot, redDot} {
		requireDots(t, doc.Render(page+1, tenPerMM), map[layout.Point]color.RGBA{{XMM: 15, YMM: 15}: want})
	}
	d = New("none")
	d.Scale(2, 2, layout.Point{})
	require.ErrorContains(t, d.Err(), "a scale can't be set before the first page")
}

func TestShapes(t *testing.T) {
	page := drawn(t, func(d *Document) {
		triangle := func(x float64) []layout.Point {
			return []layout.Point{{XMM: x, YMM: 10}, {XMM: x + 10, YMM: 10}, {XMM: x, YMM: 20}}
		}
		d.Polygons(redInk, Pen{}, triangle(10), triangle(30))
		d.Polygon(redInk, Pen{Shade: blueInk, WidthMM: 2}, triangle(50)...)
		d.Outline([]layout.Point{{XMM: 10, YMM: 40}, {XMM: 30, YMM: 40}, {XMM: 30, YMM: 60}, {XMM: 10, YMM: 60}},
			Pen{Shade: blueInk, WidthMM: 2})
		d.Frame(rect(40, 40, 20, 20), Pen{Shade: redInk, WidthMM: 2})
		d.Oval(80, 50, 10, 5, redInk, Pen{Shade: blueInk, WidthMM: 1})
	})
	requireDots(t, page, map[layout.Point]color.RGBA{
		{XMM: 12, YMM: 12}: redDot, {XMM: 32, YMM: 12}: redDot, {XMM: 28, YMM: 18}: whiteDot, {XMM: 29.5, YMM: 12}: whiteDot,
		{XMM: 53, YMM: 13}: redDot, {XMM: 50, YMM: 15}: blueDot,
		{XMM: 10, YMM: 50}: blueDot, {XMM: 20, YMM: 60}: blueDot, {XMM: 20, YMM: 50}: whiteDot,
		{XMM: 40, YMM: 50}: redDot, {XMM: 50, YMM: 50}: whiteDot, {XMM: 60, YMM: 50}: redDot,
		{XMM: 80, YMM: 50}: redDot, {XMM: 90, YMM: 50}: blueDot, {XMM: 80, YMM: 45}: blueDot, {XMM: 88, YMM: 54}: whiteDot,
	})
}

// Words lie where they are put: on their baseline, from, to or about a place, or upwards.
func TestPut(t *testing.T) {
	const widest = 25.4 * 20 / 72 // of a letter of 20 points: under its size
	s := Sans(20)
	for _, c := range []struct {
		name     string
		put      func(*Document)
		from, to layout.Point // corners of the box of ink
	}{
		{"from", func(d *Document) { d.Put(s, 20, 50, "HHH") }, layout.Point{XMM: 20, YMM: 50 - s.CapMM()},
			layout.Point{XMM: 20 + s.Width("HHH"), YMM: 50}},
		{"to", func(d *Document) { d.PutRight(s, 80, 50, "HHH") }, layout.Point{XMM: 80 - s.Width("HHH"),
			YMM: 50 - s.CapMM()}, layout.Point{XMM: 80, YMM: 50}},
		{"about", func(d *Document) { d.PutMiddle(s, 50, 50, "HHH") }, layout.Point{XMM: 50 - s.Width("HHH")/2,
			YMM: 50 - s.CapMM()}, layout.Point{XMM: 50 + s.Width("HHH")/2, YMM: 50}},
		{"upwards", func(d *Document) { d.PutUpward(s, 50, 80, "HHH") }, layout.Point{XMM: 50 - s.CapMM(),
			YMM: 80 - s.Width("HHH")}, layout.Point{XMM: 50, YMM: 80}},
		{"in a line's box", func(d *Document) { d.Put(s, 20, s.Lead(30).Base(40), "HHH") }, layout.Point{XMM: 20,
			YMM: 55 - s.CapMM()/2}, layout.Point{XMM: 20 + s.Width("HHH"), YMM: 55 + s.CapMM()/2}},
	} {
		t.Run(c.name, func(t *testing.T) {
			from, to := inkBox(drawn(t, c.put))
			// Letters keep some white on their sides, and none above and below: H is as high as a capital.
			for _, d := range [][2]float64{{c.from.XMM, from.XMM}, {c.to.XMM, to.XMM}, {c.from.YMM, from.YMM},
				{c.to.YMM, to.YMM}} {
				require.InDelta(t, d[0], d[1], 0.12*widest)
			}
			high := to.YMM - from.YMM
			if c.name == "upwards" {
				high = to.XMM - from.XMM
			}
			require.InDelta(t, s.CapMM(), high, 0.2, "within two pixels")
		})
	}
}

// inkBox is the box of what is dark on a rendered page, in mm.
func inkBox(page *image.RGBA) (from, to layout.Point) {
	from = layout.Point{XMM: math.Inf(1), YMM: math.Inf(1)}
	for y := range page.Rect.Dy() {
		for x := range page.Rect.Dx() {
			if page.RGBAAt(x, y).G < 128 {
				from.XMM, from.YMM = min(from.XMM, float64(x)/10), min(from.YMM, float64(y)/10)
				to.XMM, to.YMM = max(to.XMM, float64(x+1)/10), max(to.YMM, float64(y+1)/10)
			}
		}
	}
	return from, to
}

func TestStyles(t *testing.T) {
	s := Sans(10).Lead(5).In(redInk)
	require.Equal(t, 5.0, s.LeadMM)
	require.Equal(t, 10.0, s.At(20).LeadMM, "the lead goes with the size")
	require.Equal(t, 2*s.Width("mm"), s.At(20).Width("mm"))
	require.Equal(t, redInk, s.At(20).Bold().Shade)
	require.Greater(t, s.Bold().Width("mill"), s.Width("mill"))
	require.Equal(t, Mono(10).Width("ii"), Mono(10).Width("MM"))
	require.InDelta(t, units.PointsToMM(10), s.SizeMM(), 1e-12)
	// 1000ths of the size (Adobe Font Metrics, Core 14, Helvetica; recalled from memory): m 833, space 278.
	require.InDelta(t, units.PointsToMM(10*(2*0.833+0.278)), s.Width("m m"), 1e-9)
}
