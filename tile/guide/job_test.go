package guide

import (
	"bytes"
	"image"
	"image/color"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/pdf"
	"dropsheet/tile/pdf/pdftest"
	"dropsheet/tile/seammap"
	"dropsheet/tile/texture"
)

// usual is a setup with the usual figures: 15 sheets of A4.
func usual() layout.Setup {
	a4, _ := layout.ParsePaper("A4")
	return layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400, Fill: 0.85,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest},
	}
}

// on is the usual setup on another paper.
func on(t *testing.T, paper string) layout.Setup {
	t.Helper()
	s := usual()
	var err error
	s.Paper, err = layout.ParsePaper(paper)
	require.NoError(t, err)
	return s
}

// The artwork of the tests: a quarter of it in each of four colours that nothing else in the guide comes near.
var (
	red    = color.RGBA{255, 0, 0, 255}   // top left, upright
	green  = color.RGBA{0, 255, 0, 255}   // top right
	blue   = color.RGBA{0, 0, 255, 255}   // bottom left
	yellow = color.RGBA{255, 255, 0, 255} // bottom right
)

func quarters(w, h int) *image.RGBA {
	img := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			img.SetRGBA(x, y, [2][2]color.RGBA{{red, green}, {blue, yellow}}[2*y/h][2*x/w])
		}
	}
	return img
}

// plainImage stands for pictures that a test does not look at.
func plainImage(w, h int) image.Image {
	return &image.Gray{Pix: bytes.Repeat([]byte{200}, w*h), Stride: w, Rect: image.Rect(0, 0, w, h)}
}

func jobOf(t *testing.T, s layout.Setup) Job {
	t.Helper()
	plan, err := s.Plan()
	require.NoError(t, err)
	return jobOfPlan(plan)
}

func jobOfPlan(plan layout.Plan) Job {
	art := &artwork.Picture{Image: quarters(360, 240)}
	plain, err := packed(plainImage(8, 8))
	if err != nil {
		panic(err)
	}
	return Job{
		Name: "Quay at dusk", CheckCode: "7F3A2C", Plan: plan, PPI: 180, Picture: texture.New(art),
		SeamMap: SeamMap{seammap.Find(plan).Map.Size(), plain, plain}, DropView: plainImage(120, 120),
	}
}

// written writes a guide and opens it.
func written(t *testing.T, j Job) *pdftest.Doc {
	t.Helper()
	return pdftest.Open(t, bytesOf(t, j))
}

// worded draws a guide whose pictures are grey, and opens it: for tests that look at its words and lines only.
func worded(t *testing.T, j Job) *pdftest.Doc {
	t.Helper()
	require.NoError(t, j.check())
	return opened(t, drawn(j))
}

// opened opens what a book has drawn so far, its pictures grey.
func opened(t *testing.T, b *book) *pdftest.Doc {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, b.Stream(&out, func(pdf.PictureID) (pdf.Picture, error) {
		return pdf.EncodeFlate(image.NewGray(image.Rect(0, 0, 1, 1)))
	}))
	return pdftest.Open(t, out.Bytes())
}

func bytesOf(t *testing.T, j Job) []byte {
	t.Helper()
	var out bytes.Buffer
	require.NoError(t, Write(&out, j))
	return out.Bytes()
}

var blanks = regexp.MustCompile(`[\s\x{00A0}]+`)

// flat puts one space wherever a text has blanks, no-break spaces or line ends.
func flat(text string) string { return strings.TrimSpace(blanks.ReplaceAllString(text, " ")) }

// pageTexts returns the flat text of every page.
func pageTexts(d *pdftest.Doc) []string {
	texts := make([]string, d.PageCount())
	for i := range texts {
		texts[i] = flat(d.Text(i + 1))
	}
	return texts
}

// pageWith returns the number of the page on which a text stands.
func pageWith(t *testing.T, texts []string, text string) int {
	t.Helper()
	for i, page := range texts {
		if strings.Contains(page, text) {
			return i + 1
		}
	}
	require.Failf(t, "text not found", "no page says %q", text)
	return 0
}
