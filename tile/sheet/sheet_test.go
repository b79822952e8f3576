package sheet

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/raster"

	"github.com/stretchr/testify/require"
)

// flat is the only colour of the test's artwork: neither black nor white, so that every mark and all bare paper shows.
var flat = color.RGBA{200, 90, 60, 255}

func flatJob(t testing.TB, change func(*layout.Setup)) Job {
	t.Helper()
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	s := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 480, HeightPx: 320, LensMM: 100,
			FNumber: 16, Focus: layout.FocusBest},
	}
	if change != nil {
		change(&s)
	}
	p, err := s.Plan()
	require.NoError(t, err)
	m := image.NewRGBA(image.Rect(0, 0, 900, 600))
	for i := 0; i < len(m.Pix); i += 4 {
		m.Pix[i], m.Pix[i+1], m.Pix[i+2], m.Pix[i+3] = flat.R, flat.G, flat.B, flat.A
	}
	grid := raster.NewGrid(p.Backdrop.Board(), 900, 600, units.PerInch(300))
	return Job{
		Label: Label{Job: "härbour (at) dusk \\ 7", Code: "4F2A91", Of: len(p.Sheets)}, Plan: p, Grid: grid,
		Source:   raster.NewSource(&artwork.Picture{Image: m}, p.Drop.Reverses.Turn(), grid, image.YCbCrSubsampleRatio420),
		Lossless: true,
	}
}

func write(t *testing.T, j Job, sheets []layout.Sheet) *pdftest.Doc {
	t.Helper()
	var file bytes.Buffer
	require.NoError(t, j.Write(context.Background(), &file, sheets, nil))
	return pdftest.Open(t, file.Bytes())
}

const dpi = 300

func pxPerMM() float64 { return units.PerInch(dpi).PixelsPerMM() }

// pagePx is the pixel of a rendered page at a place in mm.
func pagePx(page *image.RGBA, xMM, yMM float64) color.RGBA {
	return page.RGBAAt(int(xMM*pxPerMM()), int(yMM*pxPerMM()))
}

func dark(c color.RGBA) bool  { return c.R < 110 && c.G < 60 }
func white(c color.RGBA) bool { return c.R > 225 && c.G > 170 && c.B > 160 }

// No ink of a mark inside a cell or within 1.5 mm of it, and all of that covered with picture: for light from each
// corner, on papers from the smallest to large ones, with the narrowest lap and wide ones, round every corner.
func TestNoMarkNearACell(t *testing.T) {
	const farMM, dpi = 1.5, 150 // whose pixels are smaller than what lies between 1.5 mm and the first ink
	perMM := units.PerInch(dpi).PixelsPerMM()
	for i, light := range []layout.Corner{layout.TopLeft, layout.TopRight, layout.BottomLeft, layout.BottomRight} {
		for k, paper := range []string{"A8", "4x6in", "A5", "letter", "A3"} {
			t.Run(string(light)+" on "+paper, func(t *testing.T) {
				j := flatJob(t, func(s *layout.Setup) {
					s.LightFrom, s.MaxSheets, s.DistanceMM, s.Proportions, s.Orientation = light, 9, 0, 0.68, layout.Portrait
					s.LapMM = []float64{3, 4, 6, 10, 15}[(i+k)%5]
					s.Paper, _ = layout.ParsePaper(paper)
				})
				require.Len(t, j.Plan.Sheets, 9)
				doc := write(t, j, j.Plan.Sheets)
				for _, s := range j.Plan.Sheets {
					page := doc.Render(s.Page, dpi)
					c := j.Plan.Backdrop.OnPage(s).Cell
					for y := int(math.Ceil((c.YMM - farMM) * perMM)); y < int((c.BottomMM()+farMM)*perMM); y++ {
						for x := int(math.Ceil((c.XMM - farMM) * perMM)); x < int((c.RightMM()+farMM)*perMM); x++ {
							if got := page.RGBAAt(x, y); far(got, flat) {
								t.Fatalf("%s has %v at (%.2f, %.2f) mm of its page, where its cell is %v", s.Name, got,
									float64(x)/perMM, float64(y)/perMM, c)
							}
						}
					}
				}
			})
		}
	}
}

