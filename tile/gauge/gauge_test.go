package gauge

import (
	"bytes"
	"cmp"
	"fmt"
	"image"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/pdf/pdftest"
)

// nearMM is how true the page is held to be: half of what a lens reads off a steel rule (common practice, no source).
const nearMM = 0.05

const dpi = 300

// sheet is a gauge page as PDFium draws it.
type sheet struct {
	paper layout.Paper
	file  []byte
	doc   *pdftest.Doc
	image *image.RGBA
}

func paperOf(t testing.TB, name string) layout.Paper {
	t.Helper()
	paper, err := layout.ParsePaper(name)
	require.NoError(t, err)
	return paper
}

func printed(t *testing.T, name string) sheet {
	t.Helper()
	s := sheet{paper: paperOf(t, name)}
	var file bytes.Buffer
	require.NoError(t, Write(&file, s.paper))
	s.file = file.Bytes()
	s.doc = pdftest.Open(t, s.file)
	require.Equal(t, 1, s.doc.PageCount())
	s.image = s.doc.Render(1, dpi)
	return s
}

// ink is how dark a pixel is, 0 to 1.
func (s sheet) ink(x, y int) float64 { return 1 - float64(s.image.RGBAAt(x, y).R)/255 }

// pxPerMM are the pixels to the millimetre across and down: PDFium stretches the page a little, to whole pixels.
func (s sheet) pxPerMM() (x, y float64) {
	return float64(s.image.Bounds().Dx()) / s.paper.WidthMM, float64(s.image.Bounds().Dy()) / s.paper.HeightMM
}

// profile is the ink along x at a place on y, or along y at a place on x, from one place to another, in mm: a
// value for each pixel.
func (s sheet) profile(alongX bool, at, from, to float64) (ink []float64, firstPx int) {
	x, y := s.pxPerMM()
	if alongX {
		firstPx = int(from * x)
		for i := firstPx; i < int(to*x); i++ {
			ink = append(ink, s.ink(i, int(at*y)))
		}
		return ink, firstPx
	}
	firstPx = int(from * y)
	for i := firstPx; i < int(to*y); i++ {
		ink = append(ink, s.ink(int(at*x), i))
	}
	return ink, firstPx
}

// lines are the middles of the dark lines on a profile, in mm: the centroids of their ink, finer than a pixel.
func (s sheet) lines(alongX bool, at, from, to float64) []float64 {
	ink, first := s.profile(alongX, at, from, to)
	perMM, down := s.pxPerMM()
	if !alongX {
		perMM = down
	}
	var middles []float64
	sum, moment := 0.0, 0.0
	for i, v := range append(ink, 0) {
		if v > 0.02 {
			sum += v
			moment += v * (float64(first+i) + 0.5)
			continue
		}
		if sum > 0 {
			middles = append(middles, moment/sum/perMM)
		}
		sum, moment = 0, 0
	}
	return middles
}

// The two end ticks of each rule, found on the drawn page by nothing but how far they reach past the rule's
// line, are the true lengths apart.
func TestRulesAreTrue(t *testing.T) {
	for _, c := range []struct {
		paper        string
		across, feed float64
	}{
		{"A4", 200, 250},
		{"A5", 130, 160},
		{"letter", 200, 230},
		{"A7", 60, 60},
	} {
		t.Run(c.paper, func(t *testing.T) {
			s := printed(t, c.paper)
			require.Equal(t, layout.Size{WidthMM: c.across, HeightMM: c.feed}, Rules(s.paper))
			depth := DepthMM(s.paper)

			ends := s.lines(true, depth+ruleInMM-0.7, 0, s.paper.WidthMM)
			require.Len(t, ends, 2)
			require.InDelta(t, c.across, ends[1]-ends[0], nearMM)
			require.InDelta(t, s.paper.WidthMM, ends[0]+ends[1], nearMM, "it stands in the middle")
			ticks := s.lines(true, depth+ruleInMM+1, 0, s.paper.WidthMM)
			require.Len(t, ticks, int(c.across)+1)
			for i, x := range ticks {
				require.InDelta(t, ends[0]+float64(i), x, nearMM)
			}

			from, to := depth+bandMM, s.paper.HeightMM-depth-0.6
			ends = s.lines(false, depth+ruleInMM-0.7, from, to)
			require.Len(t, ends, 2)
			require.InDelta(t, c.feed, ends[1]-ends[0], nearMM)
			ticks = s.lines(false, depth+ruleInMM+1, from, to)
			require.Len(t, ticks, int(c.feed)+1)
			for i, y := range ticks {
				require.InDelta(t, ends[0]+float64(i), y, nearMM)
			}
		})
	}
}

