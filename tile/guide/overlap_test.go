package guide

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"
	"time"

	pdfium "github.com/klippa-app/go-pdfium"
	"github.com/klippa-app/go-pdfium/requests"
	"github.com/klippa-app/go-pdfium/responses"
	"github.com/klippa-app/go-pdfium/webassembly"
	"github.com/stretchr/testify/require"
)

// reader is a PDFium of this package's own, for what pdftest does not ask it: where each letter stands.
var reader = sync.OnceValues(func() (pdfium.Pdfium, error) {
	pool, err := webassembly.Init(webassembly.Config{MinIdle: 1, MaxIdle: 1, MaxTotal: 1})
	if err != nil {
		return nil, err
	}
	return pool.GetInstance(time.Minute)
})

// TestMain starts the reader beside the tests: it takes seconds.
func TestMain(m *testing.M) {
	go reader()
	os.Exit(m.Run())
}

// requireNoWordsOverlap fails if two letters of a page stand on each other, or one stands off the page.
func requireNoWordsOverlap(t *testing.T, file []byte) {
	t.Helper()
	pdf, err := reader()
	require.NoError(t, err)
	opened, err := pdf.OpenDocument(&requests.OpenDocument{File: &file})
	require.NoError(t, err)
	defer pdf.FPDF_CloseDocument(&requests.FPDF_CloseDocument{Document: opened.Document})
	count, err := pdf.FPDF_GetPageCount(&requests.FPDF_GetPageCount{Document: opened.Document})
	require.NoError(t, err)
	for page := range count.PageCount {
		at := requests.Page{ByIndex: &requests.PageByIndex{Document: opened.Document, Index: page}}
		size, err := pdf.GetPageSize(&requests.GetPageSize{Page: at})
		require.NoError(t, err)
		text, err := pdf.GetPageTextStructured(&requests.GetPageTextStructured{Page: at, Mode: requests.GetPageTextStructuredModeChars})
		require.NoError(t, err)
		var letters []letter
		hidden := onSheetFigures(text.Chars)
		for i, c := range text.Chars {
			p := c.PointPosition
			if hidden[i] || c.Text == " " || c.Text == "\u00a0" || c.Text == "\r" || c.Text == "\n" || p.Right <= p.Left {
				continue
			}
			// PDFium's tops and bottoms go by where they lie on the page, either way up.
			l := letter{c.Text, p.Left, math.Min(p.Top, p.Bottom), p.Right, math.Max(p.Top, p.Bottom)}
			require.True(t, l.left >= 0 && l.right <= size.Width && l.low >= 0 && l.high <= size.Height, "page %d: %v is off the page", page+1, l)
			letters = append(letters, l)
		}
		requireApart(t, page+1, letters)
	}
}

// sheetWords is what the sheets' marks say, without blanks: label and check rule. The label ends early on small sheets.
var sheetWords = regexp.MustCompile(`R\d+C\d+of\d+(boardupcheck7F3A2C.{0,60}?\d+mm|(boardup)?(check7F3A2C)?(\d+mm)?)`)

// onSheetFigures finds the letters of the figures of a sheet. PDFium counts what a clip hides, and the enlarged corners hide much.
func onSheetFigures(chars []*responses.GetPageTextStructuredChar) map[int]bool {
	var all strings.Builder
	var from []int // for each byte, the letter that it is of
	for i, c := range chars {
		if text := strings.TrimSpace(c.Text); text != "" {
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

// letter is a glyph's box in points, y up.
type letter struct {
	text                   string
	left, low, right, high float64
}

func (l letter) String() string { return fmt.Sprintf("%q at %.1f, %.1f", l.text, l.left, l.low) }

// requireApart compares each letter with those near it. Boxes of glyphs that stand side by side may share a sliver.
func requireApart(t *testing.T, page int, letters []letter) {
	t.Helper()
	const binPt = 12.0
	bins := map[[2]int][]int{}
	bin := func(v float64) int { return int(math.Floor(v / binPt)) }
	for i, l := range letters {
		seen := map[int]bool{}
		for x := bin(l.left); x <= bin(l.right); x++ {
			for y := bin(l.low); y <= bin(l.high); y++ {
				for _, k := range bins[[2]int{x, y}] {
					if seen[k] {
						continue
					}
					seen[k] = true
					m := letters[k]
					w, h := math.Min(l.right, m.right)-math.Max(l.left, m.left), math.Min(l.high, m.high)-math.Max(l.low, m.low)
					small := math.Min((l.right-l.left)*(l.high-l.low), (m.right-m.left)*(m.high-m.low))
					require.False(t, w > 0 && h > 0 && w*h > 0.3*small, "page %d: %v stands on %v", page, l, m)
				}
				bins[[2]int{x, y}] = append(bins[[2]int{x, y}], i)
			}
		}
	}
}
