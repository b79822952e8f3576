package shot

import (
	"math"
	"testing"

	"dropsheet/layout"

	"github.com/stretchr/testify/require"
)

// exposed is the usual plan at 400 mm with a frame that the drop is drawn in at half its size, lit by lamps.
func exposed(t *testing.T, change func(s *layout.Setup)) Shot {
	t.Helper()
	s := plain()
	s.DistanceMM, s.Camera.LensMM, s.Camera.FrameWidthMM = 400, 0, 72 // of a sensor 36 mm wide
	change(&s)
	return Of(mustPlan(t, s))
}

// All by hand, 250 N² (1+m)² / (t S).
func TestNeededLux(t *testing.T) {
	for _, c := range []struct {
		name                   string
		fNumber, frameMM       float64
		shooting               layout.Shooting
		frameRate, want, delta float64
	}{
		// 250 x 127.69 x 2.25 x 2000 / 3200.
		{"f/11.3, m 0.5, 1/2000 s, ISO 3200", 11.3, 72, layout.Shooting{ISO: 3200, ShutterS: 1.0 / 2000}, 0, 44891, 1},
		// 250 x 256 x 2.25 x 25000 / 1600: what such a shot at 25,000 frames a second takes.
		{"f/16, m 0.5, the whole of 1/25000 s, ISO 1600", 16, 72, layout.Shooting{ISO: 1600}, 25000, 2_250_000, 1},
		{"a flash counts, not the frame", 16, 72, layout.Shooting{ISO: 1600, ShutterS: 1.0 / 25000}, 1000, 2_250_000, 1},
		{"f/16, life size, 1/1000 s, ISO 100", 16, 36, layout.Shooting{ISO: 100, ShutterS: 1e-3}, 0, 2_560_000, 1},
		// Sunny 16 (common practice): ISO 100, f/16, 1/100 s from afar is for direct sun: 250 x 256 x 1.018² = 66,300 lux,
		// which is between two thirds and all of it.
		{"sunny 16", 16, 2000, layout.Shooting{ISO: 100, ShutterS: 1e-2}, 0, 66_324, 50},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := exposed(t, func(s *layout.Setup) {
				s.Camera.FNumber, s.Camera.FrameWidthMM, s.Shooting, s.Camera.FrameRate = c.fNumber, c.frameMM, c.shooting,
					c.frameRate
			})
			e := s.Exposure()
			require.NotNil(t, e)
			require.InDelta(t, c.want, e.NeededLux, c.delta)
			require.InDelta(t, c.want/100_000, e.Suns, c.delta/100_000)
			require.Nil(t, e.Given, "without lamps that are known")
		})
	}
}

func TestExposureNotKnown(t *testing.T) {
	for name, shooting := range map[string]layout.Shooting{"no ISO": {ShutterS: 1e-3}, "no shutter": {ISO: 100}} {
		require.Nil(t, exposed(t, func(s *layout.Setup) { s.Shooting = shooting }).Exposure(), name)
	}
	e := exposed(t, func(s *layout.Setup) {
		s.Shooting, s.Lamps = layout.Shooting{ISO: 100, ShutterS: 1e-3}, []layout.Lamp{{ZMM: 900}}
	}).Exposure()
	require.NotNil(t, e)
	require.Nil(t, e.Given, "lamps of which the light is not known")
}

