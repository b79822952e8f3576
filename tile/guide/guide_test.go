package guide

import (
	"fmt"
	"image"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
)

// Every kind of job: the pages are those of the guide's own paper, upright; each sheet stands in the table with
// its page and corners; the contents list tells the true pages; nothing is printed in the outer 8 mm; no words run into
// others.
func TestEveryKindOfJob(t *testing.T) {
	guides := map[string]string{ // those of them whose guide comes on a paper of its own
		"A5, lamp at the bottom right": "A5", "four lamps, two above two, on A5, levelled": "A5", "postcards": "A6",
		"300 sheets of A5": "A5", "A2, level rod, lamp at the bottom left": "A2", "a strip of paper": "100x900mm",
		"straight, corner cells bare": "A5", "drop drawn long, straight": "A6",
	}
	for _, c := range []struct {
		name   string
		paper  string
		change func(*layout.Setup)
		sheets int // at least
	}{
		{"A4", "A4", func(*layout.Setup) {}, 15},
		{"A5, lamp at the bottom right", "A5", func(s *layout.Setup) {
			s.LightFrom, s.DistanceMM = layout.BottomRight,
				250
		}, 8},
		{"letter, sheets landscape, lamp at the top right", "letter",
			func(s *layout.Setup) { s.LightFrom, s.Orientation = layout.TopRight, layout.Landscape }, 12},
		{"A2, level rod, lamp at the bottom left", "A2", func(s *layout.Setup) {
			s.LightFrom, s.Drop.Body, s.DistanceMM = layout.BottomLeft, flip.LevelRod, 900
		}, 12},
		{"upright rod", "A4", func(s *layout.Setup) { s.Drop.Body, s.Drop.DiameterMM = flip.UprightRod, 20 }, 6},
		{"one sheet", "A4", func(s *layout.Setup) { s.DistanceMM = 60 }, 1},
		{"one row", "A5", func(s *layout.Setup) { s.Proportions, s.DistanceMM = 9, 40 }, 3},
		{"one column", "A4", func(s *layout.Setup) { s.Proportions, s.DistanceMM = 0.11, 60 }, 3},
		{"over 300 sheets", "A4", func(s *layout.Setup) { s.DistanceMM = 2100 }, 300},
		{"300 sheets of A5", "A5", func(s *layout.Setup) { s.DistanceMM = 1450 }, 300},
		{"postcards", "A6", func(s *layout.Setup) { s.DistanceMM = 90 }, 4},
		{"a strip of paper", "100x900mm", func(s *layout.Setup) { s.DistanceMM = 90 }, 2},
		{"wide margins", "A4", func(s *layout.Setup) { s.MarginMM = 60 }, 15},
		{"a lamp from the side", "A4", func(s *layout.Setup) { s.Lamps = []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}} },
			15},
		{"four lamps, two above two, on A5, levelled", "A5", func(s *layout.Setup) {
			s.DistanceMM, s.Level = 250, true
			s.Lamps = []layout.Lamp{{XMM: -900, YMM: -300, ZMM: 900}, {XMM: -900, YMM: 300, ZMM: 900},
				{XMM: 900, YMM: -300, ZMM: 900}, {XMM: 900, YMM: 300, ZMM: 900}}
		}, 8},
		{"lamps at the axis, in the view and behind the camera, on postcards", "A6", func(s *layout.Setup) {
			s.DistanceMM = 90
			s.Lamps = []layout.Lamp{{XMM: 0, YMM: 0, ZMM: 900}, {XMM: 3, YMM: 5, ZMM: 200}, {XMM: 20, YMM: 0, ZMM: 40},
				{XMM: 500, YMM: 0, ZMM: 2}}
		}, 4},
		{"straight, corner cells bare", "A5", func(s *layout.Setup) {
			s.Look, s.Proportions, s.DistanceMM = layout.Straight,
				1, 700
		}, 30},
		{"turned, corner cells bare", "A4", func(s *layout.Setup) {
			s.Fit, s.DistanceMM, s.LightFrom, s.Framing.TurnDeg = layout.Inside, 700, layout.BottomRight, 20
		}, 18},
		{"off the axis, a column bare, one lamp", "A4", func(s *layout.Setup) {
			s.Fit, s.Framing.OffX, s.Framing.OffY, s.Lamps = layout.Inside, 0.3, -0.2,
				[]layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900}}
		}, 4},
		{"straight upright rod", "A4", func(s *layout.Setup) {
			s.Look, s.Drop.Body, s.Drop.DiameterMM, s.DistanceMM = layout.Straight, flip.UprightRod, 40, 600
		}, 2},
		{"round, in a surround, half straight", "letter", func(s *layout.Setup) {
			s.Look, s.Framing.Round, s.Surround, s.SurroundSize = 0.5, true, "#203040", layout.Size{WidthMM: 900, HeightMM: 700}
		}, 12},
		{"drop pressed flat", "A4", func(s *layout.Setup) { s.Drop.HeightOverWidth = 0.85 }, 8},
		{"drop drawn long, straight", "A6", func(s *layout.Setup) {
			s.Drop.HeightOverWidth, s.Look, s.DistanceMM = 1.2,
				layout.Straight, 90
		}, 2},
		{"a sheet of A0", "A0", func(s *layout.Setup) { s.DistanceMM = 900 }, 2},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := on(t, c.paper)
			c.change(&s)
			j := jobOf(t, s)
			require.GreaterOrEqual(t, len(j.Plan.Sheets), c.sheets)
			want := "A4"
			if c.paper == "letter" {
				want = "letter"
			}
			if asked, ok := guides[c.name]; ok {
				want = asked
				j.Paper, _ = layout.ParsePaper(asked)
			}
			paper, err := layout.ParsePaper(want)
			require.NoError(t, err)
			doc := worded(t, j)
			for page := 1; page <= doc.PageCount(); page++ {
				w, h := doc.PageSizePoints(page)
				require.InDelta(t, paper.WidthMM/25.4*72, w, 0.01)
				require.InDelta(t, paper.HeightMM/25.4*72, h, 0.01)
				requireWhiteMargins(t, doc.Render(page, 40), 40, page)
			}
			texts := pageTexts(doc)
			requireEverySheet(t, j.Plan, texts)
			requireContents(t, texts, len(j.Plan.Sheets) == 1)
			for i, text := range texts {
				require.Contains(t, text, fmt.Sprintf("%d / %d", i+1, len(texts)))
				require.Contains(t, text, "Quay at dusk")
				require.Contains(t, text, "check code 7F3A2C")
			}
			requireNoWordsOverlap(t, doc)
		})
	}
}

