package proof

import (
	"context"
	"image"
	"image/color"
	"math"
	"slices"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/board"
	"dropsheet/tile/colour"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// straight asks for a straight picture, and for more pixels than usual.
func straight(s *layout.Setup) {
	s.Look = layout.Straight
	s.Camera.WidthPx, s.Camera.HeightPx = 600, 400
}

// drawn is a grey picture, 1.5 times as wide as high, by its light at picture coordinates.
func drawn(widthPx int, light func(u, v float64) float64) *texture.Texture {
	w, h := widthPx, widthPx*2/3
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			m.SetGray(x, y, color.Gray{Y: uint8(math.Round(255 * colour.LightToSRGB(light((float64(x)+0.5)/float64(w),
				(float64(y)+0.5)/float64(h)))))})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// grey is a picture of one level.
func grey(level uint8) *texture.Texture {
	return drawn(300, func(_, _ float64) float64 { return colour.SRGBToLight(float64(level) / 255) })
}

// A grid of dots printed straight is a straight grid in the drop. Where it comes follows from the fit alone:
// the picture's shorter half-side is as long as the fill's share of the drop's visible half-height, for an
// upright rod its half-width; a ball of radius R shows as large as R D / sqrt(D² - R²).
func TestStraightDotsStayAStraightGrid(t *testing.T) {
	const k = 0.9 // the spheroid's height over its width
	visible := func(r float64) float64 { return r * 300 / math.Sqrt(300*300-r*r) }
	round := visible(2.5)
	width := 2.5 / math.Cbrt(k)
	const spacing = 0.11 // heights of the picture
	picture := drawn(1500, func(u, v float64) float64 {
		x, y := (u-0.5)*1.5/spacing, (v-0.5)/spacing
		if math.Hypot(x-math.Round(x), y-math.Round(y)) < 0.1 {
			return 1
		}
		return 0
	})
	for _, c := range []struct {
		name         string
		change       func(*layout.Setup)
		halfHeightMM float64 // of the picture in the drop
		turnDeg      float64
	}{
		{"ball", func(*layout.Setup) {}, 0.85 * round, 0},
		{"upright rod", func(s *layout.Setup) { s.Drop.Body = flip.UprightRod }, 0.85 * round / 1.5, 0},
		{"level rod", func(s *layout.Setup) { s.Drop.Body = flip.LevelRod }, 0.85 * round, 0},
		{"spheroid", func(s *layout.Setup) { s.Drop.HeightOverWidth = k }, 0.85 * k * visible(width), 0},
		// Turned, the circle still touches the same two sides.
		{"ball, turned", func(s *layout.Setup) { s.Framing.TurnDeg = 30 }, 0.85 * round, 30},
	} {
		t.Run(c.name, func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				straight(s)
				c.change(s)
				s.Background, s.Camera.WidthPx, s.Camera.HeightPx = "#000000", 450, 300
			})
			var places [][2]float64 // from the picture's middle, in its heights
			for i := -4; i <= 4; i++ {
				for j := -4; j <= 4; j++ {
					if x, y := spacing*float64(i), spacing*float64(j); math.Hypot(x, y) < 0.47 {
						places = append(places, [2]float64{x, y})
					}
				}
			}
			frame := Pinhole(p, p.Camera, picture)
			px := 2 * c.halfHeightMM / p.Camera.PixelMM()
			sin, cos := math.Sincos(c.turnDeg * math.Pi / 180)
			for _, place := range places {
				x, y := place[0]*cos-place[1]*sin, place[0]*sin+place[1]*cos
				x, y = 225+x*px, 150+y*px
				gotX, gotY := middleOf(frame, x, y, 0.05*px)
				require.InDelta(t, x, gotX, 0.375, "%v", place)
				require.InDelta(t, y, gotY, 0.375, "%v", place)
			}
		})
	}
}

// middleOf is the middle of the light in a square about a point of the frame, in pixels.
func middleOf(frame *image.RGBA, atX, atY, reach float64) (x, y float64) {
	var sum float64
	for j := int(atY - reach); j <= int(atY+reach); j++ {
		for i := int(atX - reach); i <= int(atX+reach); i++ {
			v := float64(texture.Linear(frame.RGBAAt(i, j))[1])
			sum, x, y = sum+v, x+v*(float64(i)+0.5), y+v*(float64(j)+0.5)
		}
	}
	return x / sum, y / sum
}

