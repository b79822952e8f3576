package guide

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// What the drop or rod is made of is named on the cover, among the things to get and at its place, and
// nothing is filled that is solid.
func TestMaterials(t *testing.T) {
	for _, c := range []struct {
		body     flip.Body
		material string
		says     []string
		not      []string
	}{
		{flip.Ball, "water", []string{"Drop A falling drop of water, 5 mm across",
			"Water, something that lets drops of it fall", "Drops of water, 5 mm across, fall at one place"},
			[]string{"rod", "tube"}},
		{flip.Ball, "sea-water", []string{"a falling drop of sea water", "Sea water, something"}, nil},
		{flip.Ball, "syrup-40", []string{"a falling drop of syrup of 40 % sugar"}, []string{"syrup-40"}},
		{flip.Ball, "crown-glass", []string{"Ball A ball of crown glass",
			"A ball of crown glass, 5 mm across, and a thin stand"}, []string{"falling", "drops of"}},
		{flip.Ball, "1.38", []string{"Drop A falling drop, 5 mm across", "A liquid of a refractive index of 1.333"},
			[]string{"of 1.38"}},
		{flip.Ball, "", []string{"Drop A falling drop, 5 mm across"}, nil}, // an old job file
		{flip.UprightRod, "crown-glass", []string{"Rod An upright rod of crown glass",
			"A rod of crown glass, 5 mm across, and a firm holder", "The rod of crown glass, 5 mm across, stands upright"},
			[]string{"filled", "tube", "falling"}},
		{flip.UprightRod, "acrylic", []string{"An upright rod of acrylic"}, []string{"filled", "tube"}},
		{flip.LevelRod, "water", []string{"A level glass tube filled with water",
			"A thin-walled glass tube filled with water and free of bubbles", "lies level"}, []string{"rod of water"}},
		{flip.LevelRod, "", []string{"A level glass rod or tube", "A glass rod or tube, 5 mm across, of a refractive " +
			"index of 1.333"}, []string{"filled"}},
	} {
		t.Run(fmt.Sprint(c.body, " of ", c.material), func(t *testing.T) {
			s := usual()
			s.Drop.Body, s.Material = c.body, c.material
			j := jobOf(t, s)
			all := strings.Join(pageTexts(opened(t, parts(j, (*book).overview, (*book).shopping, (*book).setup))), " ")
			for _, says := range c.says {
				require.Contains(t, strings.ToLower(all), strings.ToLower(says))
			}
			for _, not := range c.not {
				require.NotContains(t, strings.ReplaceAll(all, "dropsheet", ""), not)
			}
		})
	}
}

// parts draws some parts of a guide, each on new pages.
func parts(j Job, draw ...func(*book)) *book {
	b := newBook(j.document(), j, find(j), 1)
	for _, d := range draw {
		b.newPage()
		d(b)
	}
	return b
}

// A rod squeezes one way only; the cover says how much of the print the frame sees along it: the frame's
// side, seen on from the camera's distance to the board's, by similar triangles.
func TestCoverTellsWhatARodDoesNot(t *testing.T) {
	for _, c := range []struct {
		body flip.Body
		sees func(layout.Plan) float64
		of   func(layout.Plan) string
	}{
		{flip.UprightRod, func(p layout.Plan) float64 {
			return p.Camera.FrameHeightMM * (p.Drop.CameraMM + p.Drop.DistanceMM) / p.Drop.CameraMM
		},
			func(p layout.Plan) string { return fmt.Sprintf("a print that is %.1f mm high", p.Backdrop.HeightMM) }},
		{flip.LevelRod, func(p layout.Plan) float64 {
			return p.Camera.FrameWidthMM * (p.Drop.CameraMM + p.Drop.DistanceMM) / p.Drop.CameraMM
		},
			func(p layout.Plan) string { return fmt.Sprintf("a print that is %.1f mm wide", p.Backdrop.WidthMM) }},
	} {
		s := usual()
		s.Drop.Body, s.Drop.DiameterMM, s.CameraMM = c.body, 20, 310
		j := jobOf(t, s)
		texts := pageTexts(worded(t, j))
		require.Contains(t, texts[0], "squeezed across the rod only")
		require.Contains(t, texts[0], fmt.Sprintf("the middle %.1f mm of %s", c.sees(j.Plan), c.of(j.Plan)))
		seams := texts[pageWith(t, texts, "Where the seams fall Each")-1]
		require.NotContains(t, seams, "bent")
		require.NotContains(t, seams, "bend")
	}
	s := usual()
	s.Drop.Body, s.Drop.DiameterMM, s.Camera.LensMM, s.Camera.FrameWidthMM = flip.UprightRod, 20, 0, 900
	require.Contains(t, pageTexts(worded(t, jobOf(t, s)))[0], "the frame sees all of the print")
	require.NotContains(t, pageTexts(worded(t, jobOf(t, usual())))[0], "squeezed across")
}

