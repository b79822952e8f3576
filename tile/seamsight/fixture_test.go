package seamsight_test

import (
	"image"
	"image/color"
	"math"
	"sync"
	"testing"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour"
	"dropsheet/tile/seamsight"
	"dropsheet/tile/texture"

	"github.com/stretchr/testify/require"
)

// seamMM is how wide seams are in these tests.
const seamMM = 0.3

// usual is a setup with the usual figures: 15 sheets of A4, and a frame close round the drop.
func usual() layout.Setup {
	a4, _ := layout.ParsePaper("A4")
	return layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, DistanceMM: 400,
		Fit: layout.Cover, Proportions: 1.5, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{
			Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 600, HeightPx: 400, FrameWidthMM: 7.8, FNumber: 16,
			Focus: layout.FocusBest, SharpToPx: 2,
		},
	}
}

// rod is a glass of liquid, wide enough to show some of the board along its axis.
func rod(body flip.Body) func(*layout.Setup) {
	return func(s *layout.Setup) {
		s.Drop.Body, s.Drop.DiameterMM, s.DistanceMM, s.CameraMM, s.Camera.FrameWidthMM = body, 60, 300, 800, 100
	}
}

// cropped takes that many pixels from the middle of the frame.
func cropped(widthPx, heightPx int) func(*layout.Setup) {
	return func(s *layout.Setup) {
		c := &s.Camera
		share := float64(widthPx) / float64(c.WidthPx)
		c.Sensor = layout.Size{WidthMM: c.Sensor.WidthMM * share,
			HeightMM: c.Sensor.WidthMM * share * float64(heightPx) / float64(widthPx)}
		c.FrameWidthMM *= share
		c.WidthPx, c.HeightPx = widthPx, heightPx
	}
}

// plan makes a plan of the usual setup with changes.
func plan(t testing.TB, changes ...func(*layout.Setup)) layout.Plan {
	t.Helper()
	s := usual()
	for _, change := range changes {
		change(&s)
	}
	p, err := s.Plan()
	require.NoError(t, err)
	return p
}

// drawn is a grey picture, 1.5 times as wide as high, by its light at picture coordinates.
func drawn(light func(u, v float64) float64) *texture.Texture {
	const w, h = 1500, 1000 // as fine as scenery's detail asks
	m := image.NewGray(image.Rect(0, 0, w, h))
	for y := range h {
		for x := range w {
			l := light((float64(x)+0.5)/w, (float64(y)+0.5)/h)
			m.SetGray(x, y, color.Gray{Y: uint8(math.Round(255 * colour.LightToSRGB(max(0, min(l, 1)))))})
		}
	}
	return texture.New(&artwork.Picture{Image: m})
}

// even is a picture of one light.
func even(light float64) *texture.Texture {
	m := image.NewGray(image.Rect(0, 0, 300, 200))
	for i := range m.Pix {
		m.Pix[i] = uint8(math.Round(255 * colour.LightToSRGB(light)))
	}
	return texture.New(&artwork.Picture{Image: m})
}

// scenery is an even sky over hills, a busy slope and a dark foreground with lit windows. Its detail has
// every size, as in a photograph, where each octave has about the same contrast (Field, Relations between the
// statistics of natural images, JOSA A 4, 1987; recalled from memory).
func scenery(u, v float64) float64 {
	detail := 0.0
	for size := 8.0; size < 500; size *= 2 {
		detail += noise(u*1.5*size, v*size) - 0.5
	}
	switch {
	case v < 0.4:
		return 0.15 + 1.2*v
	case v < 0.55:
		return 0.3 * (1 + 0.15*detail)
	case v < 0.75:
		return (0.1 + 0.4*u) * (1 + 0.6*detail)
	case math.Mod(u*9, 1) < 0.25 && math.Mod(v*14, 1) < 0.4:
		return 0.5
	default:
		return (0.04 + 0.06*u) * (1 + 0.5*detail)
	}
}

// scenic is the scenery, drawn once.
var scenic = sync.OnceValue(func() *texture.Texture { return drawn(scenery) })

// noise goes smoothly, from 0 to 1, between numbers that belong to the whole places and look scrambled.
func noise(x, y float64) float64 {
	at := func(x, y float64) float64 {
		h := uint32(int32(x))*0x9e3779b1 ^ uint32(int32(y))*0x85ebca6b
		h = (h ^ h>>15) * 0x2c1b3c6d
		return float64(h^h>>13) / math.MaxUint32
	}
	x0, y0 := math.Floor(x), math.Floor(y)
	fx, fy := x-x0, y-y0
	upper := at(x0, y0)*(1-fx) + at(x0+1, y0)*fx
	lower := at(x0, y0+1)*(1-fx) + at(x0+1, y0+1)*fx
	return upper*(1-fy) + lower*fy
}

// worst is how many times over its threshold a path shows a seam at the most.
func worst(s seamsight.Seam, path seamsight.Path) float64 {
	sample, _ := s.Worst(path)
	return sample.Sightings[path].OverThreshold()
}

// lightOf is the light of a grey level: half of 255 is 0.2140 (IEC 61966-2-1).
func lightOf(level int) float64 { return colour.SRGBToLight(float64(level) / 255) }