// requireWhiteMargins fails if anything is drawn within 8 mm of a page's edge.
func requireWhiteMargins(t *testing.T, img *image.RGBA, dpi float64, page int) {
	t.Helper()
	margin := int(8 / 25.4 * dpi)
	b := img.Bounds()
	inner := b.Inset(margin)
	for y := b.Min.Y; y < b.Max.Y; y++ {
		for x := b.Min.X; x < b.Max.X; x++ {
			if (image.Point{X: x, Y: y}).In(inner) {
				x = inner.Max.X - 1
				continue
			}
			if c := img.RGBAAt(x, y); c.R != 255 || c.G != 255 || c.B != 255 {
				t.Fatalf("page %d prints in its margin, at pixel %d, %d of %v", page, x, y, b.Max)
			}
		}
	}
}

// requireEverySheet looks for each sheet's row of the table: page, name, left, top, right, bottom.
func requireEverySheet(t *testing.T, p layout.Plan, texts []string) {
	t.Helper()
	all := strings.Join(texts, " ")
	if len(p.Sheets) == 1 { // it is the whole print
		return
	}
	for _, s := range p.Sheets {
		require.Contains(t, all, fmt.Sprintf("%d %s %.1f %.1f %.1f %.1f", s.Page, s.Name, s.Cell.XMM, s.Cell.YMM,
			s.Cell.XMM+s.Cell.WidthMM, s.Cell.YMM+s.Cell.HeightMM))
	}
}

