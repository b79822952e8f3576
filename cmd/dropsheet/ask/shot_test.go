package ask

import (
	"context"
	"strings"
	"testing"

	"github.com/spf13/pflag"
	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// sized is the plan that size comes to by words.
func sized(words string) (layout.Plan, error) {
	var s Size
	flags := pflag.NewFlagSet("size", pflag.ContinueOnError)
	s.Register(flags)
	if err := flags.Parse(strings.Fields(words)); err != nil {
		return layout.Plan{}, err
	}
	p, _, err := s.Plan(context.Background())
	return p, err
}

// tried is a plan as the words of proof would have it; those of seams come to the same.
func tried(t *testing.T, p layout.Plan, words string) (layout.Plan, error) {
	t.Helper()
	var asked Proof
	flags := pflag.NewFlagSet("proof", pflag.ContinueOnError)
	asked.Register(flags)
	require.NoError(t, flags.Parse(strings.Fields(words)))
	proof, err := asked.Apply(p)

	var seams Seams
	flags = pflag.NewFlagSet("seams", pflag.ContinueOnError)
	seams.Register(flags)
	require.NoError(t, flags.Parse(strings.Fields(words)))
	same, errSeams := seams.Apply(p)
	require.Equal(t, proof, same)
	require.Equal(t, err, errSeams)
	return proof, err
}

// Of lens, frame width and camera distance any two give the third. By the thin lens, magnification m = F/(D - F) and
// frame width = sensor / m: a 100 mm lens 300 mm off sees 36 x (300 - 100)/100 = 72 mm on a 36 mm sensor, and 9 x 2 =
// 18 mm on one of 9 mm.
func TestLensFrameAndDistance(t *testing.T) {
	for _, c := range []struct {
		name, words               string
		lensMM, frameMM, cameraMM float64
	}{
		{"none", "", 100, 72, 300},
		{"lens", "--lens 60mm", 60, 144, 300},
		{"lens and distance", "--lens 100mm --camera-distance 40cm", 100, 108, 400},
		{"distance", "--camera-distance 40cm", 100, 108, 400},
		{"frame", "--frame-width 72mm", 100, 72, 300},
		{"frame and distance", "--frame-width 108mm --camera-distance 40cm", 100, 108, 400},
		{"lens and frame", "--lens 100mm --frame-width 108mm", 100, 108, 400},
		{"lens and frame, on a small sensor", "--lens 100mm --frame-width 18mm --sensor 9x6mm", 100, 18, 300},
		// Of 36 x 24 mm, 3000 x 3000 pixels use 24 x 24: 100 x (1 + 48/24) = 300.
		{"lens and frame, on a part of the sensor", "--lens 100mm --frame-width 48mm --pixels 3000x3000", 100, 48, 300},
		// 1280 pixels of 28 micrometres are 35.84 mm: 36 there, 71.68 here.
		{"lens and distance, the sensor by its pixels", "--pixel-size 28um --pixels 1280x800", 100, 71.68, 300},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := sized("--distance 40cm " + c.words)
			require.NoError(t, err)
			require.InDelta(t, c.lensMM, p.Camera.LensMM, 1e-9)
			require.InDelta(t, c.frameMM, p.Camera.FrameWidthMM, 1e-9)
			require.InDelta(t, c.cameraMM, p.Drop.CameraMM, 1e-9)
		})
	}
}

// The same on a job, made with a 100 mm lens 400 mm off on a 36 mm sensor: 108 mm of frame.
func TestLensFrameAndDistanceOfAJob(t *testing.T) {
	made, err := sized("--distance 40cm --camera-distance 40cm --pixels 1200x800")
	require.NoError(t, err)
	for _, c := range []struct {
		name, words               string
		lensMM, frameMM, cameraMM float64
	}{
		{"none", "", 100, 108, 400},
		{"lens", "--lens 80mm", 80, 144, 400},
		{"distance", "--camera-distance 30cm", 100, 72, 300},
		{"frame", "--frame-width 36mm", 200, 36, 400},
		{"lens and frame", "--lens 100mm --frame-width 72mm", 100, 72, 300},
		{"lens and distance", "--lens 60mm --camera-distance 18cm", 60, 72, 180},
		{"frame and distance", "--frame-width 36mm --camera-distance 30cm", 150, 36, 300},
		{"sensor", "--sensor 18x12mm", 100, 54, 400},
		{"pixel size", "--pixel-size 15um", 100, 54, 400}, // 1200 of them are 18 mm
		{"pixel size and pixels", "--pixel-size 15um --pixels 600x400", 100, 27, 400},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := tried(t, made, c.words)
			require.NoError(t, err)
			require.InDelta(t, c.lensMM, p.Camera.LensMM, 1e-9)
			require.InDelta(t, c.frameMM, p.Camera.FrameWidthMM, 1e-9)
			require.InDelta(t, c.cameraMM, p.Drop.CameraMM, 1e-9)
		})
	}
}

