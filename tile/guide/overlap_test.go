package guide

import (
	"math"
	"regexp"
	"strings"
	"testing"

	"dropsheet/tile/pdf/pdftest"
)

// requireNoWordsOverlap fails if two letters of a page stand on each other, or one stands off the page.
func requireNoWordsOverlap(t *testing.T, doc *pdftest.Doc) {
	t.Helper()
	for page := 1; page <= doc.PageCount(); page++ {
		width, height := doc.PageSizePoints(page)
		all := doc.Letters(page)
		hidden := onSheetFigures(all)
		var letters []pdftest.Letter
		for i, l := range all {
			if hidden[i] || flat(l.Text) == "" || l.RightPt <= l.LeftPt {
				continue
			}
			if !(l.LeftPt >= 0 && l.RightPt <= width && l.BottomPt >= 0 && l.TopPt <= height) {
				t.Fatalf("page %d: %v is off the page", page, l)
			}
			letters = append(letters, l)
		}
		requireApart(t, page, letters)
	}
}

// sheetWords is what the sheets' marks say, without blanks: label and check rule. The label ends early on small sheets.
var sheetWords = regexp.MustCompile(`R\d+C\d+of\d+` +
	`(boardupcheck7F3A2CQuayatdusk(\d+mm)?|boardupcheck7F3A2C.{0,60}?\d+mm|(boardup)?(check7F3A2C)?(\d+mm)?)`)

// onSheetFigures finds the letters of the figures of a sheet. PDFium counts what a clip hides, and the
// enlarged corners hide much.
func onSheetFigures(letters []pdftest.Letter) map[int]bool {
	var all strings.Builder
	var from []int // for each byte, the letter that it is of
	for i, l := range letters {
		if text := strings.TrimSpace(l.Text); text != "" {
			all.WriteString(text)
			for range len(text) {
				from = append(from, i)
			}
		}
	}
	hidden := map[int]bool{}
	for _, span := range sheetWords.FindAllStringIndex(all.String(), -1) {
		for k := span[0]; k < span[1]; k++ {
			hidden[from[k]] = true
		}
	}
	return hidden
}

// requireApart compares each letter with those near it. Boxes of glyphs that stand side by side may share a sliver.
func requireApart(t *testing.T, page int, letters []pdftest.Letter) {
	t.Helper()
	const binPt = 12.0
	bins := map[[2]int][]int{}
	bin := func(v float64) int { return int(math.Floor(v / binPt)) }
	for i, l := range letters {
		seen := map[int]bool{}
		for x := bin(l.LeftPt); x <= bin(l.RightPt); x++ {
			for y := bin(l.BottomPt); y <= bin(l.TopPt); y++ {
				for _, k := range bins[[2]int{x, y}] {
					if seen[k] {
						continue
					}
					seen[k] = true
					m := letters[k]
					w, h := math.Min(l.RightPt, m.RightPt)-math.Max(l.LeftPt, m.LeftPt), math.Min(l.TopPt, m.TopPt)-
						math.Max(l.BottomPt, m.BottomPt)
					small := math.Min((l.RightPt-l.LeftPt)*(l.TopPt-l.BottomPt), (m.RightPt-m.LeftPt)*(m.TopPt-m.BottomPt))
					if w > 0 && h > 0 && w*h > 0.3*small {
						t.Fatalf("page %d: %v stands on %v", page, l, m)
					}
				}
				bins[[2]int{x, y}] = append(bins[[2]int{x, y}], i)
			}
		}
	}
}
