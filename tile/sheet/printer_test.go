package sheet

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/raster"

	"github.com/stretchr/testify/require"
)

// fineDPI is how finely these pages are rendered: PDFium puts a picture's edges on whole pixels, and at 300
// to the inch one is nearly a tenth of a mm.
const fineDPI = 600

func finePxPerMM() float64 { return units.PerInch(fineDPI).PixelsPerMM() }

// checkPx is the side of a check of the test's artwork. An even number of them fills it both ways, so that
// turning it puts edges onto edges.
const checkPx = 30

// chequeredJob is flatJob with a picture whose edges lie at places of the board that are known.
func chequeredJob(t *testing.T, change func(*layout.Setup)) Job {
	t.Helper()
	j := flatJob(t, change)
	m := image.NewGray(image.Rect(0, 0, 900, 600))
	for y := range 600 {
		for x := range 900 {
			m.SetGray(x, y, color.Gray{[]uint8{60, 200}[(x/checkPx+y/checkPx)%2]})
		}
	}
	j.Source = raster.NewSource(&artwork.Picture{Image: m}, j.Plan.Drop.Reverses.Turn(), j.Grid,
		image.YCbCrSubsampleRatio420)
	return j
}

// printout is a page as a printer brings it out: stretched along each side of the page, about a point of its own.
type printout struct {
	page   *image.RGBA
	sx, sy float64
	about  layout.Point
}

// x and y are where what was drawn at a place of the page comes out.
func (p printout) x(mm float64) float64 { return p.about.XMM + (mm-p.about.XMM)*p.sx }
func (p printout) y(mm float64) float64 { return p.about.YMM + (mm-p.about.YMM)*p.sy }

// at is the grey of a place on the paper, 0 to 255.
func (p printout) at(xMM, yMM float64) float64 {
	x := (p.about.XMM+(xMM-p.about.XMM)/p.sx)*finePxPerMM() - 0.5
	y := (p.about.YMM+(yMM-p.about.YMM)/p.sy)*finePxPerMM() - 0.5
	x0, y0 := math.Floor(x), math.Floor(y)
	fx, fy := x-x0, y-y0
	grey := func(x, y float64) float64 {
		c := p.page.RGBAAt(int(x), int(y))
		return (float64(c.R) + float64(c.G) + float64(c.B)) / 3
	}
	return (1-fy)*((1-fx)*grey(x0, y0)+fx*grey(x0+1, y0)) + fy*((1-fx)*grey(x0, y0+1)+fx*grey(x0+1, y0+1))
}

// hairlineNear is the middle of the ink within a millimetre of a place along a line over the paper.
func hairlineNear(t *testing.T, grey func(mm float64) float64, nearMM float64) float64 {
	t.Helper()
	ink, moment := 0.0, 0.0
	for off := -1.0; off <= 1; off += 0.01 {
		dark := 255 - grey(nearMM+off)
		ink, moment = ink+dark, moment+dark*off
	}
	require.Greater(t, ink*0.01, 0.5*hairlineMM*255, "no hairline near %.2f mm", nearMM)
	return nearMM + moment/ink
}

// requireChecks looks for the edges of the checks along a line through the cell: each at its board place,
// counted from the cell's edge.
func requireChecks(t *testing.T, grey func(fromCellMM float64) float64, cellFromMM, cellMM, checkMM float64) {
	t.Helper()
	const stepMM, insideMM = 0.01, 0.5
	var found []float64
	for mm := insideMM; mm < cellMM-insideMM; mm += stepMM {
		if a, b := grey(mm)-130, grey(mm+stepMM)-130; (a < 0) != (b < 0) {
			found = append(found, mm+stepMM*a/(a-b))
		}
	}
	var want []float64
	for k := math.Ceil((cellFromMM + insideMM) / checkMM); k*checkMM < cellFromMM+cellMM-insideMM; k++ {
		want = append(want, k*checkMM-cellFromMM)
	}
	require.Greater(t, len(want), 3)
	require.Len(t, found, len(want))
	for i := range want {
		require.InDelta(t, want[i], found[i], trueWithinMM, "edge %d of %d", i+1, len(want))
	}
}

// trueWithinMM is how true a cell must come out over a sheet: a third of what a cut by hand is off by, whose sd is
// 0.3 mm (common practice, no source).
const trueWithinMM = 0.1