// What each way makes of the shot: light needed and given are then the same.
func TestWaysCloseTheGap(t *testing.T) {
	for _, c := range []struct {
		name  string
		lamps []layout.Lamp
		over  float64 // stops, by hand: log2 of given over needed, 2,250,000 lux
	}{
		// 30,000 lux at 1 m from 0.5 m: 120,000. log2(120/2250) = -4.2288.
		{"one lamp, straight on", []layout.Lamp{{ZMM: 500, LuxAt1M: 30000}}, -4.2288},
		{"far too much", []layout.Lamp{{ZMM: 200, LuxAt1M: 720_000}}, 3},
		// 5867.7 lux for 10,000 (from the side, |S|² 1.33 m²) twice over, 117,354 for 100,000 each.
		{"two from the sides", []layout.Lamp{{XMM: -600, YMM: -400, ZMM: 900, LuxAt1M: 100_000},
			{XMM: 600, YMM: -400, ZMM: 900, LuxAt1M: 100_000}}, math.Log2(117_354 / 2.25e6)},
		{"aimed at the drop, with a beam", []layout.Lamp{{XMM: 600, ZMM: 1600, LuxAt1M: 6e6, BeamDeg: 40,
			Aim: layout.Aim{AtDrop: true}}}, math.NaN()},
	} {
		t.Run(c.name, func(t *testing.T) {
			setup := func(s *layout.Setup) {
				s.Camera.FNumber, s.Camera.FrameRate, s.Shooting.ISO, s.Lamps = 16, 25000, 1600, c.lamps
			}
			e := exposed(t, setup).Exposure()
			if !math.IsNaN(c.over) {
				require.InDelta(t, c.over, e.Given.OverStops, 1e-4)
			}
			require.InDelta(t, math.Log2(e.Given.Lux/e.NeededLux), e.Given.OverStops, 1e-9)
			ways := e.Given.Ways
			for name, change := range map[string]func(s *layout.Setup){
				"rate":        func(s *layout.Setup) { s.Camera.FrameRate = ways.FrameRate },
				"ISO":         func(s *layout.Setup) { s.Shooting.ISO = ways.ISO },
				"stop":        func(s *layout.Setup) { s.Camera.FNumber = ways.FNumber },
				"lamps moved": func(s *layout.Setup) { s.Lamps = ways.Lamps },
				"lamps as strong": func(s *layout.Setup) {
					s.Lamps = append([]layout.Lamp(nil), s.Lamps...)
					for i := range s.Lamps {
						s.Lamps[i].LuxAt1M *= ways.LampsTimes
					}
				},
				"shutter": func(s *layout.Setup) { s.Shooting.ShutterS = ways.ShutterS },
			} {
				if name == "shutter" && ways.ShutterS == 0 {
					require.Negative(t, e.Given.OverStops, "no frame lasts so long")
					continue
				}
				after := exposed(t, func(s *layout.Setup) { setup(s); change(s) }).Exposure()
				require.InDelta(t, 0, after.Given.OverStops, 1e-6, name)
			}
			for i, lamp := range ways.Lamps {
				require.InEpsilon(t, ways.LampsFactor*c.lamps[i].ZMM, lamp.ZMM, 1e-9)
			}
		})
	}
}

func TestWaysThatAreNone(t *testing.T) {
	e := exposed(t, func(s *layout.Setup) {
		s.Camera.FNumber, s.Camera.FrameRate, s.Shooting = 4, 25000, layout.Shooting{ISO: 100, ShutterS: 2e-5}
		s.Lamps = []layout.Lamp{{ZMM: 1000, LuxAt1M: 100}}
	}).Exposure()
	require.Zero(t, e.Given.Ways.FNumber, "no lens opens so far")
	require.Zero(t, e.Given.Ways.FrameRate, "a flash knows no rate")
	require.Zero(t, e.Given.Ways.ShutterS, "longer than a frame")
	require.Positive(t, e.Given.Ways.ISO)

	// A weak lamp at the side must come right behind the drop, into the frame.
	e = exposed(t, func(s *layout.Setup) {
		s.Shooting = layout.Shooting{ISO: 1600, ShutterS: 4e-5}
		s.Lamps = []layout.Lamp{{XMM: 300, ZMM: 900, LuxAt1M: 1000}}
	}).Exposure()
	require.True(t, e.Given.Ways.LampsSeen)
	e = exposed(t, func(s *layout.Setup) {
		s.Shooting = layout.Shooting{ISO: 1600, ShutterS: 4e-5}
		s.Lamps = []layout.Lamp{{XMM: 600, ZMM: 900, LuxAt1M: 2e6}}
	}).Exposure()
	require.False(t, e.Given.Ways.LampsSeen)

	// Nearer, a lamp so close to the drop and aimed at it looks past the board's middle, and gives that less.
	e = exposed(t, func(s *layout.Setup) {
		s.Shooting = layout.Shooting{ISO: 1600, ShutterS: 4e-5}
		s.Lamps = []layout.Lamp{{XMM: 300, ZMM: 800, LuxAt1M: 2e6, BeamDeg: 40, Aim: layout.Aim{AtDrop: true}}}
	}).Exposure()
	require.Negative(t, e.Given.OverStops)
	require.Zero(t, e.Given.Ways.LampsFactor)
	require.Empty(t, e.Given.Ways.Lamps)

	e = exposed(t, func(s *layout.Setup) {
		s.Shooting = layout.Shooting{ISO: 100, ShutterS: 2e-5}
		s.Lamps = []layout.Lamp{{ZMM: 100, LuxAt1M: 100, Aim: layout.Aim{AtDrop: true}}}
	}).Exposure()
	require.Zero(t, e.Given.Lux)
	require.Equal(t, -layout.NoLightStops, e.Given.OverStops)
	require.Zero(t, e.Given.Ways, "a lamp turned away gives nothing, however strong")
}