// A single sheet has no seams, and its guide does not speak of any.
func TestSingleSheetHasNoSeams(t *testing.T) {
	for _, lamps := range [][]layout.Lamp{nil, {{XMM: -300, YMM: -200, ZMM: 400}}} {
		s := usual()
		s.DistanceMM, s.Lamps = 60, lamps
		j := jobOf(t, s)
		require.Len(t, j.Plan.Sheets, 1)
		doc := worded(t, j)
		all := strings.ToLower(strings.Join(pageTexts(doc), " "))
		all = strings.ReplaceAll(all, "seams.png", "")
		for _, word := range []string{"seam", "neighbour", "landing", " lap", "registration", "order of pasting",
			"in a row", " c1 ", "page 1 ", "cut mark", "strip", "glue", "knife", "pencil"} {
			if at := strings.Index(all, word); at >= 0 {
				require.Failf(t, "a word of jobs with seams", "%q in %q", word, all[max(0, at-60):min(len(all), at+60)])
			}
		}
		require.Contains(t, all, "hangs uncut")
	}
}

// Up to 25 sheets the drawing of the order numbers each, in six points at least; beyond that only the first,
// and arrows tell the rest.
func TestOrderIsDrawnLegibly(t *testing.T) {
	for _, c := range []struct {
		paper  string
		sheets int
		uneven bool
	}{{"A4", 25, false}, {"A4", 20, false}, {"A4", 12, true}, {"letter", 24, false}, {"A5", 9, false}, {"A4", 30, false},
		{"A4", 64, false}, {"A4", 300, false}} {
		s := on(t, c.paper)
		s.DistanceMM, s.MaxSheets = 0, c.sheets
		if c.uneven { // the largest print of so many sheets leaves the seams no play, this one does
			s.DistanceMM, s.MaxSheets, s.Orientation = 372, 0, layout.Landscape
		}
		j := jobOf(t, s)
		if c.uneven { // as narrow as a cell may be
			placed, err := j.Plan.WithSeams(pinched(j.Plan), nil)
			require.NoError(t, err)
			j = jobOfPlan(placed.Plan)
			require.Less(t, narrowestMM(j.Plan), 60.0)
		}
		doc := opened(t, parts(j, (*book).order))
		var numbers []string
		for page := 1; page <= doc.PageCount(); page++ {
			for _, l := range doc.Letters(page) {
				if strings.Trim(l.Text, "0123456789") == "" && l.Text != "" {
					// Digits of the Go fonts are 0.72 of their size high (4 and 7, the lowest, by their bounds in the files).
					require.Greater(t, l.TopPt-l.BottomPt, 0.65*6*0.99*newGeometry(j.paper(), 1).scale, "%v on %s with %d sheets",
						l, c.paper, len(j.Plan.Sheets))
				}
			}
			numbers = append(numbers, strings.Fields(flat(doc.Text(page)))...)
		}
		for n := 2; n <= len(j.Plan.Sheets); n++ {
			if len(j.Plan.Sheets) <= 25 {
				require.Contains(t, numbers, fmt.Sprint(n))
			} else {
				require.NotContains(t, numbers, fmt.Sprint(n))
			}
		}
	}
}
