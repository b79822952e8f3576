package sheet

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/layout"
)

// A label names the job in the letters of its name, as far as there are any.
func TestLabelsNameTheJob(t *testing.T) {
	for _, c := range []struct{ name, job, shows string }{
		{"cp1252", "Hafen – häßlich €", "Hafen – häßlich €"},
		{"Cyrillic", "Гавань в сумерках", "Гавань в сумерках"},
		{"Greek", "Λιμάνι 7", "Λιμάνι 7"},
		{"Czech", "přístav", "přístav"},
		{"Chinese", "港 dusk", "? dusk"},
		{"Cyrillic and Chinese", "Порт 港", "Порт ?"},
		{"longer than the strip", strings.Repeat("Гавань ", 30), ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			shown, _ := labelled(t, c.job)
			require.Equal(t, c.shows, shown)
		})
	}
}

// A name that fits just about is there, and one a letter longer is left out whole: it is measured in the font
// that it is set in.
func TestLabelsFit(t *testing.T) {
	for _, letter := range []string{"W", "Щ"} {
		t.Run(letter, func(t *testing.T) {
			most, rightMM := 0, 0.0
			for n := 1; ; n++ {
				shown, endMM := labelled(t, strings.Repeat(letter, n))
				if shown == "" {
					break
				}
				require.Equal(t, strings.Repeat(letter, n), shown)
				most, rightMM = n, endMM
			}
			j := flatJob(t, nil)
			strip := j.Plan.Backdrop.OnPage(j.Plan.Sheets[0]).Cell.RightMM() - labelInsetMM
			require.Greater(t, most, 20)
			require.LessOrEqual(t, rightMM, strip)
			require.Greater(t, rightMM, strip-2.5, "no letter of that size is wider")
		})
	}
}

// labelled writes a sheet of a job of that name, and returns what of the name is on its label and where that ends.
func labelled(t *testing.T, name string) (shown string, endMM float64) {
	t.Helper()
	j := flatJob(t, nil)
	j.Label.Job = name
	doc := write(t, j, j.Plan.Sheets[:1])
	_, after, found := strings.Cut(doc.Text(1), "check 4F2A91")
	require.True(t, found)
	shown, _, found = strings.Cut(after, "100 mm") // the check rule
	require.True(t, found)
	for _, l := range doc.Letters(1) {
		endMM = max(endMM, units.PointsToMM(l.RightPt))
	}
	return strings.TrimSpace(shown), endMM
}

// On a small sheet the words beside the arrow go before the check code does, and where not even that helps, the sheet
// is known not to show it.
func TestSmallSheetsKeepTheCode(t *testing.T) {
	for _, c := range []struct {
		paper          string
		words, code    bool
		marginMM, cell float64 // the cell's width, by hand: paper less margins, strip and lap
	}{
		{"A5", true, true, 5, 148 - 10 - 6 - 10},
		{"A7", false, true, 5, 74 - 10 - 6 - 10},
		{"50x74mm", false, false, 3, 50 - 6 - 6 - 10},
	} {
		t.Run(c.paper, func(t *testing.T) {
			j := flatJob(t, func(s *layout.Setup) {
				s.Paper, _ = layout.ParsePaper(c.paper)
				s.Orientation, s.MaxSheets, s.DistanceMM, s.Proportions, s.MarginMM = layout.Portrait, 9, 0, 0.68, c.marginMM
			})
			s := j.Plan.Sheets[0]
			require.InDelta(t, c.cell, s.Cell.WidthMM, 2)
			j.Label.Job = "7"
			text := write(t, j, j.Plan.Sheets[:1]).Text(1)
			require.Contains(t, text, s.Name)
			require.Equal(t, c.words, strings.Contains(text, "board up"))
			require.Equal(t, c.code, strings.Contains(text, "check 4F2A91"))
			require.Equal(t, c.code, ShowsCode(j.Plan, s, j.Label))
		})
	}
}