// Waves across a straight picture, three frame pixels long, come as strong in the drop as they are drawn,
// less what the pixel itself averages out (the sinc of a third, 0.827) and a little for the texture's
// reading: in the middle and near the fill's edge alike, along the radius and across it. Averaged as if the
// print were flat, they came out between 0.789 and 0.828.
func TestStraightPictureIsAsSharpAsDrawn(t *testing.T) {
	p := plan(t, straight)
	halfPx := 0.85 * p.Sight().ApparentRadiusMM() / p.Camera.PixelMM()
	const longPx, swing = 3, 0.3
	frame := Pinhole(p, p.Camera, drawn(3000, func(u, _ float64) float64 {
		return 0.4 + swing*math.Sin(2*math.Pi*(u-0.5)*1.5*2*halfPx/longPx)
	}))
	for _, c := range []struct {
		name string
		x, y float64 // shares of the fill's radius
	}{{"middle", 0, 0}, {"at the side", 0.8, 0}, {"at the top", 0, -0.85}, {"slantwise", -0.6, 0.6}} {
		t.Run(c.name, func(t *testing.T) {
			var in, out, mean float64
			const waves = 20
			for i := range longPx * waves {
				x := int(300+c.x*halfPx) - longPx*waves/2 + i
				v := float64(texture.Linear(frame.RGBAAt(x, int(200+c.y*halfPx)))[1])
				sin, cos := math.Sincos(2 * math.Pi * (float64(x) + 0.5 - 300) / longPx)
				in, out, mean = in+v*sin, out+v*cos, mean+v
			}
			// As a share of the mean, which the drop's own losses dim alike.
			got := 2 * math.Hypot(in, out) / mean
			require.InDelta(t, 0.827, got/(swing/0.4), 0.02)
			require.Greater(t, in, 10*math.Abs(out), "the waves lie where they were drawn")
		})
	}
}

// Fine detail that no pixel shows is averaged evenly: of noise of artwork pixels, some four to a frame pixel,
// little depends on how many rays are taken, in a straight picture hardly more than in a bulged one, whose
// artwork is coarser.
func TestStraightPictureHasNoNoise(t *testing.T) {
	state := uint32(1)
	picture := drawn(450, func(_, _ float64) float64 {
		state = state*1664525 + 1013904223 // Numerical Recipes, 7.1: the quick generator; recalled from memory
		return float64(state>>31) * 0.5
	})
	p := plan(t, func(s *layout.Setup) { straight(s); s.Camera.WidthPx, s.Camera.HeightPx = 120, 80 })
	scene := Scene{Plan: p, Camera: p.Camera, Picture: picture, Sharp: true}
	usual := render(t, scene)
	scene.Samples = 400
	fine := render(t, scene)
	square, sum, squares, n := 0.0, 0.0, 0.0, 0.0
	for y := 15; y < 65; y++ {
		for x := 35; x < 85; x++ {
			v := float64(fine.RGBAAt(x, y).G)
			d := float64(usual.RGBAAt(x, y).G) - v
			square, sum, squares, n = square+d*d, sum+v, squares+v*v, n+1
		}
	}
	require.Greater(t, math.Sqrt(squares/n-sum/n*sum/n), 10.0, "levels that the detail leaves in the pixels")
	require.Less(t, math.Sqrt(square/n), 4.0, "levels of 255")
}

// What is not printed, seen past the drop by a camera that sees the whole board: the print ends where the
// drop's reach at the fill does (the closed form), beyond is white paper where there is a sheet and the dark
// where there is none, or the background's colour.
func TestUnprintedParts(t *testing.T) {
	a6, err := layout.ParsePaper("A6") // small enough for corners without picture
	require.NoError(t, err)
	for _, background := range []layout.Surround{"", "#204060"} {
		t.Run("background "+string(background), func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) {
				straight(s)
				s.Paper, s.DistanceMM, s.Camera.FrameWidthMM, s.Background = a6, 600, 520, background
			})
			if background == "" {
				require.Less(t, len(p.Sheets), p.Backdrop.Columns*p.Backdrop.Rows, "the fixture has a cell without picture")
			}
			frame := Pinhole(p, p.Camera, grey(100))
			reachMM, ok := p.Sight().ReachMM(0.85)
			require.True(t, ok)
			colour, _ := background.Colour()
			boardMM := p.Camera.PixelMM() * 900 / 300
			counts := map[string]int{}
			for j := range 400 {
				for i := range 600 {
					x, y := (float64(i)+0.5-300)*boardMM, (float64(j)+0.5-200)*boardMM
					inDrop := math.Hypot(float64(i)-300, float64(j)-200) < 6
					fromOutline := reachMM - math.Hypot(x, y)
					kind, fromEdge := sheetAt(p, x+p.Backdrop.WidthMM/2, y+p.Backdrop.HeightMM/2)
					if inDrop || math.Abs(fromOutline) < 2*boardMM || fromEdge < 2*boardMM {
						continue
					}
					want := color.RGBA{100, 100, 100, 255}
					switch {
					case kind == "none":
						want = board.Room.SRGB()
					case fromOutline < 0 && background != "":
						kind, want = "background", colour
					case fromOutline < 0:
						kind, want = "paper", color.RGBA{255, 255, 255, 255}
					}
					counts[kind]++
					got := frame.RGBAAt(i, j)
					if max(want.R, got.R)-min(want.R, got.R) > 1 || max(want.B, got.B)-min(want.B, got.B) > 1 {
						require.Equal(t, want, got, "pixel %d, %d: %s", i, j, kind)
					}
				}
			}
			if background == "" {
				require.Greater(t, counts["none"], 2000)
				require.Greater(t, counts["paper"], 500)
			} else {
				require.Greater(t, counts["background"], 500)
			}
			require.Greater(t, counts["sheet"], 5000)
		})
	}
}

