package gauge

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// allPapers are the papers that have names, and the smallest, longest and largest that have none.
func allPapers(t *testing.T) []layout.Paper {
	t.Helper()
	names := []string{"letter", "legal", "tabloid", "13x19in", "50x50mm", "50x5000mm", "5000x5000mm", "100x150mm",
		"127x178mm"}
	for _, family := range []string{"A", "B", "JIS-B"} {
		for n := range 11 {
			names = append(names, fmt.Sprint(family, n))
		}
	}
	papers := make([]layout.Paper, len(names))
	for i, name := range names {
		papers[i] = paperOf(t, name)
	}
	return papers
}

func empty(paper layout.Paper) *page {
	return &page{geometry: newGeometry(paper)}
}

func composed(paper layout.Paper) *page {
	p := empty(paper)
	p.compose()
	return p
}

// box is what a thing on the page covers.
type box struct {
	layout.Rect
	what string
}

// descent is how far letters reach below the baseline, as a share of their size: the g of the Go fonts by 0.205
// (its bounds in their files).
const descent = 0.21

func (p *page) wordBoxes() (boxes []box) {
	for _, w := range p.words {
		below := descent * w.style.SizeMM()
		if w.style == frameStyle || w.style == numberStyle {
			below = 0 // figures
		}
		long, up := w.style.Width(w.text), w.style.CapMM()
		r := layout.Rect{XMM: w.x, YMM: w.y - up, WidthMM: long, HeightMM: up + below}
		if w.turned {
			r = layout.Rect{XMM: w.x - up, YMM: w.y - long, WidthMM: up + below, HeightMM: long}
		}
		boxes = append(boxes, box{r, w.text})
	}
	return boxes
}

func (p *page) inkBoxes() (boxes []box) {
	for _, s := range p.strokes {
		half := s.widthMM / 2
		r := layout.Rect{XMM: s.From.XMM, YMM: s.From.YMM - half, WidthMM: s.To.XMM - s.From.XMM, HeightMM: s.widthMM}
		if s.From.XMM == s.To.XMM {
			r = layout.Rect{XMM: s.From.XMM - half, YMM: s.From.YMM, WidthMM: s.widthMM, HeightMM: s.To.YMM - s.From.YMM}
		}
		boxes = append(boxes, box{r, fmt.Sprintf("stroke %+v", s)})
	}
	for _, f := range p.fills {
		boxes = append(boxes, box{f.Rect, fmt.Sprintf("fill %+v", f)})
	}
	return boxes
}

func meet(a, b layout.Rect) bool {
	const slack = 1e-9
	return a.XMM < b.RightMM()-slack && b.XMM < a.RightMM()-slack && a.YMM < b.BottomMM()-slack &&
		b.YMM < a.BottomMM()-slack
}

// On every paper all parts lie on the page and clear of each other, and no word stands on a line, a patch or
// another word.
func TestEveryPaperFits(t *testing.T) {
	for _, paper := range allPapers(t) {
		t.Run(paper.Name, func(t *testing.T) {
			rules := Rules(paper)
			require.GreaterOrEqual(t, min(rules.WidthMM, rules.HeightMM), 10.0)
			require.LessOrEqual(t, rules.WidthMM, paper.WidthMM-2*insetMM)

			all := composed(paper)
			words, ink := all.wordBoxes(), all.inkBoxes()
			for _, b := range append(append([]box{}, words...), ink...) {
				on := b.WidthMM > 0 && b.HeightMM > 0 && b.XMM >= -1e-9 && b.YMM >= -1e-9 && b.RightMM() <= paper.WidthMM+1e-9 &&
					b.BottomMM() <= paper.HeightMM+1e-9
				require.True(t, on, "%s is off the page: %v", b.what, b.Rect)
			}
			for i, w := range words {
				for _, v := range words[i+1:] {
					if meet(w.Rect, v.Rect) { // asked first: require on every pair takes most of the time
						t.Fatalf("%q stands on %q", w.what, v.what)
					}
				}
				for _, v := range ink {
					if meet(w.Rect, v.Rect) {
						t.Fatalf("%q at %v stands on %s", w.what, w.Rect, v.what)
					}
				}
			}

			parts := []func(*page){(*page).frame, (*page).ruleAcross, (*page).ruleFeed, (*page).explain}
			covered := make([][]box, len(parts))
			for i, part := range parts {
				p := empty(paper)
				part(p)
				covered[i] = append(p.inkBoxes(), p.wordBoxes()...)
				for _, before := range covered[:i] {
					for _, a := range before {
						for _, b := range covered[i] {
							if meet(a.Rect, b.Rect) {
								t.Fatalf("%s meets %s", a.what, b.what)
							}
						}
					}
				}
			}
		})
	}
}

// What a paper of the usual sizes has room for is there: words, greys, lines, and the finer greys.
func TestUsualPapersHoldEverything(t *testing.T) {
	for _, name := range []string{"A3", "A4", "A5", "letter", "legal", "tabloid", "13x19in", "B5", "JIS-B5"} {
		p := composed(paperOf(t, name))
		headings := map[string]bool{}
		for _, w := range p.words {
			headings[w.text] = true
		}
		require.True(t, headings["Printer gauge"], name)
		require.True(t, headings["255"], name)
		require.True(t, headings["0.1"] && headings["1.0"], name)
		require.True(t, headings["The lightest and the darkest greys"], name)
	}
}
