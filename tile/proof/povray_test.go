package proof

import (
	"context"
	"flag"
	"image"
	_ "image/jpeg"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/board"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// POV-Ray's scenes; its pictures of them are kept beside them.
const povScenes = "../../testdata/povray"

var (
	povPictures = flag.String("povray", povScenes, "folder of POV-Ray's pictures, from this package's")
	writeBoards = flag.Bool("boards", false, "write anew the boards that POV-Ray's scenes show")
)

// declared are the figures that a scene's text declares.
func declared(t *testing.T, scene string) map[string]float64 {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(povScenes, scene+".pov"))
	require.NoError(t, err)
	figures := map[string]float64{}
	for _, m := range regexp.MustCompile(`(?m)^#declare (\w+) = ([-0-9.]+);`).FindAllStringSubmatch(string(text), -1) {
		figures[m[1]], err = strconv.ParseFloat(m[2], 64)
		require.NoError(t, err)
	}
	return figures
}

// openTexture opens an artwork.
func openTexture(t *testing.T, path string) *texture.Texture {
	t.Helper()
	return texture.New(&artwork.Picture{Image: openPicture(t, path)})
}

// openPicture opens a PNG or a JPEG.
func openPicture(t *testing.T, path string) *image.RGBA {
	t.Helper()
	f, err := os.Open(path)
	require.NoError(t, err)
	defer f.Close()
	m, _, err := image.Decode(f)
	require.NoError(t, err)
	out := image.NewRGBA(m.Bounds())
	for y := range m.Bounds().Dy() {
		for x := range m.Bounds().Dx() {
			out.Set(x, y, m.At(x, y))
		}
	}
	return out
}

// povScene is a scene's text as a scene of ours, in a frame of that many pixels each way.
func povScene(t *testing.T, name, artwork string, sidePx int, change func(*layout.Setup)) Scene {
	figure := declared(t, name)
	p := plan(t, func(s *layout.Setup) {
		s.Drop = flip.Drop{DiameterMM: figure["Diameter"], Index: figure["Index"],
			HeightOverWidth: figure["Height_over_width"]}
		if figure["Rod"] == 1 {
			s.Drop.Body = flip.UprightRod
			s.Drop.WallMM, s.Drop.WallIndex = figure["Wall"], figure["Wall_index"]
		}
		if figure["Held"] > 0 {
			water, ok := flip.MaterialByName("water")
			require.True(t, ok)
			s.Drop.Body, s.Drop.HeldMM, s.Drop.CapillaryMM = flip.Hanging, figure["Held"], water.Liquid.CapillaryMM()
		}
		s.CameraMM, s.DistanceMM = figure["Camera"], figure["Distance"]
		s.Print = layout.Size{WidthMM: figure["Board_width"], HeightMM: figure["Board_height"]}
		s.Camera.WidthPx, s.Camera.HeightPx, s.Camera.FrameWidthMM = sidePx, sidePx, figure["Frame"]
		change(s)
	})
	require.InDelta(t, figure["Board_width"], p.Backdrop.WidthMM, 1e-9)
	require.InDelta(t, figure["Board_height"], p.Backdrop.HeightMM, 1e-9)
	s := Scene{Plan: p, Camera: p.Camera, Picture: openTexture(t, filepath.Join(povScenes, artwork)),
		Sharp: figure["Pupil"] == 0, Samples: pinholeSamples}
	if !s.Sharp {
		s.Camera.FNumber, s.Camera.FocusMM = s.Camera.LensMM/figure["Pupil"], figure["Focus"]
		s.Samples = 16 * DefaultSamples
	}
	return s
}

// The proof against POV-Ray 3.7, a ray tracer for general use that shares nothing with this program, in levels of 255:
// within 0.85 of the drop's visible radius less than 1 in the mean, from there to its edge less than 3. What light is
// mirrored by the drop's front, and thrown back inside as often as it likes, is in POV-Ray's pictures.
func TestAgainstPOVRay(t *testing.T) {
	for _, c := range []struct {
		scene, artwork string
		change         func(*layout.Setup)
	}{
		{"ball", "board.png", func(*layout.Setup) {}},
		{"far", "board.png", func(*layout.Setup) {}},
		{"pressed", "board.png", func(*layout.Setup) {}},
		{"straight", "../clock.jpg", straightOnNavy},
		{"rod", "board.png", func(*layout.Setup) {}},
		{"tube", "board.png", func(*layout.Setup) {}},
		{"lens", "board.png", func(*layout.Setup) {}},
		{"hanging", "board.png", func(*layout.Setup) {}},
	} {
		t.Run(c.scene, func(t *testing.T) {
			want := openPicture(t, filepath.Join(*povPictures, c.scene+".png"))
			s := povScene(t, c.scene, c.artwork, want.Rect.Dx(), c.change)
			got, err := s.Render(context.Background(), nil)
			require.NoError(t, err)
			inside, rim := apart(s.Plan, got, want)
			t.Logf("%s: inside %.2f levels, rim %.2f", c.scene, inside, rim)
			require.Less(t, inside, 1.0)
			require.Less(t, rim, 3.0)
		})
	}
}