// On both rules every fifth tick is longer than a millimetre's, every tenth longer yet, and the ends longest,
// so that one can count.
func TestTicksCanBeCounted(t *testing.T) {
	s := printed(t, "A4")
	depth := DepthMM(s.paper)
	from, to := depth+bandMM, s.paper.HeightMM-depth-0.6
	for _, rule := range []struct {
		name     string
		alongX   bool
		from, to float64
		lengthMM int
	}{{"across", true, 0, s.paper.WidthMM, 200}, {"feed", false, from, to, 250}} {
		// How many ticks reach so far from the rule's line: all, those of five, of ten, the ends.
		for _, c := range []struct {
			name    string
			reachMM float64
			everyMM int
		}{{"millimetres", 1, 1}, {"fives", 2, 5}, {"tens", 2.9, 10}} {
			at := depth + ruleInMM + c.reachMM
			ends := s.lines(rule.alongX, depth+ruleInMM-0.7, rule.from, rule.to)
			require.Len(t, ends, 2)
			ticks := s.lines(rule.alongX, at, rule.from, rule.to)
			require.Len(t, ticks, rule.lengthMM/c.everyMM+1, "%s, %s", rule.name, c.name)
			for i, mm := range ticks {
				require.InDelta(t, ends[0]+float64(i*c.everyMM), mm, nearMM, "%s, %s", rule.name, c.name)
			}
		}
	}
}

// Every fifth line of the frame, and the last, is wider than the others, to count by.
func TestFrameLinesCanBeCounted(t *testing.T) {
	s := printed(t, "A4")
	perMM, _ := s.pxPerMM()
	ink, first := s.profile(true, 0.85*s.paper.HeightMM, 0.4, frameMM+0.5)
	for k := 1; k <= frameMM; k++ {
		wide := 0.0
		for i, v := range ink {
			if math.Abs((float64(first+i)+0.5)/perMM-float64(k)) < 0.4 {
				wide += v / perMM
			}
		}
		want := 0.1
		if k%5 == 0 {
			want = 0.25
		}
		require.InDelta(t, want, wide, 0.04, "line %d", k)
	}
}

// Line k of the frame lies k mm from each edge of the paper.
func TestFrameLinesLieWhereTheySay(t *testing.T) {
	for _, name := range []string{"A4", "A5", "letter"} {
		t.Run(name, func(t *testing.T) {
			s := printed(t, name)
			w, h := s.paper.WidthMM, s.paper.HeightMM
			for _, side := range []struct {
				name      string
				alongX    bool
				at        float64 // clear of the numbers and of the rules
				edge, way float64
			}{
				{"left", true, 0.85 * h, 0, 1},
				{"right", true, 0.85 * h, w, -1},
				{"top", false, 0.15 * w, 0, 1},
				{"bottom", false, 0.15 * w, h, -1},
			} {
				from, to := side.edge+side.way*0.4, side.edge+side.way*(frameMM+0.5)
				lines := s.lines(side.alongX, side.at, math.Min(from, to), math.Max(from, to))
				require.Len(t, lines, frameMM, side.name)
				if side.way < 0 {
					slices.Reverse(lines)
				}
				for i, at := range lines {
					require.InDelta(t, float64(i+1), side.way*(at-side.edge), nearMM, side.name)
				}
				atEdge, _ := s.profile(side.alongX, side.at, math.Min(side.edge, from), math.Max(side.edge, from))
				require.Greater(t, slices.Max(atEdge), 0.5, "%s: line 0 at the edge", side.name)
			}
		})
	}
}

