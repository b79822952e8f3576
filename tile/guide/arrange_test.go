package guide

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// A guide comes on paper on which its type can be read.
func TestSmallPaperHoldsNoGuide(t *testing.T) {
	for paper, holds := range map[string]bool{"A4": true, "letter": true, "legal": true, "B5": true, "A5": true,
		"5.5x8.5in": true, "B6": false, "A6": false, "5x7in": false, "4x6in": false, "50x5000mm": false, "5000x50mm": false} {
		p, err := layout.ParsePaper(paper)
		require.NoError(t, err)
		require.Equal(t, holds, Holds(p), paper)
	}
}

// Whatever the job, and whatever its sheets are printed on, the pages come out as arranged, and none but the last is
// filled to less than three eighths: what follows such a page takes the whole of the next. No title stands alone
// above the page's end, and no section of the usual jobs is torn that a page holds.
func TestPagesAreFilled(t *testing.T) {
	for _, paper := range []string{"A4", "letter", "A3", "4x6in", "A8", "610x1500mm", "guide on A5", "guide on B5",
		"guide on A3", "guide on legal", "guide on 5.5x8.5in"} {
		for _, c := range []struct {
			name   string
			change func(*layout.Setup)
		}{
			{"one sheet", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM = 1, 0 }},
			{"four", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM = 4, 0 }},
			{"15", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM = 15, 0 }},
			{"66", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM = 66, 0 }},
			{"200", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM = 200, 0 }},
			{"wide", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM, s.Proportions = 12, 0, 4 }},
			{"tall", func(s *layout.Setup) { s.MaxSheets, s.DistanceMM, s.Proportions = 12, 0, 0.3 }},
			{"rod", func(s *layout.Setup) {
				s.MaxSheets, s.DistanceMM, s.Drop.Body, s.Drop.DiameterMM = 12, 0, flip.UprightRod, 20
			}},
			{"lamp", func(s *layout.Setup) {
				s.MaxSheets, s.DistanceMM, s.Lamps = 15, 0, []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}}
			}},
		} {
			if paper != "A4" && paper != "letter" && c.name != "15" && c.name != "lamp" {
				continue
			}
			t.Run(fmt.Sprint(c.name, " on ", paper), func(t *testing.T) {
				sheets, guides, asked := paper, "", strings.HasPrefix(paper, "guide on ")
				if asked {
					sheets, guides = "A4", strings.TrimPrefix(paper, "guide on ")
				}
				s := on(t, sheets)
				s.Material = "water"
				c.change(&s)
				j := jobOf(t, s)
				if asked {
					j.Paper, _ = layout.ParsePaper(guides)
				}
				b := drawn(j)
				require.Equal(t, b.arrangement.pages, b.page)
				high := b.geo.bottom - b.geo.top
				bottoms := append(b.bottoms[1:], b.lowest()) // the first is what came before the first page
				for i, bottom := range bottoms {
					least := 0.375
					switch {
					case i == len(bottoms)-1:
						least = 0.2
					case asked: // on small paper some sections are a page and a little
						least = 0.35
					}
					require.Greater(t, (bottom-b.geo.top)/high, least, "page %d of %d is too empty; sections start on %v", i+1,
						len(bottoms), b.starts)
				}
				require.Zero(t, b.stubs, "sections start on %v", b.starts)
				if c.name == "15" && !asked {
					require.Zero(t, b.torn, "sections start on %v", b.starts)
				}
			})
		}
	}
}
