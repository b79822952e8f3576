package guide

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// Where cells have no sheet, no word of the guide names one, the count of pages is that of the sheets, and it
// is said once why.
func TestNoSheetIsNamedThatIsNot(t *testing.T) {
	names := regexp.MustCompile(`R\d+C\d+`)
	for _, c := range []struct {
		name   string
		paper  string
		change func(*layout.Setup)
	}{
		{"straight", "A5", func(s *layout.Setup) { s.Look, s.Proportions, s.DistanceMM = layout.Straight, 1, 700 }},
		{"turned", "A4", func(s *layout.Setup) { s.Fit, s.DistanceMM, s.Framing.TurnDeg = layout.Inside, 700, 20 }},
		{"turned by half a right angle, lamp at the bottom right", "A4", func(s *layout.Setup) {
			s.Fit, s.Proportions, s.DistanceMM, s.Framing.TurnDeg, s.LightFrom = layout.Inside, 1, 1200, 45, layout.BottomRight
		}},
		{"a column bare", "A4", func(s *layout.Setup) {
			s.Fit, s.Framing.OffX, s.Framing.OffY, s.LightFrom = layout.Inside, 0.3, -0.2, layout.TopRight
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := on(t, c.paper)
			c.change(&s)
			j := jobOf(t, s)
			cells := j.Plan.Backdrop.Columns * j.Plan.Backdrop.Rows
			require.Less(t, len(j.Plan.Sheets), cells)
			all := strings.Join(pageTexts(worded(t, j)), " ")
			there := map[string]bool{}
			for _, s := range j.Plan.Sheets {
				there[s.Name] = true
			}
			named := map[string]bool{}
			for _, name := range names.FindAllString(all, -1) {
				require.True(t, there[name], "%s is named and does not exist", name)
				named[name] = true
			}
			require.Equal(t, there, named, "and each that exists is")
			require.Equal(t, 1, strings.Count(all, "Cells without picture have no sheet"))
			require.Contains(t, all, fmt.Sprintf("%d of the %d cells carry picture", len(j.Plan.Sheets), cells))
			require.Contains(t, all, fmt.Sprintf("Open sheets.pdf: %d pages", len(j.Plan.Sheets)))
			require.Contains(t, all, "Cells without a sheet are passed over")
			require.Contains(t, all, "A lap without landing ticks lies toward a cell that has no sheet")
			require.Contains(t, all, "Begin with "+j.Plan.Sheets[0].Name)
		})
	}
	all := strings.Join(pageTexts(worded(t, jobOf(t, usual()))), " ")
	for _, word := range []string{"no sheet", "without a sheet", "passed over", "lap without"} {
		require.NotContains(t, all, word)
	}
}

// On the drawing of the board a cell without a sheet is grey, not picture, and the picture lies as it hangs:
// turned by half a turn.
func TestBareCellsAreDrawnBare(t *testing.T) {
	s := usual()
	s.Fit, s.DistanceMM, s.Framing.TurnDeg = layout.Inside, 700, 20
	j := jobOf(t, s)
	doc := written(t, j)
	img := doc.Render(pageWith(t, pageTexts(doc), "The board as it must hang Seen"), 50)
	img = boardOnly(img)
	greyX, greyY := centroid(t, img, bareShade.R, bareShade.G, bareShade.B)
	require.InDelta(t, float64(img.Rect.Dx())/2, greyX, 12, "two bare cells across from each other")
	redX, redY := centroid(t, img, red.R, red.G, red.B)
	yellowX, yellowY := centroid(t, img, yellow.R, yellow.G, yellow.B)
	require.InDelta(t, (redX+yellowX)/2, greyX, 12)
	require.InDelta(t, (redY+yellowY)/2, greyY, 12)
	require.Greater(t, redX, yellowX+10)
	require.Greater(t, redY, yellowY+20)
}

// boardOnly is what a page shows from the picture's first colour to its last, each way: no words around it.
func boardOnly(page *image.RGBA) *image.RGBA {
	var at image.Rectangle
	for y := range page.Rect.Dy() {
		for x := range page.Rect.Dx() {
			if c := page.RGBAAt(x, y); max(c.R, c.G, c.B)-min(c.R, c.G, c.B) > 200 { // no other ink is as strong
				at = at.Union(image.Rect(x, y, x+1, y+1))
			}
		}
	}
	board := image.NewRGBA(image.Rect(0, 0, at.Dx(), at.Dy()))
	draw.Draw(board, board.Rect, page, at.Min, draw.Src)
	return board
}

