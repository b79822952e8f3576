package sheet

import (
	"image"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/raster"
)

// darkAcross is how many mm are dark along a level line of a rendered page.
func darkAcross(page *image.RGBA, yMM, fromMM, toMM float64) (mm float64) {
	const stepMM = 0.02
	for x := fromMM; x < toMM; x += stepMM {
		if dark(pagePx(page, x, yMM)) {
			mm += stepMM
		}
	}
	return mm
}

// The label's arrow stands between the sheet's place and the words, and points up the page, which is up the board,
// whichever side of the cell the strip is on.
func TestArrowPointsUp(t *testing.T) {
	for _, light := range []layout.Corner{layout.TopLeft, layout.BottomRight} {
		t.Run(string(light), func(t *testing.T) {
			j := flatJob(t, func(s *layout.Setup) { s.LightFrom = light })
			doc := write(t, j, j.Plan.Sheets[:1])
			page := doc.Render(1, dpi)
			on := j.Plan.Backdrop.OnPage(j.Plan.Sheets[0])
			middle := on.Cell.YMM - layout.BleedMM - stripClearMM(on)/2
			if !on.CutTop {
				middle = on.Cell.BottomMM() + layout.BleedMM + stripClearMM(on)/2
			}
			from, to := beforeWord(t, doc.Letters(1), "board")
			require.Greater(t, to, from+arrowWideMM)
			upper, lower := darkAcross(page, middle-0.8, from+0.3, to-0.3), darkAcross(page, middle+0.8, from+0.3, to-0.3)
			require.InDelta(t, arrowWideMM*(arrowHighMM/2-0.8)/arrowHighMM, upper, 0.12, "near its point")
			require.InDelta(t, arrowWideMM*(arrowHighMM/2+0.8)/arrowHighMM, lower, 0.12, "near its foot")
		})
	}
}

// beforeWord is the gap before a word of a page, from the letter before it to its own first, in mm.
func beforeWord(t *testing.T, letters []pdftest.Letter, word string) (fromMM, toMM float64) {
	t.Helper()
	var shown []pdftest.Letter
	text := ""
	for _, l := range letters {
		if strings.TrimSpace(l.Text) != "" {
			shown = append(shown, l)
			text += l.Text
		}
	}
	at := strings.Index(text, word)
	require.Positive(t, at, text)
	n := utf8.RuneCountInString(text[:at])
	return units.PointsToMM(shown[n-1].RightPt), units.PointsToMM(shown[n].LeftPt)
}

// A label keeps clear of the cut marks at both ends of its strip, heads and keylines included.
func TestLabelKeepsOffTheCutMarks(t *testing.T) {
	j := flatJob(t, nil)
	j.Label.Job = strings.Repeat("W", 60)
	for n := 60; ; n-- { // as long a name as there is room for
		j.Label.Job = strings.Repeat("W", n)
		doc := write(t, j, j.Plan.Sheets[:1])
		if !strings.Contains(doc.Text(1), "WWW") {
			require.Greater(t, n, 1)
			continue
		}
		cell := j.Plan.Backdrop.OnPage(j.Plan.Sheets[0]).Cell
		stripPt := units.MMToPoints(j.Plan.Backdrop.Page().HeightMM - cell.YMM + layout.BleedMM)
		left, right := math.Inf(1), 0.0
		for _, l := range doc.Letters(1) {
			if l.BottomPt > stripPt && strings.TrimSpace(l.Text) != "" {
				left, right = min(left, units.PointsToMM(l.LeftPt)), max(right, units.PointsToMM(l.RightPt))
			}
		}
		const clearMM = headHalfMM + keylineMM + 0.5
		require.Greater(t, left, cell.XMM+clearMM)
		require.Less(t, right, cell.RightMM()-clearMM)
		return
	}
}

