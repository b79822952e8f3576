package proof

import (
	"image"
	"image/color"
	"math"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

func plan(t testing.TB, change func(*layout.Setup)) layout.Plan {
	t.Helper()
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	s := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 200,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 480, HeightPx: 320,
			FrameWidthMM: 7.2, FNumber: 16, Focus: layout.FocusBest},
	}
	if change != nil {
		change(&s)
	}
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

// dots is a black picture with white dots, two hundredths of its height across, at places in picture coordinates.
func dots(places ...[2]float64) *texture.Texture {
	m := image.NewGray(image.Rect(0, 0, 1500, 1000))
	for y := range 1000 {
		for x := range 1500 {
			for _, p := range places {
				if math.Hypot(float64(x)+0.5-1500*p[0], float64(y)+0.5-1000*p[1]) < 10 {
					m.SetGray(x, y, color.Gray{255})
				}
			}
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// centroid is the middle of the light of a frame's dot that lies about a place, in pixels from the frame's centre.
func centroid(frame *image.RGBA, atX, atY float64) (x, y float64) {
	var sum float64
	b := frame.Bounds()
	for j := range b.Dy() {
		for i := range b.Dx() {
			px, py := float64(i)+0.5-float64(b.Dx())/2, float64(j)+0.5-float64(b.Dy())/2
			if v := float64(frame.RGBAAt(i, j).G); v > 60 && math.Hypot(px-atX, py-atY) < 15 {
				sum, x, y = sum+v, x+v*px, y+v*py
			}
		}
	}
	return x / sum, y / sum
}

// A dot of the picture appears where the closed form puts it: on the same side as in the picture, at the fill
// whose reach is its distance from the middle of the print. The closed form and the trace that the proof uses
// share no line.
func TestDotsAppearWhereTheClosedFormSays(t *testing.T) {
	p := plan(t, nil)
	places := [][2]float64{{0.6, 0.5}, {0.4, 0.35}, {0.75, 0.8}, {0.5, 0.1}, {0.2, 0.3}} // none where another is turned to
	frame := Pinhole(p, p.Camera, dots(places...))
	for _, place := range places {
		fromMiddleX, fromMiddleY := (place[0]-0.5)*p.Picture.WidthMM, (place[1]-0.5)*p.Picture.HeightMM
		r := math.Hypot(fromMiddleX, fromMiddleY)
		fill, ok := p.Sight().FillAt(r)
		require.True(t, ok)
		want := fill * p.Sight().ApparentRadiusMM() / p.Camera.PixelMM()
		// A dot's middle and the middle of its squeezed image differ a little: hence 0.5 pixel and not less.
		wantX, wantY := want*fromMiddleX/r, want*fromMiddleY/r
		x, y := centroid(frame, wantX, wantY)
		require.InDelta(t, wantX, x, 0.5, "%v", place)
		require.InDelta(t, wantY, y, 0.5, "%v", place)
	}
}

// quarters is a picture of four flat quarters by rows: level 60, 110, 160 and 210.
func quarters() *texture.Texture {
	m := image.NewGray(image.Rect(0, 0, 300, 200))
	for y := range 200 {
		for x := range 300 {
			m.SetGray(x, y, color.Gray{uint8(60 + 50*(2*(y/100)+x/150))})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

func TestEveryBodyShowsThePictureUpright(t *testing.T) {
	for _, body := range []flip.Body{flip.Ball, flip.UprightRod, flip.LevelRod} {
		t.Run(body.String(), func(t *testing.T) {
			p := plan(t, func(s *layout.Setup) { s.Drop.Body, s.Camera.WidthPx, s.Camera.HeightPx = body, 120, 80 })
			frame := Pinhole(p, p.Camera, quarters())
			last := uint8(0)
			for _, q := range [][2]int{{-1, -1}, {1, -1}, {-1, 1}, {1, 1}} { // by rows, each lighter than the one before
				v := frame.RGBAAt(60+q[0]*10, 40+q[1]*10).G
				require.Greater(t, v, last, "quarter %v", q)
				last = v
			}
		})
	}
}

// A uniform board gives a uniform drop but for Fresnel: at the centre 1 - ((n-1)/(n+1))² squared, 96.0 % for
// n = 1.333 (Hecht, Optics, 4.6.3), and beside the drop all of the light.
func TestUniformBoard(t *testing.T) {
	m := image.NewGray(image.Rect(0, 0, 30, 20))
	for i := range m.Pix {
		m.Pix[i] = 200
	}
	full := math.Pow((200.0/255+0.055)/1.055, 2.4) // IEC 61966-2-1
	p := plan(t, nil)
	frame := Pinhole(p, p.Camera, texture.New(&artwork.Picture{Image: m}))
	require.Equal(t, uint8(200), frame.RGBAAt(5, 160).G)
	want := texture.Light{float32(full * 0.960), float32(full * 0.960), float32(full * 0.960)}.SRGB().G
	for x := -60; x <= 60; x += 20 { // well within, unpolarised reflectance hardly changes
		require.InDelta(t, float64(want), float64(frame.RGBAAt(240+x, 160).G), 1)
	}
}

// The dark rim begins where the plan says that the picture ends.
func TestDarkRimIsWhereThePlanSays(t *testing.T) {
	p := plan(t, nil)
	m := image.NewGray(image.Rect(0, 0, 30, 20))
	for i := range m.Pix {
		m.Pix[i] = 255
	}
	frame := Pinhole(p, p.Camera, texture.New(&artwork.Picture{Image: m}))
	radiusPx := p.Sight().ApparentRadiusMM() / p.Camera.PixelMM()
	edge := radiusPx * (1 - shot.Of(p).DarkRim().DownShare)
	require.Greater(t, frame.RGBAAt(240, 160+int(edge-1.5)).G, uint8(150))
	require.Less(t, frame.RGBAAt(240, 160+int(edge+1.5)).G, uint8(40))
	require.Less(t, frame.RGBAAt(240, 160-int(edge+1.5)).G, uint8(40))
}

func TestBoardEndsInADarkRoom(t *testing.T) {
	p := plan(t, func(s *layout.Setup) { s.Camera.FrameWidthMM = 600 })
	frame := Pinhole(p, p.Camera, quarters())
	require.Less(t, frame.RGBAAt(2, 160).G, uint8(30))
	require.Greater(t, frame.RGBAAt(240+40, 160+40).G, uint8(40))
	// The board's right edge, seen past the drop from the camera: half its width times D/(D+L).
	edge := 240 + p.Picture.WidthMM/2*300/500/p.Camera.PixelMM()
	require.Greater(t, frame.RGBAAt(int(edge-2), 160).G, uint8(40))
	require.Less(t, frame.RGBAAt(int(edge+2), 160).G, uint8(30))
}
