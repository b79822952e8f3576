package guide

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Whatever the job, the pages come out as arranged, and none is left nearly empty.
func TestPagesAreFilled(t *testing.T) {
	for _, paper := range []string{"A6", "A4", "letter", "A5", "A3"} {
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
			if (paper == "A5" || paper == "A3") && c.name != "15" && c.name != "lamp" { // pages of the proportions of A6 and A4
				continue
			}
			t.Run(fmt.Sprint(c.name, " on ", paper), func(t *testing.T) {
				s := on(t, paper)
				s.Material = "water"
				c.change(&s)
				b := drawn(jobOf(t, s))
				require.Equal(t, b.arrangement.pages, b.page)
				high := b.geo.bottom - b.geo.top
				bottoms := append(b.bottoms[1:], b.lowest()) // the first is what came before the first page
				for i, bottom := range bottoms {
					least := 0.25
					if i == len(bottoms)-1 {
						least = 0.2
					}
					require.Greater(t, (bottom-b.geo.top)/high, least, "page %d of %d is nearly empty; sections start on %v", i+1,
						len(bottoms), b.starts)
				}
			})
		}
	}
}
