package job

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job/jobtest"
)

// setup is a drop of water before sheets of A4, for a camera of few pixels; change makes something else of it.
func setup(t testing.TB, change func(*layout.Setup)) layout.Setup {
	t.Helper()
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	s := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.333}, CameraMM: 300, Proportions: 1.5,
		Fit: layout.Cover, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10, LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 120, HeightPx: 80,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest, SharpToPx: 2},
	}
	change(&s)
	return s
}

// levelled is a setup with a lamp that the print makes up for, a travel and a surround.
func levelled(s *layout.Setup) {
	s.Lamps, s.Level, s.TravelMM = []layout.Lamp{{XMM: -400, YMM: -400, ZMM: 300}}, true, 0.5
	s.Surround, s.SurroundSize = "#000080", layout.Size{WidthMM: 920, HeightMM: 620}
}

// filmed is a setup of which all is known that tells of exposure and motion.
func filmed(s *layout.Setup) {
	s.Material, s.Camera.FrameRate = "water", 12500
	s.Shooting = layout.Shooting{ISO: 1600, ShutterS: 20e-6, FallMM: 200, PlaybackFPS: 30, NozzleMM: 3}
	s.Lamps = []layout.Lamp{{XMM: -600, ZMM: 800, LuxAt1M: 5000, SizeMM: 80, BeamDeg: 60, Aim: layout.Aim{AtDrop: true}},
		{XMM: 600, ZMM: 800, LuxAt1M: 8000, Aim: layout.Aim{XMM: 50, YMM: -30}}}
}

// order is an order of a small pattern, into a new folder.
func order(t testing.TB, change func(*layout.Setup)) Order {
	t.Helper()
	art, _ := jobtest.WritePattern(t, 60, 40)
	return Order{
		Artwork: art, Limits: artwork.Default, Setup: setup(t, change), Seams: layout.SeamsLeast,
		PPI: PPI{Most: shot.DefaultPPI}, Folder: filepath.Join(t.TempDir(), "job"),
	}
}
