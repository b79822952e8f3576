package guide

import (
	"bytes"
	"context"
	"fmt"
	"image"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/raster"
	"dropsheet/tile/sheet"
)

// The check rule is as long in the guide's words and in its figure as on the sheets, whatever the guide's own
// scale is; where the guide's pages are too narrow, the figure is half as long and says so.
func TestTheCheckRuleIsTrue(t *testing.T) {
	for _, c := range []struct {
		paper  string
		change func(*layout.Setup)
		long   float64 // of the figure, as a share of the rule
		guide  string  // the paper that it comes on
	}{
		{"A4", func(*layout.Setup) {}, 1, "A4"},
		{"A5", func(s *layout.Setup) { s.DistanceMM = 250 }, 1, "A5"},
		{"A2", func(s *layout.Setup) { s.DistanceMM = 900 }, 1, "A2"},
		{"A6", func(s *layout.Setup) { s.DistanceMM = 90 }, 1, "A4"},
		{"A6", func(s *layout.Setup) { s.DistanceMM, s.Orientation = 160, layout.Portrait }, 0.5, "A6"},
		{"letter", func(s *layout.Setup) { s.DistanceMM = 150 }, 1, "letter"},
	} {
		s := on(t, c.paper)
		c.change(&s)
		j := jobOf(t, s)
		j.Paper, _ = layout.ParsePaper(c.guide)
		t.Run(fmt.Sprintf("%s, %d sheets", c.paper, len(j.Plan.Sheets)), func(t *testing.T) {
			ruleMM := onFirstPage(t, j.Plan)
			doc := worded(t, j)
			texts := pageTexts(doc)
			page := pageWith(t, texts, "A check rule")
			require.Contains(t, texts[page-1], fmt.Sprintf("is %g mm long", ruleMM))
			require.Equal(t, c.long == 0.5, strings.Contains(texts[page-1], "half as large as on the sheets"))
			const dpi = 254 // ten pixels to the millimetre
			require.InDelta(t, 10*ruleMM*c.long, longestBlackPx(doc.Render(page, dpi)), 5,
				"the end ticks add their width, and a pixel may be cut at either end")
		})
	}
}

// onFirstPage is how long the check rule is by its words on the first sheet itself.
func onFirstPage(t *testing.T, p layout.Plan) (ruleMM float64) {
	t.Helper()
	grid := raster.NewGrid(p.Backdrop.Board(), 3, 2, units.PerInch(300))
	job := sheet.Job{Label: sheet.Label{Job: "x", Code: "1", Of: 1}, Plan: p, Grid: grid,
		Source: raster.NewSource(&artwork.Picture{Image: image.NewGray(image.Rect(0, 0, 3, 2))}, p.Drop.Reverses.Turn(),
			grid, image.YCbCrSubsampleRatio420)}
	var file bytes.Buffer
	require.NoError(t, job.Write(context.Background(), &file, p.Sheets[:1], nil))
	words := regexp.MustCompile(`(\d+) mm`).FindStringSubmatch(flat(pdftest.Open(t, file.Bytes()).Text(1)))
	require.NotNil(t, words)
	_, err := fmt.Sscan(words[1], &ruleMM)
	require.NoError(t, err)
	return ruleMM
}

// longestBlackPx is the longest level run of pixels that are black, not the accent.
func longestBlackPx(img *image.RGBA) int {
	longest := 0
	for y := range img.Rect.Dy() {
		run := 0
		for x := range img.Rect.Dx() {
			if c := img.RGBAAt(x, y); c.R < 110 && c.G < 110 && c.B < 110 && c.B-c.R < 20 {
				run++
				longest = max(longest, run)
			} else {
				run = 0
			}
		}
	}
	return longest
}