// requireContents checks that each section starts on the page that the contents list gives.
func requireContents(t *testing.T, texts []string, single bool) {
	t.Helper()
	if single { // a guide so short needs none
		all := strings.Join(texts, " ")
		require.NotContains(t, all, "In this guide")
		for _, title := range []string{"1 Printing", "2 Setting up", "3 Cautions"} {
			require.Contains(t, all, title)
		}
		return
	}
	opening := texts[0]
	if !strings.Contains(opening, "In this guide") {
		opening = texts[1]
	}
	require.Contains(t, opening, "In this guide")
	titles := []string{"What to buy", "Setting up", "Sharpness and exposure", "Light", "Printing",
		"The board as it must hang", "The pencil grid", "The order of pasting",
		"Cutting and pasting one sheet", "If a sheet is spoiled", "Where the seams fall", "Cautions"}
	if strings.Contains(opening, raysTitle) { // of a rod
		titles = slices.Insert(titles, 2, raysTitle)
	}
	for i, title := range titles {
		entry := regexp.MustCompile(fmt.Sprintf(`\b%d %s (\d+)`, i+1, title)).FindStringSubmatch(opening)
		require.NotNil(t, entry, "%q is not in the contents: %s", title, opening)
		page, err := strconv.Atoi(entry[1])
		require.NoError(t, err)
		require.LessOrEqual(t, page, len(texts))
		require.Contains(t, texts[page-1], fmt.Sprintf("%d %s", i+1, title))
	}
}

func TestSameJobSameBytes(t *testing.T) {
	j := jobOf(t, usual())
	require.Equal(t, bytesOf(t, j), bytesOf(t, j))
}

// What the board must look like is said for each body, and the picture on it is laid down that way: where the
// artwork's top-left quarter comes to lie follows from what a ball, an upright rod and a level rod reverse. A
// lens's real image is reversed both ways, a cylinder lens's only across its axis (Hecht, Optics, 5.2, recalled
// from memory).
func TestTheBoardHangsAsTheDropAsks(t *testing.T) {
	for _, c := range []struct {
		name         string
		body         flip.Body
		says         string
		right, below bool // where the artwork's top-left quarter lies on the board
	}{
		{"ball", flip.Ball, "upside down", true, true},
		{"upright rod", flip.UprightRod, "mirrored left to right", true, false},
		{"level rod", flip.LevelRod, "mirrored top to bottom", false, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := usual()
			s.Drop.Body = c.body
			doc := written(t, jobOf(t, s))
			texts := pageTexts(doc)
			says := "The board looks " + c.says + " when it hangs"
			require.Contains(t, texts[0], says)
			page := pageWith(t, texts, "The board as it must hang Seen")
			require.Contains(t, texts[page-1], says)
			for _, other := range []string{"upside down", "mirrored left to right", "mirrored top to bottom"} {
				if other != c.says {
					require.NotContains(t, strings.Join(texts, " "), other)
				}
			}
			img := doc.Render(page, 50)
			redX, redY := centroid(t, img, red.R, red.G, red.B)
			yellowX, yellowY := centroid(t, img, yellow.R, yellow.G, yellow.B)
			require.Equal(t, c.right, redX > yellowX+20, "red at %.0f, yellow at %.0f", redX, yellowX)
			require.Equal(t, !c.right, redX < yellowX-20)
			require.Equal(t, c.below, redY > yellowY+20, "red at %.0f, yellow at %.0f", redY, yellowY)
			require.Equal(t, !c.below, redY < yellowY-20)
		})
	}
}