// Sheets for a printer that errs, differently across and along its feed, come out true: cut mark to cut mark,
// every edge of the picture, the check rule. Nothing is drawn where the printer does not reach, whichever way
// it turns a landscape page.
func TestPrinterIsMadeUpFor(t *testing.T) {
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	for _, c := range []struct {
		name         string
		across, feed float64
		orientation  layout.Orientation
		light        layout.Corner
		about        layout.Point
	}{
		{"an inkjet a few parts in a thousand off", 0.996, 0.994, layout.Portrait, layout.TopLeft, layout.Point{}},
		{"long across, short along the feed", 1.03, 0.96, layout.Portrait, layout.BottomRight,
			layout.Point{XMM: 105, YMM: 148}},
		{"landscape", 1.03, 0.96, layout.Landscape, layout.TopLeft, layout.Point{XMM: 297, YMM: 11}},
		{"landscape, short across, long along the feed", 0.97, 1.04, layout.Landscape, layout.BottomRight,
			layout.Point{XMM: 20, YMM: 210}},
	} {
		t.Run(c.name, func(t *testing.T) {
			printer := layout.Printer{
				Name: "study inkjet", Paper: a4, AcrossScale: c.across, FeedScale: c.feed,
				Margins: layout.Margins{LeftMM: 3, TopMM: 4, RightMM: 6, BottomMM: 14},
			}
			j := chequeredJob(t, func(s *layout.Setup) {
				s.Orientation, s.LightFrom, s.Printer, s.DistanceMM = c.orientation, c.light, &printer, 0
				s.MaxSheets = 6 // the largest print that six hold: they are full
			})
			b := j.Plan.Backdrop
			require.NoError(t, j.Plan.Check())
			s := j.Plan.Sheets[len(j.Plan.Sheets)-1] // the far corner from the lamp: cut on all sides
			used, live := b.Correction().Drawn(b.OnPage(s).Used), printer.Live(a4, c.orientation)
			require.InDelta(t, 0, min(live.WidthMM-used.WidthMM, live.HeightMM-used.HeightMM), 1e-6,
				"the sheet takes up all that the printer reaches, one way")
			page := write(t, j, []layout.Sheet{s}).Render(1, fineDPI)
			requireReached(t, page, printer, c.orientation)

			out := printout{page, c.across, c.feed, c.about}
			if c.orientation == layout.Landscape {
				out.sx, out.sy = c.feed, c.across
			}
			// Where on the paper the cell comes out is the printer's affair: its cut marks tell.
			drawn, strip := b.Correction().Drawn(b.OnPage(s).Cell), layout.StripMM-0.6
			overCell := func(mm float64) float64 { return out.at(mm, out.y(drawn.YMM)-strip) }
			besideCell := func(mm float64) float64 { return out.at(out.x(drawn.XMM)-strip, mm) }
			left, right := hairlineNear(t, overCell, out.x(drawn.XMM)), hairlineNear(t, overCell, out.x(drawn.RightMM()))
			top, bottom := hairlineNear(t, besideCell, out.y(drawn.YMM)), hairlineNear(t, besideCell, out.y(drawn.BottomMM()))
			require.InDelta(t, s.Cell.WidthMM, right-left, trueWithinMM, "cut mark to cut mark, across")
			require.InDelta(t, s.Cell.HeightMM, bottom-top, trueWithinMM, "cut mark to cut mark, down")

			checkX, checkY := b.WidthMM*checkPx/900, b.HeightMM*checkPx/600
			midCheck := func(fromMM, checkMM float64) float64 { return (math.Ceil(fromMM/checkMM)+0.5)*checkMM - fromMM }
			y, x := top+midCheck(s.Cell.YMM, checkY), left+midCheck(s.Cell.XMM, checkX)
			requireChecks(t, func(mm float64) float64 { return out.at(left+mm, y) }, s.Cell.XMM, s.Cell.WidthMM, checkX)
			requireChecks(t, func(mm float64) float64 { return out.at(x, top+mm) }, s.Cell.YMM, s.Cell.HeightMM, checkY)

			require.Equal(t, longestMM, CheckRuleMM(j.Plan, s))
			ruler := func(mm float64) float64 {
				return out.at(left-layout.BleedMM-checkLineInMM-(checkTickMM+checkEndMM)/2, mm)
			}
			first, last := hairlineNear(t, ruler, top+checkInsetMM), hairlineNear(t, ruler, top+checkInsetMM+longestMM)
			require.InDelta(t, longestMM, last-first, 0.05)
		})
	}
}

// requireReached holds a page against the margins of the upright sheet that it is printed on, with a
// landscape page turned both ways.
func requireReached(t *testing.T, page *image.RGBA, p layout.Printer, o layout.Orientation) {
	t.Helper()
	m, pixel := p.Margins, 1/finePxPerMM() // a mark ends where the margin begins, and is smoothed over the pixel there
	blank := func(u, v float64) bool {     // on the upright sheet
		return u < m.LeftMM-pixel || v < m.TopMM-pixel || u > p.Paper.WidthMM-m.RightMM+pixel ||
			v > p.Paper.HeightMM-m.BottomMM+pixel
	}
	drawn := 0
	for py := range page.Rect.Dy() {
		for px := range page.Rect.Dx() {
			if page.RGBAAt(px, py) == (color.RGBA{255, 255, 255, 255}) {
				continue
			}
			drawn++
			x, y := (float64(px)+0.5)/finePxPerMM(), (float64(py)+0.5)/finePxPerMM()
			lost := blank(x, y)
			if o == layout.Landscape {
				lost = blank(y, p.Paper.HeightMM-x) || blank(p.Paper.WidthMM-y, x)
			}
			if lost {
				t.Fatalf("something is drawn at (%.2f, %.2f) mm, which the printer does not reach", x, y)
			}
		}
	}
	require.Positive(t, drawn)
}