// The numbers of the frame stand on their lines, on each side, from 1 at the edge inwards.
func TestFrameNumbersStandOnTheirLines(t *testing.T) {
	s := printed(t, "A4")
	w, h := s.paper.WidthMM, s.paper.HeightMM
	for _, side := range []struct {
		name string
		// from is how far a point of the page lies from the side, along is its place along it.
		from, along func(x, y float64) float64
		start       float64 // along the side, past the rule across and the corner
	}{
		{"left", func(x, _ float64) float64 { return x }, func(_, y float64) float64 { return -y }, frameMM + bandMM},
		{"right", func(x, _ float64) float64 { return w - x }, func(_, y float64) float64 { return -y }, frameMM + bandMM},
		{"top", func(_, y float64) float64 { return y }, func(x, _ float64) float64 { return x }, frameMM},
		{"bottom", func(_, y float64) float64 { return h - y }, func(x, _ float64) float64 { return x }, frameMM},
	} {
		type figure struct {
			text       string
			along, off float64
		}
		var figures []figure
		for _, l := range s.doc.Letters(1) {
			x, y := units.PointsToMM((l.LeftPt+l.RightPt)/2), h-units.PointsToMM((l.TopPt+l.BottomPt)/2)
			if off := side.from(x, y); off < frameMM+0.9 && math.Abs(side.along(x, y)) > side.start &&
				strings.TrimSpace(l.Text) != "" {
				figures = append(figures, figure{l.Text, side.along(x, y), off})
			}
		}
		slices.SortFunc(figures, func(a, b figure) int { return cmp.Compare(a.along, b.along) })
		// Figures of one number stand closer together than numbers do.
		numbers := map[string]float64{}
		for i := 0; i < len(figures); i++ {
			text, off := figures[i].text, figures[i].off
			if i+1 < len(figures) && figures[i+1].along-figures[i].along < 2 {
				i++
				text += figures[i].text
			}
			numbers[text] = off
		}
		require.Len(t, numbers, frameMM, side.name)
		for k := 1; k <= frameMM; k++ {
			// figures are not all of one height
			require.InDelta(t, float64(k), numbers[fmt.Sprint(k)], 0.15, "%s: number %d", side.name, k)
		}
	}
}

// The page measures what the paper does, in points (ISO 32000-1, 14.11.2), asks not to be scaled (table 150),
// and comes out the same each time.
func TestFile(t *testing.T) {
	for _, name := range []string{"A4", "A10", "letter", "300x400mm"} {
		s := printed(t, name)
		media := s.doc.PageBoxes(1).Media
		require.InDelta(t, units.MMToPoints(s.paper.WidthMM), media.RightPt-media.LeftPt, 0.01, name)
		require.InDelta(t, units.MMToPoints(s.paper.HeightMM), media.TopPt-media.BottomPt, 0.01, name)
		require.Contains(t, string(s.file), "/PrintScaling /None")
		require.Equal(t, "Printer gauge for "+s.paper.Name, s.doc.Title())
		var again bytes.Buffer
		require.NoError(t, Write(&again, s.paper))
		require.True(t, bytes.Equal(s.file, again.Bytes()), name)
	}
}

// The words say the rules' lengths and the whole command.
func TestWords(t *testing.T) {
	for _, name := range []string{"A3", "A4", "A5", "A6", "letter"} {
		s := printed(t, name)
		text := strings.Join(strings.Fields(s.doc.Text(1)), " ")
		for _, want := range append(Steps(s.paper), SaveCommand(s.paper), "Printer gauge",
			fmt.Sprintf("ACROSS %g mm", Rules(s.paper).WidthMM), fmt.Sprintf("FEED %g mm", Rules(s.paper).HeightMM)) {
			require.Contains(t, text, want, name)
		}
	}
	require.Equal(t, `dropsheet gauge --paper A4 --save "study inkjet" --read 199.2x248.5mm --margins 4,4,4,12mm`,
		SaveCommand(paperOf(t, "A4")))
	require.Len(t, Steps(paperOf(t, "A4")), 5)
}
