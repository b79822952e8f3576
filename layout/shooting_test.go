package layout

import (
	"encoding/json"
	"math"
	"testing"

	"dropsheet/flip"

	"github.com/stretchr/testify/require"
)

func TestShutterAndSpeed(t *testing.T) {
	for _, c := range []struct {
		name             string
		shooting         Shooting
		frameRate        float64
		shutterS, mmPerS float64 // 0: not known
		playback         float64
	}{
		{"nothing known", Shooting{}, 0, 0, 0, 25},
		{"the whole frame", Shooting{}, 12500, 8e-5, 0, 25},
		{"a flash", Shooting{ShutterS: 2e-5}, 1000, 2e-5, 0, 25},
		{"a shutter alone", Shooting{ShutterS: 2e-5}, 0, 2e-5, 0, 25},
		{"20 cm of fall, by hand", Shooting{FallMM: 200, PlaybackFPS: 30}, 0, 0, 1980.57, 30},
		{"rising", Shooting{SpeedMMPerS: -1500}, 0, 0, -1500, 25},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.DistanceMM, s.Shooting, s.Camera.FrameRate = 400, c.shooting, c.frameRate
			p := mustPlan(t, s)
			require.NoError(t, p.Check())
			shutterS, ok := p.ShutterS()
			require.Equal(t, c.shutterS != 0, ok)
			require.InDelta(t, c.shutterS, shutterS, 1e-12)
			mmPerS, ok := p.Shooting.DropSpeedMMPerS()
			require.Equal(t, c.mmPerS != 0, ok)
			require.InDelta(t, c.mmPerS, mmPerS, 0.01)
			require.Equal(t, c.playback, p.Shooting.Playback())
		})
	}
}

func TestShootingRefused(t *testing.T) {
	for _, c := range []struct {
		name     string
		shooting Shooting
		body     flip.Body
		says     string
	}{
		{"ISO", Shooting{ISO: -100}, flip.Ball, "ISO -100 can't be"},
		{"no ISO at all", Shooting{ISO: math.NaN()}, flip.Ball, "ISO NaN can't be"},
		{"hardly any ISO", Shooting{ISO: 1e-300}, flip.Ball, "ISO 1e-300 can't be\nhint: take one from 0.001"},
		{"hardly any shutter", Shooting{ShutterS: 1e-300}, flip.Ball, "open for 1e-300 seconds can't be"},
		{"hardly any fall", Shooting{FallMM: 1e-300}, flip.Ball, "a fall of 1e-300mm can't be"},
		{"hardly any speed", Shooting{SpeedMMPerS: -1e-300}, flip.Ball, "can't move at -1e-300mm/s"},
		{"hardly any playback", Shooting{PlaybackFPS: 1e-300}, flip.Ball, "playback of 1e-300 frames a second can't be"},
		{"a nozzle and a jet", Shooting{NozzleMM: 3, JetMM: 2}, flip.Ball, "it comes from one of them"},
		{"a jet of a rod", Shooting{JetMM: 2}, flip.LevelRod, "a rod comes from no nozzle and no jet"},
		{"a nozzle of less than nothing", Shooting{NozzleMM: -2}, flip.Ball, "a nozzle of -2mm"},
		{"shutter", Shooting{ShutterS: math.Inf(1)}, flip.Ball, "open for +Inf seconds can't be"},
		{"longer than a frame", Shooting{ShutterS: 1e-3}, flip.Ball,
			"at 12500 frames a second a shutter can't be open for 0.001s, longer than a frame lasts\nhint: take at " +
				"most 1/12500s, "},
		{"fall", Shooting{FallMM: -3}, flip.Ball, "a fall of -3mm can't be"},
		{"speed", Shooting{SpeedMMPerS: -1e7}, flip.Ball, "can't move at -1e+07mm/s"},
		{"no speed at all", Shooting{SpeedMMPerS: math.NaN()}, flip.Ball, "can't move at NaNmm/s"},
		{"fall and speed", Shooting{FallMM: 200, SpeedMMPerS: 2000}, flip.Ball, "leave out one of the two"},
		{"a falling rod", Shooting{FallMM: 200}, flip.UprightRod, "a rod stands still"},
		{"a moving rod", Shooting{SpeedMMPerS: 1}, flip.LevelRod, "a rod stands still"},
		{"playback", Shooting{PlaybackFPS: -1}, flip.Ball, "playback of -1 frames a second can't be"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := plain()
			s.DistanceMM, s.Drop.Body, s.Camera.FrameRate = 400, c.body, 12500
			p := mustPlan(t, s)
			_, err := p.WithShooting(c.shooting)
			require.ErrorContains(t, err, c.says)
			s.Shooting = c.shooting
			_, err = s.Plan()
			require.ErrorContains(t, err, c.says)
			p.Shooting = c.shooting
			require.ErrorContains(t, p.Check(), c.says, "a job that was spoiled")
		})
	}
}

// A plan of which nothing was asked is written as it always was; what was asked is kept, in variants too.
func TestShootingIsKept(t *testing.T) {
	s := plain()
	s.DistanceMM = 400
	text, err := json.Marshal(mustPlan(t, s))
	require.NoError(t, err)
	require.NotContains(t, string(text), "shooting")

	asked := Shooting{ISO: 3200, ShutterS: 2e-5, FallMM: 200, PlaybackFPS: 30}
	p, err := mustPlan(t, s).WithShooting(asked)
	require.NoError(t, err)
	text, err = json.Marshal(p)
	require.NoError(t, err)
	require.Contains(t, string(text), `"shooting":{"iso":3200,"shutter_s":0.00002,"fall_mm":200,"playback_fps":30}`)
	var back Plan
	require.NoError(t, json.Unmarshal(text, &back))
	require.Equal(t, asked, back.Shooting)
	straight, err := p.WithLook(Straight)
	require.NoError(t, err)
	require.Equal(t, asked, straight.Shooting)
}
