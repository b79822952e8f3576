package layout

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCamera(t *testing.T) {
	for _, c := range []struct {
		name             string
		setup            CameraSetup
		lensMM           float64
		frameW, frameH   float64
		sensorW, sensorH float64
	}{
		// Thin lens, Hecht, Optics, 5.2.3: a 100 mm lens focused at 300 mm images at m = 100/200, so 36 mm of
		// sensor see 72 mm.
		{"by the lens", CameraSetup{Sensor: Size{36, 24}, WidthPx: 6000, HeightPx: 4000, LensMM: 100, FrameWidthMM: 0,
			FNumber: 16, Focus: FocusBest}, 100, 72, 48, 36, 24},
		{"by the frame: the lens follows", CameraSetup{Sensor: Size{36, 24}, WidthPx: 6000, HeightPx: 4000, LensMM: 0,
			FrameWidthMM: 72, FNumber: 16, Focus: FocusBest}, 100, 72, 48, 36, 24},
		{"at equal size a lens focuses at twice its length", CameraSetup{Sensor: Size{36, 24}, WidthPx: 6000,
			HeightPx: 4000, LensMM: 150, FrameWidthMM: 0, FNumber: 16, Focus: FocusBest}, 150, 36, 24, 36, 24},
		{"wider pixels use part of the height", CameraSetup{Sensor: Size{36, 24}, WidthPx: 1920, HeightPx: 1080,
			LensMM: 100, FrameWidthMM: 0, FNumber: 16, Focus: FocusBest}, 100, 72, 40.5, 36, 20.25},
		{"square pixels use part of the width", CameraSetup{Sensor: Size{36, 24}, WidthPx: 1000, HeightPx: 1000,
			LensMM: 100, FrameWidthMM: 0, FNumber: 16, Focus: FocusBest}, 100, 48, 48, 24, 24},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := c.setup.camera(300)
			require.NoError(t, err)
			require.InDelta(t, c.lensMM, got.LensMM, 1e-9)
			require.InDelta(t, c.frameW, got.FrameWidthMM, 1e-9)
			require.InDelta(t, c.frameH, got.FrameHeightMM, 1e-9)
			require.InDelta(t, c.sensorW, got.Sensor.WidthMM, 1e-9)
			require.InDelta(t, c.sensorH, got.Sensor.HeightMM, 1e-9)
		})
	}
}

// By hand: the sensor is centred on the axis, so four pixels over 8 mm have their centres 1 and 3 mm to either side of
// it, half a pixel from their corners, which whole numbers count.
func TestCameraAt(t *testing.T) {
	c := Camera{WidthPx: 4, HeightPx: 2, FrameWidthMM: 8, FrameHeightMM: 4}
	require.Equal(t, Point{-3, -1}, c.At(0.5, 0.5))
	require.Equal(t, Point{3, 1}, c.At(3.5, 1.5))
	require.Equal(t, Point{0, 0}, c.At(2, 1))
	require.Equal(t, 2.0, c.PixelMM())
}

// An eye by figures that it was not built from: the Snellen letter of 6/6 is seen under 5 minutes of arc, 8.73 mm
// high at 6 m (from memory), so that it covers two pixels for each of its minutes; Emsley's reduced eye images 1
// radian on 16.67 mm (from memory), and the pupil of a lit room is 3 mm wide.
func TestEye(t *testing.T) {
	c, err := Eye().camera(6000)
	require.NoError(t, err)
	require.InDelta(t, 10, 8.73/c.PixelMM(), 0.4, "pixels on a letter of 5 minutes, 2 a minute")
	require.InDelta(t, 16.67, c.LensMM, 0.005)
	require.InDelta(t, 3, c.PupilMM(), 0.05)
	require.InDelta(t, 40, 2*math.Atan(c.FrameWidthMM/2/6000)*180/math.Pi, 1, "degrees taken in")
	require.True(t, c.Eye)
	require.True(t, c.AsSetup().Eye)
	require.False(t, c.SensorAssumed, "its size is that of an eye")
}
