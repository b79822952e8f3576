package guide

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// What the frame sees of the board, and how far the drop may travel, stand on the set-up page with the plan's figures.
func TestCoverageOnTheSetupPage(t *testing.T) {
	s := usual()
	all := strings.Join(pageTexts(worded(t, jobOf(t, s))), " ")
	// 72 x 48 mm at the drop, by a 100 mm lens 300 mm off; (300 + 400)/300 times as much at the board.
	require.Contains(t, all, "past it 168 × 112 mm at the board. No edge of the board shows.")
	require.Contains(t, all, "not at all up or down before the dark rim comes inside a fill of 85 %")

	s.Camera.LensMM, s.Camera.FrameWidthMM, s.TravelMM = 0, 400, 3
	j := jobOf(t, s)
	all = strings.Join(pageTexts(worded(t, j)), " ")
	edges := j.Plan.Coverage().Edges
	require.Len(t, edges, 4)
	require.Contains(t, all, fmt.Sprintf("shows at left and right, %.0f of %d pixels in", edges[0].AtPx, j.Plan.Camera.WidthPx))
	require.Contains(t, all, "Over the 3 mm that you asked for, ")
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
		"in the middle of a surround of the colour #203040",
		"at least 1240 mm × 840 mm",
		"600 mm from the print’s left edge and 400 mm below its upper edge",
		fmt.Sprintf("The dashed line is the picture’s edge, %.1f mm from the print’s left edge", (1200-j.Plan.Picture.WidthMM)/2),
	} {
		require.Contains(t, all, says)
	}
	requireEverySheet(t, j.Plan, pageTexts(doc))
	requireNoWordsOverlap(t, doc)
}