// An eye takes a camera's place, with the words that it leaves open; and a camera that of an eye.
func TestEyeInPlaceOfACamera(t *testing.T) {
	p, err := sized("--distance 40cm --camera eye --pixels 480x320 --focus edge --aperture f/8")
	require.NoError(t, err)
	require.True(t, p.Camera.Eye)
	require.Equal(t, 480, p.Camera.WidthPx)
	require.Equal(t, 8.0, p.Camera.FNumber)
	require.Equal(t, layout.FocusEdge, p.Camera.Focus)
	camera, err := tried(t, p, "--lens 50mm --sensor 36x24mm")
	require.NoError(t, err)
	require.False(t, camera.Camera.Eye)
	eye, err := tried(t, camera, "--camera eye")
	require.NoError(t, err)
	require.Equal(t, layout.Eye().FNumber, eye.Camera.FNumber)
	require.Equal(t, 4800, eye.Camera.WidthPx)
	require.Equal(t, layout.FocusEdge, eye.Camera.Focus)
	for _, own := range []string{"--lens 50mm", "--sensor 36x24mm", "--frame-width 9mm", "--pixel-size 5um"} {
		_, err := sized("--distance 40cm --camera eye --pixels 480x320 " + own)
		require.ErrorContains(t, err, "an eye has its own")
	}
}

// It is known whether someone said how large the sensor is.
func TestSensorThatNobodyNamed(t *testing.T) {
	for words, assumed := range map[string]bool{
		"": true, "--frame-width 4cm": true, "--pixels 1920x1080": true, "--sensor 36x24mm": false,
		"--pixel-size 5um --pixels 1920x1080": false,
	} {
		p, err := sized(words)
		require.NoError(t, err, words)
		require.Equal(t, assumed, p.Camera.SensorAssumed, words)
		p, err = tried(t, p, "--aperture f/8")
		require.NoError(t, err)
		require.Equal(t, assumed, p.Camera.SensorAssumed, "another stop leaves that as it was")
		p, err = tried(t, p, "--sensor 30x20mm")
		require.NoError(t, err)
		require.False(t, p.Camera.SensorAssumed)
	}
}

// What is known of lamps is said once for all of them, or once for each in their order.
func TestLampsTold(t *testing.T) {
	at := func(more ...func(*layout.Lamp)) []layout.Lamp {
		lamps := []layout.Lamp{{XMM: -600, ZMM: 900}, {XMM: 600, ZMM: 900}}
		for i, f := range more {
			f(&lamps[i%2])
		}
		return lamps
	}
	lux := func(v float64) func(*layout.Lamp) { return func(l *layout.Lamp) { l.LuxAt1M = v } }
	two := "--distance 40cm --lamp -60cm,0cm,90cm --lamp 60cm,0cm,90cm "
	for _, c := range []struct {
		name, words string
		want        []layout.Lamp
		says        string
	}{
		{"nothing", two, at(), ""},
		{"once for all", two + "--lamp-lux 5000", at(lux(5000), lux(5000)), ""},
		{"once for each", two + "--lamp-lux 5000 --lamp-lux 800", at(lux(5000), lux(800)), ""},
		{"said before the lamps", "--lamp-lux 5000 " + two, at(lux(5000), lux(5000)), ""},
		{"all four", two + "--lamp-size 8cm --lamp-beam 40 --lamp-beam 60 --lamp-aim drop --lamp-aim 1cm,-2cm", at(
			func(l *layout.Lamp) { l.SizeMM, l.BeamDeg, l.Aim.AtDrop = 80, 40, true },
			func(l *layout.Lamp) { l.SizeMM, l.BeamDeg, l.Aim = 80, 60, layout.Aim{XMM: 10, YMM: -20} }), ""},
		{"too many", two + "--lamp-lux 1 --lamp-lux 2 --lamp-lux 3", nil,
			"--lamp-lux is given 3 times, and the lamps are 2\n" +
				"hint: give it once for all of them, or once for each in their " +
				"order"},
		{"too few", two + "--lamp 0cm,0cm,2m --lamp-beam 40 --lamp-beam 60", nil,
			"--lamp-beam is given 2 times, and the lamps are 3"},
		{"of no lamp", "--lamp-size 5cm", nil, "--lamp-size tells of lamps and there is none\n" +
			"hint: say with --lamp where each " +
			"stands"},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := sized(c.words)
			if c.says != "" {
				require.ErrorContains(t, err, c.says)
				require.True(t, job.IsWrongWords(err))
				return
			}
			require.NoError(t, err)
			require.Equal(t, c.want, p.Lamps)
		})
	}
	t.Run("of a job's lamps", func(t *testing.T) {
		made, err := sized(two + "--lamp-lux 5000 --lamp-beam 40")
		require.NoError(t, err)
		p, err := tried(t, made, "--lamp-lux 700 --lamp-lux 900")
		require.NoError(t, err)
		require.Equal(t, at(lux(700), lux(900), func(l *layout.Lamp) { l.BeamDeg = 40 },
			func(l *layout.Lamp) { l.BeamDeg = 40 }), p.Lamps)
		require.Equal(t, 5000.0, made.Lamps[0].LuxAt1M, "the job's own stay as they were")
		p, err = tried(t, made, "--lamp 1m,1m,1m")
		require.NoError(t, err)
		require.Equal(t, []layout.Lamp{{XMM: 1000, YMM: 1000, ZMM: 1000}}, p.Lamps, "other lamps, of which nothing is known")
	})
}

