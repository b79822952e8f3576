package guide

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// The guide of one sheet is one leaf, on A4 and letter and whatever hangs before it, and says what stays white; a rod's
// has the page of its rays besides, and nothing else is on that.
func TestOneSheetTakesTwoPages(t *testing.T) {
	for _, c := range []struct {
		name, paper string
		change      func(*layout.Setup)
		says        string
	}{
		{"A4", "A4", func(*layout.Setup) {},
			"The paper goes on beyond the print by 5 mm at either side, 9.3 mm above and below."},
		{"borderless letter", "letter", func(s *layout.Setup) { s.MarginMM = 0 }, "Switch borderless on"},
		{"a glass rod", "A4", func(s *layout.Setup) {
			s.Drop.Body, s.Drop.DiameterMM, s.Material, s.Look = flip.UprightRod, 20, "crown-glass", layout.Straight
		}, "Glass rods, tubes"},
		{"ethanol, bent, a measured printer", "A4", func(s *layout.Setup) {
			s.Material, s.Look, s.Inches = "ethanol", layout.Straight, true
			s.Printer = &layout.Printer{Name: "study", Paper: s.Paper, AcrossScale: 0.99, FeedScale: 1.01,
				Margins: layout.Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 12}}
		}, "made for the printer measured as study"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := on(t, c.paper)
			s.DistanceMM, s.MaxSheets = 0, 1
			c.change(&s)
			j := jobOf(t, s)
			require.True(t, j.uncut())
			texts := pageTexts(worded(t, j))
			if HasRays(j.Plan) {
				require.Len(t, texts, 3)
				require.Contains(t, texts[2], raysTitle)
				require.NotContains(t, texts[2], "Cautions")
				require.Contains(t, texts[1], "Cautions")
			} else {
				require.Len(t, texts, 2)
			}
			require.Contains(t, strings.Join(texts, " "), c.says)
		})
	}
}