// Cut marks run outward from a point: nothing beside the line at their inner end, and a head as broad as it gets where
// it ends; by hand from 1.8 mm of head and 0.7 mm of half its breadth. Seam ticks have no head.
func TestCutMarksPointAtTheCut(t *testing.T) {
	j := flatJob(t, nil)
	page := write(t, j, j.Plan.Sheets[:1]).Render(1, dpi)
	on, lap := j.Plan.Backdrop.OnPage(j.Plan.Sheets[0]), j.Plan.Backdrop.LapMM
	c := on.Cell
	for _, m := range []struct {
		name         string
		x, y         float64 // of the inner end
		alongX       float64 // outward
		alongY       float64
		headed, line bool
	}{
		{"of the left cut, in the strip", c.XMM, c.YMM - layout.BleedMM - cutMarkGapMM, 0, -1, true, true},
		{"of the top cut, in the strip", c.XMM - layout.BleedMM - cutMarkGapMM, c.YMM, -1, 0, true, true},
		{"of the left cut, on the lap", c.XMM, c.BottomMM() + lap - lapEndMM - markMM, 0, 1, true, true},
		{"of the top cut, on the lap", c.RightMM() + lap - lapEndMM - markMM, c.YMM, 1, 0, true, true},
		{"seam tick on the lap, which has none", c.RightMM() + LandingMM, c.BottomMM(), 1, 0, false, true},
		{"seam tick in the strip", c.RightMM(), c.YMM - layout.BleedMM - cutMarkGapMM, 0, -1, false, true},
	} {
		t.Run(m.name, func(t *testing.T) {
			at := func(along, aside float64) bool {
				return dark(pagePx(page, m.x+along*m.alongX-aside*m.alongY, m.y+along*m.alongY+aside*m.alongX))
			}
			for _, side := range []float64{-1, 1} {
				require.False(t, at(0.3, 0.35*side), "beside the point")
				require.Equal(t, m.headed, at(1.6, 0.45*side), "where the head is broad")
				require.False(t, at(2.3, 0.35*side), "past the head")
			}
			require.Equal(t, m.line, at(2.3, 0), "its line goes on")
		})
	}
}

// What a sheet stored as JPEG loses of a grain of 12 levels' spread is 3.1 levels. By hand: rounding to steps
// of q errs by q/√12; the steps of T.81's table K.1, recalled from memory, are 67 by the root of their mean
// square, and a quality of 92 takes 0.16 of them, which makes 3.1. A quality of 85 would err by 5.8, one of
// 40 by nearly all there is.
func TestJPEGKeepsGrain(t *testing.T) {
	grain := image.NewGray(image.Rect(0, 0, 900, 600))
	random := rand.New(rand.NewPCG(1, 2))
	for i := range grain.Pix {
		grain.Pix[i] = uint8(max(0, min(255, 128+12*random.NormFloat64())))
	}
	page := func(lossless bool) *image.RGBA {
		j := flatJob(t, nil)
		j.Lossless = lossless
		j.Source = raster.NewSource(&artwork.Picture{Image: grain}, j.Plan.Drop.Reverses.Turn(), j.Grid,
			image.YCbCrSubsampleRatio420)
		return write(t, j, j.Plan.Sheets[:1]).Render(1, 100)
	}
	want, got := page(true), page(false)
	cell := flatJob(t, nil)
	on := cell.Plan.Backdrop.OnPage(cell.Plan.Sheets[0]).Cell
	perMM := units.PerInch(100).PixelsPerMM()
	sum, n, spread := 0.0, 0.0, 0.0
	for y := int(on.YMM*perMM) + 2; y < int(on.BottomMM()*perMM)-2; y++ {
		for x := int(on.XMM*perMM) + 2; x < int(on.RightMM()*perMM)-2; x++ {
			off := float64(got.RGBAAt(x, y).R) - float64(want.RGBAAt(x, y).R)
			sum, spread, n = sum+off*off, spread+math.Pow(float64(want.RGBAAt(x, y).R)-128, 2), n+1
		}
	}
	require.InDelta(t, 12, math.Sqrt(spread/n), 0.2, "there is grain")
	require.InDelta(t, 3.1, math.Sqrt(sum/n), 0.1)
}