// centroid is the middle of all pixels near a colour.
func centroid(t *testing.T, img *image.RGBA, r, g, b uint8) (x, y float64) {
	t.Helper()
	near := func(v, w uint8) bool { return math.Abs(float64(v)-float64(w)) < 24 }
	n := 0.0
	for j := range img.Rect.Dy() {
		for i := range img.Rect.Dx() {
			if c := img.RGBAAt(i, j); near(c.R, r) && near(c.G, g) && near(c.B, b) {
				x, y, n = x+float64(i), y+float64(j), n+1
			}
		}
	}
	require.Greater(t, n, 100.0, "hardly any pixel is near %d, %d, %d", r, g, b)
	return x / n, y / n
}

// Figures that the guide must give, from the plan, worked out again here.
func TestFiguresAreThePlans(t *testing.T) {
	j := jobOf(t, usual())
	all := strings.Join(pageTexts(worded(t, j)), " ")
	p := j.Plan
	one := func(mm float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", mm), ".0") }
	rim := shot.Of(p).DarkRim()
	for _, says := range []string{
		"15 sheets of A4",
		one(p.Picture.WidthMM) + " × " + one(p.Picture.HeightMM) + " mm",
		"180 pixels to the inch",
		"400 mm from the middle of the drop to the printed side",
		"300 mm from the lens’s entrance pupil",
		one(p.Picture.ReachMM) + " mm from the axis, traced exactly",
		"simple lens formula would give " + one(p.Picture.NearAxisReachMM) + " mm",
		one(100*rim.AcrossShare) + " % of the drop’s visible radius at the backdrop’s left and right",
		"The print hardly depends on the drop’s size",
		"both diagonals measure " + one(math.Sqrt(p.Picture.WidthMM*p.Picture.WidthMM+
			p.Picture.HeightMM*p.Picture.HeightMM)) + " mm",
		"dropsheet reprint <folder> R2C",
		"go run ./cmd/dropsheet reprint <folder> R2C",
		"--artwork",
		"dark room", "black cloth",
		"Not to scale",
		"upside down",
	} {
		require.Contains(t, all, says)
	}
}

// A drop that is large against its distance does change the fill, and the guide must not say otherwise.
func TestTheDropsSizeMattersUpClose(t *testing.T) {
	s := usual()
	s.Drop.DiameterMM, s.DistanceMM = 80, 200
	j := jobOf(t, s)
	change := math.Abs(shot.Of(j.Plan).Sensitivity().DropLargerFill - j.Plan.Picture.Fill)
	require.Greater(t, change, 0.01)
	all := strings.Join(pageTexts(worded(t, j)), " ")
	require.Contains(t, all, "The drop’s size matters here")
	require.NotContains(t, all, "hardly depends")
}

func TestCautionsNameEveryDanger(t *testing.T) {
	s := usual()
	s.Material, s.DistanceMM = "ethanol", 500
	for _, rod := range []bool{false, true} {
		if rod {
			s.Drop.Body, s.Drop.DiameterMM, s.Material, s.DistanceMM = flip.UprightRod, 20, "crown-glass", 100
		}
		texts := pageTexts(worded(t, jobOf(t, s)))
		head := "Cautions Read this"
		if rod { // on one sheet
			head = "3 Cautions"
		}
		number := pageWith(t, texts, head)
		page := texts[number-1]
		require.Contains(t, texts[0], fmt.Sprintf("Before you start, read the cautions on page %d:", number))
		for word, there := range map[string]bool{"Ethanol and its vapour": !rod,
			"Glass rods, tubes": rod, "carried and hung by two": !rod} {
			require.Equal(t, there, strings.Contains(page, word), word)
		}
		require.Equal(t, !rod, strings.Contains(texts[0], "ethanol vapour"))
		require.Equal(t, rod, strings.Contains(texts[0], "near water, glass,"))
	}
	texts := pageTexts(worded(t, jobOf(t, usual())))
	page := texts[pageWith(t, texts, "Cautions Read this")-1]
	for _, word := range []string{"fire", "Mains", "electrician", "blade", "Spray", "windows open", "seizure",
		"Do not look into the lamps", "Filters", "RCD, GFCI", "MDF", "step ladder", "Makers’ instructions", "local " +
			"rules", "licensed trades"} {
		require.Contains(t, page, word)
	}
}

// Pasting starts at the lamp's corner, whichever it is, and the guide says which way it goes on.
func TestOrderFollowsTheLamp(t *testing.T) {
	for _, c := range []struct {
		light       layout.Corner
		first, goes string
	}{
		{layout.TopLeft, "Begin with R1C1, in the top left corner", "Go on to the right to the end of the row. Then do " +
			"the next row downward"},
		{layout.TopRight, "Begin with R1C5, in the top right corner",
			"Go on to the left to the end of the row. Then do the next row downward"},
		{layout.BottomLeft, "Begin with R3C1, in the bottom left corner",
			"Go on to the right to the end of the row. Then do the next row upward"},
		{layout.BottomRight, "Begin with R3C5, in the bottom right corner",
			"Go on to the left to the end of the row. Then do the next row upward"},
	} {
		t.Run(string(c.light), func(t *testing.T) {
			s := usual()
			s.LightFrom = c.light
			all := strings.Join(pageTexts(worded(t, jobOf(t, s))), " ")
			require.Contains(t, all, c.first)
			require.Contains(t, all, c.goes)
		})
	}
}

func TestAnyNameIsTaken(t *testing.T) {
	for _, c := range []struct{ name, shows string }{
		{"Größe: 10 €", "Größe: 10 €"},
		{"Łódź", "Łódź"},
		{"Гавань в сумерках", "Гавань в сумерках – assembly guide"},
		{"Λιμάνι – harbour", "Λιμάνι – harbour"},
		{strings.Repeat("Пароходство", 20), "Пароходство"},
		{"港の夕暮れ", "????? The fonts of sheets and guide lack some letters of the name"},
		{"Порт 港", "Порт ? The fonts of sheets and guide lack some letters of the name"},
		{"bell\a and\nbreak", "bell? and?break"},
		{"broken \xff\xfe UTF-8", "broken ?? UTF-8"},
		{`brackets (\) and %`, `brackets (\) and %`},
		{strings.Repeat("Donaudampfschiff", 20), "Donaudampfschiff"},
		{"", "assembly guide"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOf(t, usual())
			j.Name = c.name
			doc := opened(t, parts(j, (*book).overview, (*book).paste)) // the name also stands at the foot and on labels
			require.Contains(t, flat(doc.Text(1)), c.shows)
			requireNoWordsOverlap(t, doc)
		})
	}
}

func TestWriteRefuses(t *testing.T) {
	for _, c := range []struct {
		name   string
		change func(*Job)
		says   string
	}{
		{"no artwork", func(j *Job) { j.Picture = nil }, "artwork is missing"},
		{"no seam map", func(j *Job) { j.SeamMap = SeamMap{} }, "seam map is missing"},
		{"another plan's seam map", func(j *Job) { j.SeamMap.size.X-- }, "not that of this plan's"},
		{"no view of the drop", func(j *Job) { j.DropView = nil }, "view of the drop is missing"},
		{"resolution NaN", func(j *Job) { j.PPI = math.NaN() }, "above 0"},
		{"resolution 0", func(j *Job) { j.PPI = 0 }, "above 0"},
		{"a plan without sheets", func(j *Job) { j.Plan.Sheets = nil }, "do not make 0 sheets"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := jobOf(t, usual())
			c.change(&j)
			var out strings.Builder
			require.ErrorContains(t, Write(&out, j), c.says)
			require.Empty(t, out.String())
		})
	}
}