// The overview says how the picture will look and what of it comes where.
func TestLookIsTold(t *testing.T) {
	for _, c := range []struct {
		name      string
		change    func(*layout.Setup)
		says, not []string
	}{
		{"bulged", func(*layout.Setup) {}, []string{"Look Bulged: the print is not bent, and the picture looks wrapped " +
			"round the drop, squeezed toward its rim."}, []string{"Straight", "Turn In", "On the axis", "mm wide and",
			"bent too"}},
		{"straight", func(s *layout.Setup) { s.Look = layout.Straight }, []string{
			"Look Straight: the print is bent beforehand, so that the picture appears in the drop just as drawn. That holds " +
				"for this distance, this camera distance and this shape of the drop.",
			"It looks bent too: it is drawn out toward its edge",
		}, []string{"Bulged"}},
		{"share", func(s *layout.Setup) { s.Look = 0.25 }, []string{"0.25 of the way from bulged to straight"}, nil},
		{"turned", func(s *layout.Setup) { s.Framing.TurnDeg = -20 }, []string{"turned by 20° counter-clockwise",
			"The board looks turned by half a turn when it hangs, against the picture in the drop."},
			[]string{"bent too", "upside down"}},
		{"moved", func(s *layout.Setup) { s.Framing.OffX, s.Framing.OffY = 0.125, -0.2 },
			[]string{"the point 62.5 % of its width from its left and 30 % of its height from its top"}, nil},
		{"round", func(s *layout.Setup) { s.Framing.Round = true },
			[]string{"Only the circle that touches the picture’s shorter sides is printed"}, nil},
		// A ball of 5 mm pressed to 0.85: 5/0.85^(1/3) = 5.28 mm wide, 0.85 of that high.
		{"oblate", func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.85 },
			[]string{"5.28 mm wide and 4.49 mm high (as much as a ball 5 mm across)"}, nil},
		{"straight rod", func(s *layout.Setup) {
			s.Look, s.Drop.Body, s.Drop.DiameterMM = layout.Straight, flip.UprightRod, 20
		}, []string{"mirrored left to right when it hangs", "It looks bent too", "not along; the print makes up for that."},
			[]string{"stretched"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := usual()
			c.change(&s)
			text := pageTexts(opened(t, parts(jobOf(t, s), (*book).overview)))[0]
			for _, says := range c.says {
				require.Contains(t, text, says)
			}
			for _, not := range c.not {
				require.NotContains(t, text, not)
			}
		})
	}
}

// Both looks stand side by side, bulged at the left, and the one that is printed is marked.
func TestBothLooks(t *testing.T) {
	for _, c := range []struct {
		look  layout.Look
		marks string
	}{{layout.Bulged, "wrapped round the drop. This job prints this one. straight:"},
		{layout.Straight, "just as drawn. This job prints this one."},
		{0.5, "This job prints neither: the print is bent beforehand, 0.5 of the way from bulged to straight."}} {
		for _, paper := range []string{"A4", "A6"} {
			s := on(t, paper)
			s.Look, s.DistanceMM = c.look, 90
			j := jobOf(t, s)
			j.Looks[0], j.Looks[1] = tinted(red), tinted(blue)
			doc := opened(t, parts(j, (*book).bothLooks))
			require.Contains(t, strings.Join(pageTexts(doc), " "), c.marks)
			require.Contains(t, pageTexts(doc)[0], "bulged: printed without bending")
			requireNoWordsOverlap(t, doc)
		}
	}
	s := usual()
	s.DistanceMM = 150
	j := jobOf(t, s)
	require.NotContains(t, strings.Join(pageTexts(worded(t, j)), " "), "Bulged and straight")
	j.Looks[1] = tinted(blue)
	require.ErrorContains(t, Write(io.Discard, j), "one is missing")
	j.Looks[0] = tinted(red)
	doc := written(t, j)
	texts := pageTexts(doc)
	require.Contains(t, texts[0], "1 Bulged and straight 2")
	img := doc.Render(pageWith(t, texts, "1 Bulged and straight The same"), 50)
	redX, redY := centroid(t, img, red.R, red.G, red.B)
	blueX, blueY := centroid(t, img, blue.R, blue.G, blue.B)
	require.Less(t, redX+50, blueX)
	require.InDelta(t, redY, blueY, 1)
}

// tinted is a square of one colour.
func tinted(c color.RGBA) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, 60, 60))
	draw.Draw(img, img.Rect, image.NewUniform(c), image.Point{}, draw.Src)
	return img
}
