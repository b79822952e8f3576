package guide

import (
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/seammap"
)

// Both panels of the seam map are shown whole, large enough to read, on the page's own white, and every line
// of its key is explained.
func TestSeamMapPanels(t *testing.T) {
	for _, c := range []struct {
		name, paper string
		change      func(*layout.Setup)
	}{
		{"A4", "A4", func(*layout.Setup) {}},
		{"tall, on A4", "A4", func(s *layout.Setup) { s.Proportions, s.DistanceMM = 0.4, 200 }},
		{"wide, on letter", "letter", func(s *layout.Setup) { s.Proportions, s.DistanceMM = 4, 200 }},
		{"rod, on A5", "A5", func(s *layout.Setup) { s.Drop.Body, s.Drop.DiameterMM, s.DistanceMM = flip.LevelRod, 20, 250 }},
		{"A6", "A6", func(s *layout.Setup) { s.DistanceMM = 90 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := on(t, c.paper)
			c.change(&s)
			j := jobOf(t, s)
			panels := seammap.Find(j.Plan)
			// The board's panel is red, the drop's green, and all else of the map blue, which must not show;
			// each has a white rim.
			m := image.NewRGBA(panels.Map)
			draw.Draw(m, m.Rect, image.NewUniform(blue), image.Point{}, draw.Src)
			for _, p := range []struct {
				at  image.Rectangle
				ink color.RGBA
			}{{panels.Board, red}, {panels.Drop, green}} {
				draw.Draw(m, p.at, image.White, image.Point{}, draw.Src)
				draw.Draw(m, p.at.Inset(40), image.NewUniform(p.ink), image.Point{}, draw.Src)
			}
			var err error
			j.SeamMap, err = PackSeamMap(j.Plan, m)
			require.NoError(t, err)
			doc := written(t, j)
			texts := pageTexts(doc)
			first := pageWith(t, texts, "Where the seams fall Each")
			pages := strings.Join(texts[first-1:min(first+1, len(texts))], " ")
			for _, line := range panels.Key {
				require.Contains(t, pages, flat(line.Text))
			}
			const dpi = 72
			seen := map[string]image.Rectangle{}
			for page := first; page <= min(first+1, doc.PageCount()); page++ {
				img := doc.Render(page, dpi)
				for y := range img.Rect.Dy() {
					for x := range img.Rect.Dx() {
						name := ""
						switch c := img.RGBAAt(x, y); {
						case c.R > 200 && c.G < 60 && c.B < 60:
							name = "board"
						case c.G > 200 && c.R < 60 && c.B < 60:
							name = "drop"
						case c.B > 200 && c.R < 60 && c.G < 60:
							require.Fail(t, "more of the map shows than its panels", "page %d at %d, %d", page, x, y)
						default:
							continue
						}
						seen[name] = seen[name].Union(image.Rect(x, y, x+1, y+1))
					}
				}
			}
			for name, panel := range map[string]image.Rectangle{"board": panels.Board, "drop": panels.Drop} {
				got, want := seen[name], panel.Inset(40)
				perPx := float64(got.Dx()) / float64(want.Dx()) / dpi * 25.4 / newGeometry(j.paper(), 1).scale
				require.InDelta(t, float64(got.Dx())/float64(got.Dy()), float64(want.Dx())/float64(want.Dy()), 0.05, "%s %v",
					name, got)
				// The map's text is 27 pixels high: at 0.08 mm a pixel 6 points, at 0.12 mm 9 points.
				require.Greater(t, perPx, 0.08, "%s at %v", name, got)
				require.Less(t, perPx, 0.13, fmt.Sprint(name))
			}
		})
	}
}