// apart is how far apart two frames are, in levels: the mean within 0.85 of the drop's visible radius, and from there
// to its edge. Along a rod, all is across.
func apart(p layout.Plan, a, b *image.RGBA) (inside, rim float64) {
	halfWidthMM, halfHeightMM := p.Sight().OutlineMM()
	var sums, counts [2]float64
	for j := range a.Rect.Dy() {
		for i := range a.Rect.Dx() {
			at := p.Camera.At(float64(i)+0.5, float64(j)+0.5)
			share := math.Hypot(at.XMM/halfWidthMM, at.YMM/halfHeightMM)
			if share >= 1 {
				continue
			}
			part := 0
			if share >= 0.85 {
				part = 1
			}
			c, d := a.RGBAAt(i, j), b.RGBAAt(i, j)
			for _, v := range [3][2]uint8{{c.R, d.R}, {c.G, d.G}, {c.B, d.B}} {
				sums[part] += math.Abs(float64(v[0])-float64(v[1])) / 3
			}
			counts[part]++
		}
	}
	return sums[0] / counts[0], sums[1] / counts[1]
}

// Of a drop that hangs the neck and the outline agree too, with the needle above and the board beside.
func TestHangingAgainstPOVRay(t *testing.T) {
	want := openPicture(t, filepath.Join(*povPictures, "hanging.png"))
	s := povScene(t, "hanging", "board.png", want.Rect.Dx(), func(*layout.Setup) {})
	got, err := s.Render(context.Background(), nil)
	require.NoError(t, err)
	const within, edge, outside = 0, 1, 2
	var sums, counts [3]float64
	sight := s.Plan.Sight()
	for j := range got.Rect.Dy() {
		for i := range got.Rect.Dx() {
			at := s.Camera.At(float64(i)+0.5, float64(j)+0.5)
			part := outside
			switch clear := sight.Drop.ClearanceMM(sight.PinholeRay(at.XMM, at.YMM)); {
			case -at.YMM > sight.Drop.AboveMM(): // the needle
			case clear < -0.25:
				part = within
			case clear < 0:
				part = edge
			}
			c, d := got.RGBAAt(i, j), want.RGBAAt(i, j)
			for _, v := range [3][2]uint8{{c.R, d.R}, {c.G, d.G}, {c.B, d.B}} {
				sums[part] += math.Abs(float64(v[0])-float64(v[1])) / 3
			}
			counts[part]++
		}
	}
	for part, least := range []float64{within: 1, edge: 3, outside: 0.1} {
		t.Logf("%.2f levels over %g pixels", sums[part]/counts[part], counts[part])
		require.Less(t, sums[part]/counts[part], least)
		require.Greater(t, counts[part], 1000.0)
	}
}

// straightOnNavy is a square print that is bent to look straight, on paper that is navy where it ends.
func straightOnNavy(s *layout.Setup) {
	s.Look, s.Surround, s.Proportions = layout.Straight, "#000080", 1
}

// The board of the scene with the bent print is what dropsheet prints, a pixel to 1.5 mm.
func TestBoardOfPOVRaysStraightScene(t *testing.T) {
	s := povScene(t, "straight", "../clock.jpg", 160, straightOnNavy)
	surface := board.New(s.Plan, s.Picture)
	turn := s.Plan.Drop.Reverses.Turn()
	const widthPx, heightPx = 360, 360
	stepMM := s.Plan.Backdrop.WidthMM / widthPx
	m := image.NewRGBA(image.Rect(0, 0, widthPx, heightPx))
	for y := range heightPx {
		for x := range widthPx {
			seen := surface.At((float64(x)+0.5)*stepMM, (float64(y)+0.5)*stepMM, board.Box(stepMM, stepMM))
			px, py := turn.Source(x, y, widthPx, heightPx) // upright, as the scenes turn it
			m.SetRGBA(px, py, seen.Under(1, paper, board.Room).SRGB())
		}
	}
	path := filepath.Join(povScenes, "straight-board.png")
	if *writeBoards {
		f, err := os.Create(path)
		require.NoError(t, err)
		defer f.Close()
		require.NoError(t, png.Encode(f, m))
	}
	kept := openPicture(t, path)
	for i := range m.Pix {
		require.InDelta(t, m.Pix[i], kept.Pix[i], 1, "byte %d", i)
	}
}