// far tells whether a pixel is not of a colour, but for the rounding of a renderer.
func far(got, want color.RGBA) bool {
	off := func(a, b uint8) bool { return max(a, b)-min(a, b) > 2 }
	return off(got.R, want.R) || off(got.G, want.G) || off(got.B, want.B)
}

// The marks of an inner sheet, each where its place comes to by hand.
func TestMarksOfAnInnerSheet(t *testing.T) {
	j := flatJob(t, nil)
	s := j.Plan.Sheets[0]
	require.Equal(t, "R1C1", s.Name)
	page := write(t, j, j.Plan.Sheets).Render(1, dpi)
	c, lap := j.Plan.Backdrop.OnPage(s).Cell, j.Plan.Backdrop.LapMM
	midX, midY := c.XMM+c.WidthMM/2, c.YMM+c.HeightMM/2

	for _, m := range []struct {
		name   string
		xMM    float64
		yMM    float64
		is     func(color.RGBA) bool
		expect bool
	}{
		{"landing tick 2 mm past the right seam, near its upper end", c.RightMM() + 2, c.YMM + 4, dark, true},
		{"landing tick near its lower end", c.RightMM() + 2, c.BottomMM() - 4, dark, true},
		{"its keyline", c.RightMM() + 2.22, c.BottomMM() - 4, white, true},
		{"no tick at the end itself", c.RightMM() + 2, c.YMM + 1, dark, false},
		{"none between two ticks", c.RightMM() + 2, c.YMM + 12, dark, false},
		{"landing tick 2 mm past the bottom seam", c.XMM + 4, c.BottomMM() + 2, dark, true},
		{"picture on the lap", c.RightMM() + lap - 2, midY, func(c color.RGBA) bool { return !dark(c) && !white(c) }, true},
		{"seam tick on the lap, in line with the right seam", c.RightMM(), c.BottomMM() + 6, dark, true},
		{"seam tick on the lap, in line with the bottom seam", c.RightMM() + 6, c.BottomMM(), dark, true},
		{"seam tick in the strip, in line with the right seam", c.RightMM(), c.YMM - 4, dark, true},
		{"seam tick in the strip, in line with the bottom seam", c.XMM - 5.5, c.BottomMM(), dark, true},
		{"cut mark in the strip, in line with the left cut", c.XMM, c.YMM - 4, dark, true},
		{"cut mark in the strip, in line with the top cut", c.XMM - 4, c.YMM, dark, true},
		{"cut mark at the lap's end, in line with the left cut", c.XMM, c.BottomMM() + lap - 2, dark, true},
		{"picture in the bleed", midX, c.YMM - 1, func(c color.RGBA) bool { return !dark(c) && !white(c) }, true},
		{"bare paper past the bleed", midX, c.YMM - 2.5, white, true},
		{"bare paper past the lap", midX, c.BottomMM() + lap + 1, white, true},
	} {
		t.Run(m.name, func(t *testing.T) {
			require.Equal(t, m.expect, m.is(pagePx(page, m.xMM, m.yMM)), "%v", pagePx(page, m.xMM, m.yMM))
		})
	}

	// The check rule: from its first tick to its last is 100 mm, and a tick stands every 10.
	x := c.XMM - layout.BleedMM - checkLineInMM - 0.9
	var ticks []float64
	was := false
	for y := c.YMM + 1; y < c.YMM+checkInsetMM+101; y += 0.02 { // past the cut mark, short of the words
		is := dark(pagePx(page, x, y))
		if is && !was {
			ticks = append(ticks, y)
		}
		was = is
	}
	require.Len(t, ticks, 11)
	for i, y := range ticks {
		require.InDelta(t, ticks[0]+10*float64(i), y, 1.2/pxPerMM()) // rendered to a pixel
	}
}

// Labels say which sheet, its place, which way is up, and whose job it is.
func TestLabels(t *testing.T) {
	j := flatJob(t, nil)
	doc := write(t, j, j.Plan.Sheets)
	for _, s := range j.Plan.Sheets {
		text := doc.Text(s.Page)
		for _, want := range []string{s.Name, fmt.Sprintf("%d of %d", s.Page, len(j.Plan.Sheets)), "board up",
			"check 4F2A91", "härbour (at) dusk \\ 7", "100 mm"} {
			require.Contains(t, text, want, s.Name)
		}
	}
}

// Page size, trim and bleed in points (ISO 32000-1, 14.11.2), measured from the bottom left.
func TestPageBoxes(t *testing.T) {
	j := flatJob(t, nil)
	doc := write(t, j, j.Plan.Sheets)
	s := j.Plan.Sheets[1]
	boxes := doc.PageBoxes(s.Page)
	page := j.Plan.Backdrop.Page()
	on := j.Plan.Backdrop.OnPage(s)
	kept, printed := on.Kept, on.Printed
	for _, c := range []struct {
		name string
		got  pdftest.Box
		want layout.Rect
	}{
		{"media", boxes.Media, layout.Rect{WidthMM: page.WidthMM, HeightMM: page.HeightMM}},
		{"trim", boxes.Trim, kept},
		{"bleed", boxes.Bleed, printed},
	} {
		require.InDelta(t, units.MMToPoints(c.want.XMM), c.got.LeftPt, 0.01, c.name)
		require.InDelta(t, units.MMToPoints(page.HeightMM-c.want.BottomMM()), c.got.BottomPt, 0.01, c.name)
		require.InDelta(t, units.MMToPoints(c.want.RightMM()), c.got.RightPt, 0.01, c.name)
		require.InDelta(t, units.MMToPoints(page.HeightMM-c.want.YMM), c.got.TopPt, 0.01, c.name)
	}
}

// A sheet smaller than the check rule has a shorter one, and says how long it is.
func TestSmallPaper(t *testing.T) {
	j := flatJob(t, func(s *layout.Setup) {
		s.Paper, _ = layout.ParsePaper("A6")
		s.Orientation = layout.Landscape
		s.DistanceMM = 150
	})
	doc := write(t, j, j.Plan.Sheets)
	require.Contains(t, doc.Text(1), "70 mm")
	require.Equal(t, 70.0, CheckRuleMM(j.Plan, j.Plan.Sheets[0]))
	require.InDelta(t, 73.0, j.Plan.Sheets[0].Cell.HeightMM, 0.1, "and 10 mm of lap go on below")
	c := j.Plan.Backdrop.OnPage(j.Plan.Sheets[0]).Cell
	require.False(t, dark(pagePx(doc.Render(1, dpi), c.XMM-5.5, c.BottomMM())), "no seam tick where the rule ends")
}

// A rule stands beside cell and lap, 3 mm from a cut and half a millimetre from a lap's end.
func TestCheckRuleLength(t *testing.T) {
	j := flatJob(t, nil)
	for _, c := range []struct {
		name           string
		row            int // of three: the last is cut above and below
		highMM, ruleMM float64
	}{
		{"ample", 1, 200, 100}, {"just enough, lap included", 1, 93.5, 100}, {"just too little", 1, 93.4, 90},
		{"two cuts", 3, 106, 100}, {"two cuts, just too little", 3, 105.9, 90},
		{"five centimetres", 3, 56, 50}, {"too small", 3, 55.9, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := layout.Sheet{Row: c.row, Column: 1, Cell: layout.Rect{WidthMM: 100, HeightMM: c.highMM}}
			require.Equal(t, c.ruleMM, CheckRuleMM(j.Plan, s))
		})
	}
}

func TestWriteStops(t *testing.T) {
	j := flatJob(t, nil)
	ctx, stop := context.WithCancel(context.Background())
	err := j.Write(ctx, &bytes.Buffer{}, j.Plan.Sheets, func(n int) {
		if n == 2 {
			stop()
		}
	})
	require.ErrorIs(t, err, context.Canceled)
}

// A writer that fails, such as a full disk, is told by its own error.
func TestWriteTellsOfAFullDisk(t *testing.T) {
	full := errors.New("no space left on device")
	err := flatJob(t, nil).Write(context.Background(), failingWriter{full}, flatJob(t, nil).Plan.Sheets, nil)
	require.ErrorIs(t, err, full)
}

type failingWriter struct{ err error }

func (w failingWriter) Write([]byte) (int, error) { return 0, w.err }
