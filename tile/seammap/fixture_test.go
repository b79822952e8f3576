package seammap

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/board"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// usual is a setup with the usual figures: 15 sheets of A4.
func usual() layout.Setup {
	a4, _ := layout.ParsePaper("A4")
	return layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest},
	}
}

// rod is a glass of liquid, wide enough to show some of the board along its axis.
func rod(body flip.Body) func(*layout.Setup) {
	return func(s *layout.Setup) {
		s.Drop.Body, s.Drop.DiameterMM, s.DistanceMM, s.CameraMM = body, 60, 300, 800
	}
}

// plan makes a plan of the usual setup with changes.
func plan(t *testing.T, change func(*layout.Setup)) layout.Plan {
	t.Helper()
	s := usual()
	if change != nil {
		change(&s)
	}
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

// The colours of the quarters of the test picture, by row and column. Each is bright in other channels, and
// none is dark or blue enough to be taken for a line.
var quarters = [2][2]color.RGBA{
	{{255, 140, 140, 255}, {140, 235, 140, 255}},
	{{225, 225, 120, 255}, {255, 200, 255, 255}},
}

// quartered is a picture whose corners can be told apart, upright.
func quartered(proportions float64) *texture.Texture {
	h := 600
	w := max(2, int(float64(h)*proportions))
	picture := image.NewRGBA(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			picture.SetRGBA(x, y, quarters[2*y/h][2*x/w])
		}
	}
	return texture.New(&artwork.Picture{Image: picture})
}

// white is a picture on which every line shows.
func white() *texture.Texture {
	picture := image.NewGray(image.Rect(0, 0, 300, 200))
	for i := range picture.Pix {
		picture.Pix[i] = 0xff
	}
	return texture.New(&artwork.Picture{Image: picture})
}

// seamMM is how wide seams are in these tests.
const seamMM = 0.3

// drawn draws the map with the seams as seamsight sees them.
func drawn(p layout.Plan, picture *texture.Texture) *image.RGBA {
	return Draw(p, picture, seamsight.New(p, picture, seamMM).Seams())
}

// isDark tells a seam's colour from white, amber and blue.
func isDark(c color.RGBA) bool { return max(c.R, c.G, c.B) < 0x60 }

// isBlue tells a fill's colour.
func isBlue(c color.RGBA) bool { return int(c.B)-int(c.R) > 70 }

// isAmber tells the colour of the picture's edge.
func isAmber(c color.RGBA) bool { return int(c.R)-int(c.B) > 120 && c.G > 0x80 }

// inTheDrop is what the drop shows of the board.
func inTheDrop(p layout.Plan, picture *texture.Texture) onBoard {
	return onBoard{board.NewDrawing(p, picture), p.Backdrop.Board(), wall}
}

// blanks puts a blank for each that does not break.
func blanks(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }
