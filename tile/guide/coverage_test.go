package guide

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// What the frame sees of the board, and how far the drop may travel, stand on the set-up page with the plan's figures.
func TestCoverageOnTheSetupPage(t *testing.T) {
	s := usual()
	all := strings.Join(pageTexts(worded(t, jobOf(t, s))), " ")
	// 72 x 48 mm at the drop, by a 100 mm lens 300 mm off; (300 + 400)/300 times as much at the board.
	require.Contains(t, all, "Past the drop the frame takes in 168 × 112 mm at the board, 3.6 % of the backdrop. "+
		"No edge of the board shows.")
	require.Contains(t, all, "to either side before the rim that looks past the board comes inside a fill of 85 %. "+
		"Up or down it may not "+
		"stray at all")

	s.Camera.LensMM, s.Camera.FrameWidthMM, s.TravelMM = 0, 400, 3
	j := jobOf(t, s)
	all = strings.Join(pageTexts(worded(t, j)), " ")
	edges := shot.Of(j.Plan).Coverage().Edges
	require.Len(t, edges, 4)
	require.Contains(t, all, fmt.Sprintf("The board’s edge shows: left and right at x = %.0f and %.0f pixels",
		edges[0].AtPx, edges[1].AtPx))
	require.Contains(t, all, "Over the 3 mm each way that you asked for, only a fill of ")
}

// Words of the key figures and the set-up page that depend on what the picture leaves of the board and the frame.
func TestWordsOfWhatIsNotPrinted(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		says   []string
		not    []string
	}{
		{"round, on a background", func(s *layout.Setup) {
			s.Framing.Round, s.Proportions, s.Fill, s.DistanceMM, s.Background = true, 1, 0.95, 300, "#000000"
		},
			[]string{"What the picture leaves of the backdrop is black.", "an even 5 % of the drop’s visible radius",
				"the picture still fills 95 % of the drop",
				"The drop may not stray off the axis: the edge of the print would show, since the print ends where the fill does."},
			[]string{"Beyond the picture the backdrop goes on", "fills 95 % or", "stray at all",
				"The print ends inside the frame"}},
		{"on one side of the axis", func(s *layout.Setup) {
			s.Look, s.Fit, s.Framing.OffX, s.Proportions, s.DistanceMM = layout.Straight, layout.Inside, -0.4, 1, 300
		},
			[]string{"The print ends inside the frame: ", "42 % of what the frame sees past the drop is not printed.",
				"To either side it may not stray at all: the edge of the print would show, since the print ends where the " +
					"fill does."}, nil},
		{"a square inside", func(s *layout.Setup) { s.Fit, s.Proportions = layout.Inside, 1 },
			[]string{"The drop may not stray off the axis: the picture’s edge would show, since the board ends where " +
				"the fill does."}, []string{"stray at all"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := usual()
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

// A board with a surround: its size counts for the board to buy, and the picture's place on it is told and drawn.
func TestSurroundedBoard(t *testing.T) {
	s := usual()
	s.Surround, s.SurroundSize = "#203040", layout.Size{WidthMM: 1200, HeightMM: 800}
	j := jobOf(t, s)
	doc := worded(t, j)
	all := strings.Join(pageTexts(doc), " ")
	for _, says := range []string{
		"make a backdrop of 1200 × 800 mm",
		"Beyond the picture the backdrop goes on in #203040, to 1200 × 800 mm",
		"at least 1240 × 840 mm",
		"600 mm from the print’s left edge and 400 mm below its upper edge",
		fmt.Sprintf("The dashed line is the picture’s edge. The picture begins %.1f mm from the print’s left edge",
			(1200-j.Plan.Picture.WidthMM)/2),
	} {
		require.Contains(t, all, says)
	}
	requireEverySheet(t, j.Plan, pageTexts(doc))
	requireNoWordsOverlap(t, doc)
}