// sheetAt tells whether a place of the board lies on a sheet, and how far it is from the nearest edge of any cell.
func sheetAt(p layout.Plan, xMM, yMM float64) (kind string, fromEdgeMM float64) {
	fromEdgeMM = math.Inf(1)
	for _, x := range p.Backdrop.XEdgesMM {
		fromEdgeMM = min(fromEdgeMM, math.Abs(x-xMM))
	}
	for _, y := range p.Backdrop.YEdgesMM {
		fromEdgeMM = min(fromEdgeMM, math.Abs(y-yMM))
	}
	for _, s := range p.Sheets {
		if xMM > s.Cell.XMM && xMM < s.Cell.RightMM() && yMM > s.Cell.YMM && yMM < s.Cell.BottomMM() {
			return "sheet", fromEdgeMM
		}
	}
	return "none", fromEdgeMM
}

// Seams show where the plan has one, from its one end to the other, and nowhere else: on a board from which
// two sheets and their seams have been taken.
func TestSeamsEndWithTheirSheets(t *testing.T) {
	p := plan(t, func(s *layout.Setup) {
		s.DistanceMM, s.Camera.FrameWidthMM = 400, 660
		s.Camera.WidthPx, s.Camera.HeightPx = 960, 640
	})
	gone := []string{"R1C1", "R2C3"}
	p.Sheets = slices.DeleteFunc(slices.Clone(p.Sheets),
		func(s layout.Sheet) bool { return slices.Contains(gone, s.Name) })
	p.Seams = slices.DeleteFunc(slices.Clone(p.Seams), func(s layout.Seam) bool {
		return slices.Contains(gone, s.Between[0]) || slices.Contains(gone, s.Between[1])
	})
	const seamMM = 12
	scene := Scene{Plan: p, Camera: p.Camera, Picture: grey(100), SeamWidthMM: seamMM, Sharp: true,
		Samples: pinholeSamples}
	frame, err := scene.Render(context.Background(), nil)
	require.NoError(t, err)
	boardMM := p.Camera.PixelMM() * 700 / 300
	counts := map[string]int{}
	for j := range 640 {
		for i := range 960 {
			x, y := (float64(i)+0.5-480)*boardMM+p.Backdrop.WidthMM/2, (float64(j)+0.5-320)*boardMM+p.Backdrop.HeightMM/2
			kind, near := "plain", math.Hypot(float64(i)-480, float64(j)-320) < 6
			for _, s := range p.Seams {
				across, along := x-s.AtMM, y
				if s.Axis == "y" {
					across, along = y-s.AtMM, x
				}
				inside := min(seamMM/2-math.Abs(across), along-s.FromMM, s.ToMM-along)
				if inside > 0 {
					kind = "seam"
				}
				// One seam's end is no edge where another goes on: two seams of a line, or where they cross.
				near = near || math.Abs(seamMM/2-math.Abs(across)) < 2*boardMM ||
					(math.Abs(across) < seamMM && (math.Abs(along-s.FromMM) < 2*boardMM || math.Abs(s.ToMM-along) < 2*boardMM))
			}
			sheet, fromEdge := sheetAt(p, x, y)
			if near || (sheet == "none" || kind == "plain") && fromEdge < 2*boardMM {
				continue
			}
			want := color.RGBA{100, 100, 100, 255}
			switch {
			case sheet == "none":
				kind, want = "none", board.Room.SRGB()
			case kind == "seam":
				want = color.RGBA{255, 255, 255, 255}
			}
			counts[kind]++
			if got := frame.RGBAAt(i, j); max(want.G, got.G)-min(want.G, got.G) > 1 {
				require.Equal(t, want, got, "pixel %d, %d: %s", i, j, kind)
			}
		}
	}
	for _, kind := range []string{"plain", "seam", "none"} {
		require.Greater(t, counts[kind], 2000, kind)
	}
}

// A seam on printed white is bare paper beside bare paper: nothing of it shows. On a light grey it does.
func TestSeamsOnWhiteDoNotShow(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.DistanceMM, s.Camera.WidthPx, s.Camera.HeightPx = 400, 120, 80 })
	require.NotEmpty(t, p.Seams)
	for _, level := range []uint8{255, 231} {
		changed := 0
		whole := render(t, Scene{Plan: p, Camera: p.Camera, Picture: grey(level)})
		for i, v := range render(t, Scene{Plan: p, Camera: p.Camera, Picture: grey(level), SeamWidthMM: 5}).Pix {
			if v != whole.Pix[i] {
				changed++
				require.Greater(t, v, whole.Pix[i], "a white edge is lighter than grey")
			}
		}
		require.Equal(t, level < 255, changed > 1000, "level %d: %d bytes changed", level, changed)
	}
}