// Exposure and motion come from the words, and what is not given stays as in the job.
func TestShooting(t *testing.T) {
	made, err := sized("--distance 40cm --iso 1600 --frame-rate 12500 --shutter 20us --fall 20cm --playback 30 " +
		"--nozzle 3mm")
	require.NoError(t, err)
	want := layout.Shooting{ISO: 1600, ShutterS: 20e-6, FallMM: 200, PlaybackFPS: 30, NozzleMM: 3}
	require.Equal(t, want, made.Shooting)
	for _, c := range []struct {
		name, words string
		change      func(*layout.Shooting)
	}{
		{"nothing", "", func(*layout.Shooting) {}},
		{"more sensitive", "--iso 3200", func(s *layout.Shooting) { s.ISO = 3200 }},
		{"longer open", "--shutter 1/12500s", func(s *layout.Shooting) { s.ShutterS = 1.0 / 12500 }},
		{"from higher up", "--fall 1m", func(s *layout.Shooting) { s.FallMM = 1000 }},
		{"by its speed", "--speed -2m/s", func(s *layout.Shooting) { s.FallMM, s.SpeedMMPerS = 0, -2000 }},
		{"shown faster", "--playback 60", func(s *layout.Shooting) { s.PlaybackFPS = 60 }},
	} {
		t.Run(c.name, func(t *testing.T) {
			p, err := tried(t, made, c.words)
			require.NoError(t, err)
			want := want
			c.change(&want)
			require.Equal(t, want, p.Shooting)
		})
	}
	byFall, err := sized("--distance 40cm --speed 2m/s")
	require.NoError(t, err)
	byFall, err = tried(t, byFall, "--fall 1m")
	require.NoError(t, err)
	require.Equal(t, layout.Shooting{FallMM: 1000}, byFall.Shooting, "the fall takes the place of the speed")
}

// What can't go together is refused, in the words of the flags.
func TestWordsOfTheShotThatCantBe(t *testing.T) {
	for _, c := range []struct{ name, words, says string }{
		{"fall and speed", "--fall 20cm --speed 2m/s", "--fall gives the drop's speed, and --speed says it\nhint: give " +
			"one of them"},
		{"a fall of a rod", "--fall 20cm --body upright-rod", "a rod stands still"},
		{"open for longer than a frame", "--frame-rate 12500 --shutter 1/1000s", "longer than a frame lasts"},
		{"all three of the frame", "--lens 100mm --frame-width 72mm --camera-distance 30cm",
			"of --lens, --frame-width and --camera-distance any two give the third\nhint: leave one of them out"},
		{"a lens and frame that ask for a camera in the drop", "--lens 2mm --frame-width 10mm", "move it further off"},
		{"two sensors", "--sensor 36x24mm --pixel-size 5um --pixels 1920x1080",
			"--sensor and --pixel-size both say how large the sensor is\nhint: give one of them"},
		{"pixels of which nobody said how many", "--pixel-size 28um", "say with --pixels how many are read out"},
		{"three sizes of the drop", "--drop 5mm --drops-per-ml 20 --jet 2mm",
			"--drop and --drops-per-ml and --jet each say how large the drop is\nhint: give one of them"},
		{"a nozzle and a jet", "--nozzle 3mm --jet 2mm", "--nozzle and --jet each say how large the drop is"},
		{"too fine a nozzle", "--nozzle 0.5mm", "take such a nozzle, or measure the drops and give their diameter"},
		{"a nozzle of what is not known", "--nozzle 3mm --liquid 1.4", "take a liquid that has a name"},
		{"a jet of glass", "--jet 3mm --liquid crown-glass", "take a liquid that has a name"},
		{"a rod out of a nozzle", "--nozzle 3mm --body level-rod", "a rod comes from no nozzle and no jet\nhint: give " +
			"its diameter"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := sized(c.words)
			require.ErrorContains(t, err, c.says)
			require.True(t, job.IsWrongWords(err))
		})
	}
}

// A drop's size by what it comes from. A jet's drops are the cube root of 1.5 x 4.508, 1.8908, times as wide as it
// (Rayleigh 1878). Water off a nozzle of 3 mm: some 4.5 mm (Tate's law with the share of Harkins and Brown).
func TestDropByWhatItComesFrom(t *testing.T) {
	p, err := sized("--jet 2mm")
	require.NoError(t, err)
	require.InDelta(t, 3.7816, p.Drop.DiameterMM, 1e-3)
	require.Equal(t, 2.0, p.Shooting.JetMM)
	p, err = sized("--nozzle 3mm")
	require.NoError(t, err)
	require.InDelta(t, 4.5, p.Drop.DiameterMM, 0.05)
	p, err = sized("--nozzle 3mm --liquid ethanol")
	require.NoError(t, err)
	require.Less(t, p.Drop.DiameterMM, 3.6, "ethanol holds a third as strongly")
}