// How far off a print may be, and why, in this job's own figures.
func TestPrintToleranceIsToldInTheJobsFigures(t *testing.T) {
	for _, c := range []struct {
		name   string
		paper  string
		change func(*layout.Setup)
		says   []string
		not    []string
	}{
		// 889.2 x 592.8 mm in 5 x 3 even cells of 177.8 x 197.6: 0.2 % of a cell is 0.36 and 0.40 mm, of the print 1.78.
		{"A4", "A4", func(*layout.Setup) {}, []string{
			"If the 100 mm are off by more than 0.2 mm, stop.", "a cell of 177.8 mm is wrong by 0.4 mm",
			"Over 5 sheets in a row that makes 1.8 mm, which the pencil grid shares out", "Page 1 must measure 177.8 × " +
				"197.6 mm, within 0.4 mm across and 0.4 mm down",
		}, nil},
		// 194.0 x 129.3 mm on four postcards, whose rules are 70 mm long: 0.2 mm on that is 0.29 %, 0.55 mm on 194.
		{"postcards", "A6", func(s *layout.Setup) { s.DistanceMM = 90 }, []string{
			"If the 70 mm are off by more than 0.2 mm, stop.", "Over 2 sheets in a row that makes 0.6 mm",
			"within 0.3 mm",
		}, nil},
		{"one sheet", "A4", func(s *layout.Setup) { s.DistanceMM = 60 },
			[]string{"Measure the print from edge to edge, with a steel rule. It must measure 126.6 × 84.4 mm, within 0.3 mm " +
				"across and 0.3 mm down."}, []string{"age 1 must", "check rule"}},
		{"a measured printer", "A4", func(s *layout.Setup) {
			s.Printer = &layout.Printer{Name: "study inkjet", Paper: s.Paper, AcrossScale: 0.996, FeedScale: 1.0125,
				Margins: layout.Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 12}}
		}, []string{
			"The printer measured as study inkjet, with A4 in it, with ink enough",
			"made for the printer measured as study inkjet", "It prints 0.4 % short across and 1.25 % long along the feed",
			"measure it again with dropsheet gauge", "If the 100 mm are off by more than 0.2 mm, stop.",
		}, []string{"A printer that takes", "another printer, or measure", "true here too"}},
		// A rule of 100 mm that grows by 0.3 % is printed 99.7 mm long.
		{"paper that grows", "A4", func(s *layout.Setup) {
			s.Printer = &layout.Printer{Name: "study inkjet", Paper: s.Paper, AcrossScale: 0.996, FeedScale: 0.994,
				Margins: layout.Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 12},
				Growth:  layout.Growth{Across: 1.001, Feed: 1.003}}
		}, []string{
			"On page 1 it is 99.7 mm long. Pasted and dry, it must be 100 mm.", "If the 99.7 mm are off by more than 0.2 " +
				"mm, stop.",
			"this paper comes out 0.1 % long across and 0.3 % long along the feed, and the sheets make up for that",
		}, []string{"some 0.3 %", "--pasted"}},
		{"paper too small for a rule", "60x90mm", func(s *layout.Setup) {
			s.DistanceMM, s.LapMM, s.MarginMM,
				s.Orientation = 60, 3, 13, layout.Landscape
		}, []string{
			"too small for a check rule", "If the width is off by more than 0.3 mm, or the height by more than 0.3 mm, stop.",
		}, []string{"A check rule"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := on(t, c.paper)
			c.change(&s)
			all := strings.Join(pageTexts(worded(t, jobOf(t, s))), " ")
			for _, says := range c.says {
				require.Contains(t, all, says)
			}
			for _, not := range c.not {
				require.NotContains(t, all, not)
			}
		})
	}
}

// The check code is asked for where the labels have room for it.
func TestCodeIsAskedForWhereItStands(t *testing.T) {
	for _, c := range []struct {
		paper     string
		says, not string
	}{
		{"A4", "Its check code must be 7F3A2C", "have no room"},
		{"50x74mm", "for which the sheets\u2019 labels have no room: keep guide and sheets together", "must show the " +
			"check code"},
	} {
		s := on(t, c.paper)
		s.MaxSheets, s.DistanceMM, s.MarginMM, s.Orientation, s.Proportions = 9, 0, 3, layout.Portrait, 0.68
		all := strings.Join(pageTexts(worded(t, jobOf(t, s))), " ")
		require.Contains(t, all, c.says)
		require.NotContains(t, all, c.not)
		if c.paper != "A4" {
			require.NotContains(t, all, "must be 7F3A2C")
		}
	}
}
