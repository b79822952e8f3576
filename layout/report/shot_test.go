package report

import (
	"encoding/json"
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
)

// reportOf is the report of a drop of water 5 mm wide, 400 mm before the board, seen at half life size by 6000 x 4000
// pixels of 0.012 mm at the drop; change makes something else of it.
func reportOf(t *testing.T, change func(*layout.Setup)) *Report {
	t.Helper()
	a4, err := layout.ParsePaper("A4")
	require.NoError(t, err)
	s := layout.Setup{
		Drop: flip.Drop{Body: flip.Ball, DiameterMM: 5, Index: 1.33299}, Material: "water", CameraMM: 300, DistanceMM: 400,
		Proportions: 1.5, Fit: layout.Cover, Paper: a4, Orientation: layout.Auto, MarginMM: 5, LapMM: 10,
		LightFrom: layout.TopLeft,
		Camera: layout.CameraSetup{Sensor: layout.Size{WidthMM: 36, HeightMM: 24}, WidthPx: 6000, HeightPx: 4000,
			LensMM: 100, FNumber: 16, Focus: layout.FocusBest, SharpToPx: 2},
	}
	change(&s)
	p, err := s.Plan()
	require.NoError(t, err)
	return Of(p)
}

// requireTold requires of facts, by key, what their text contains; of those with "" that there is none.
func requireTold(t *testing.T, r *Report, says map[string]string) {
	t.Helper()
	for key, words := range says {
		f, ok := r.Fact(key)
		require.Equal(t, words != "", ok, "%s: %s", key, f.Text)
		require.Contains(t, f.Text.String(), words, key)
	}
}

// panels are two lamps 1 m from the board's middle, aimed at it, their light at 1 m as given: by the cosine of where
// they stand, 0.8, the middle gets 1.6 times as much as one gives straight before it.
func panels(lux float64) []layout.Lamp {
	return []layout.Lamp{{XMM: -600, ZMM: 800, LuxAt1M: lux}, {XMM: 600, ZMM: 800, LuxAt1M: lux}}
}

// E = C N² (1+m)² / (t S), C = 250 (ISO 2720), m = 0.5. At f/16, 1/25000 s and ISO 1600 that is 250 x 256 x 2.25 x
// 25000 / 1600 = 2,250,000; at f/11.3, 1/2000 s and ISO 3200 250 x 127.69 x 2.25 x 2000 / 3200 = 44,892.
func TestLightIsTold(t *testing.T) {
	slow := func(lamps []layout.Lamp) func(*layout.Setup) {
		return func(s *layout.Setup) {
			s.Camera.FNumber, s.Camera.FrameRate, s.Shooting.ISO, s.Lamps = 11.3, 2000, 3200, lamps
		}
	}
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		says   map[string]string
	}{
		{"no ISO", func(s *layout.Setup) { s.Camera.FrameRate = 25000 },
			map[string]string{"lux.needed": "", "lux.source": "", "lux.suns": "", "lux.given": "", "lux.ways": ""}},
		{"no exposure", func(s *layout.Setup) { s.Shooting.ISO = 1600 }, map[string]string{"lux.needed": ""}},
		{"no lamps", func(s *layout.Setup) { s.Camera.FrameRate, s.Shooting.ISO = 25000, 1600 },
			map[string]string{
				"lux.needed": "at f/16, 1/25000 s and ISO 1600, the drop at 50 % of life size on the sensor, the board's middle " +
					"needs 2,250,000 lux",
				"lux.source": "ISO 2720", "lux.given": "", "lux.ways": "", "lux.suns": "about 22 times direct sun"}},
		{"lamps of which nothing is known", slow([]layout.Lamp{{XMM: -600, ZMM: 800}}),
			map[string]string{"lux.needed": "needs 44,900 lux", "lux.suns": "about 0.45 times direct sun", "lux.given": "",
				"light.known": ""}},
		// 32,000 given: too little by a factor of 1.403, or 0.49 stops. f/11.3 / 1.1844 = 9.54, 2000 / 1.403 = 1426, 3200 x
		// 1.403 = 4489; by the inverse square the lamps go to 1 / 1.1844 = 0.844 of their distance, 506.6 and 675.4 mm.
		{"lamps too weak", slow(panels(20000)),
			map[string]string{"lux.given": "the lamps give it 32,000 lux, 0.5 stops too dark", "lux.suns": "",
				"lux.ways": "each of these alone mends it: f/9.5; 1426 frames a second; ISO 4490; every lamp 0.84 times as far " +
					"from the board's middle (--lamp -507mm,0mm,675mm --lamp 507mm,0mm,675mm); 1.5 times as many lamps",
				"light.known": "every lamp gives 20,000 lux at 1 m"}},
		// 128,000 given: 2.851 times too much, 1.51 stops. f/11.3 x 1.6886 = 19.08, 2000 x 2.851 = 5703, 3200 / 2.851 = 1122,
		// lamps 1.6886 times as far.
		{"lamps too strong", slow(panels(80000)),
			map[string]string{"lux.given": "the lamps give it 128,000 lux, 1.5 stops too light",
				"lux.ways": "f/19.1; 5703 frames a second; ISO 1120; every lamp 1.7 times as far from the board's middle (--lamp " +
					"-1013mm,0mm,1351mm --lamp 1013mm,0mm,1351mm)"}},
		{"lamps just right", slow(panels(44892 / 1.6)),
			map[string]string{"lux.given": "the lamps give it 44,900 lux, which is just that", "lux.ways": ""}},
		// A lamp between drop and board that points at the drop leaves the board behind it.
		{"a lamp that points away", slow([]layout.Lamp{{ZMM: 100, LuxAt1M: 5000, Aim: layout.Aim{AtDrop: true}}}),
			map[string]string{"lux.given": "the lamps give it no light at all", "lux.ways": "",
				"light.known": "lamp 1 gives 5000 lux at 1 m, points at the drop"}},
		// Flash: 44,892 x (1/2000) / 20 us = 1,122,300. The shutter may be 35.07 times as long: 1/1426 s.
		{"a shutter of its own", func(s *layout.Setup) { slow(panels(20000))(s); s.Shooting.ShutterS = 20e-6 },
			map[string]string{"lux.needed": "1/50000 s", "lux.given": "32,000 lux, 5.1 stops too dark",
				"lux.ways": "f/1.9; ISO 112000; "}},
		{"a shutter of its own, no rate", func(s *layout.Setup) {
			slow(panels(20000))(s)
			s.Camera.FrameRate, s.Shooting.ShutterS = 0, 20e-6
		}, map[string]string{"lux.ways": "f/1.9; a shutter of 1/1430 s; ISO 112000; "}},
	} {
		t.Run(c.name, func(t *testing.T) { requireTold(t, reportOf(t, c.change), c.says) })
	}
}

// v² = 2gh: 200 mm of fall give 1.9806 m/s. In 1/25000 s that is 0.0792 mm, 6.60 pixels of 0.012 mm. Through a frame
// 33.75 mm high its centre falls in 33.75 / 1980.6 = 17.04 ms, by halves of unlike speed 17.05: 213 frames at 12,500.
func TestMotionIsTold(t *testing.T) {
	falls := func(rate float64, s layout.Shooting) func(*layout.Setup) {
		return func(to *layout.Setup) { to.Camera.FrameRate, to.Shooting = rate, s }
	}
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		says   map[string]string
	}{
		{"no speed", falls(12500, layout.Shooting{ISO: 1600}),
			map[string]string{"motion.speed": "", "motion.view": "", "motion.smear": "", "motion.best": ""}},
		{"a fall", falls(25000, layout.Shooting{FallMM: 200}),
			map[string]string{"motion.speed": "after a fall of 200 mm the drop passes the frame's middle at 1.98 m/s",
				"motion.drag":  "leaves out the air, which slows a drop of this size by less than 2 % up to a fall of ",
				"motion.smear": "in 1/25000 s it moves by 0.079 mm, 6.6 pixels: with a blur of 7 pixels that makes 9.6 pixels",
				// 2 x 0.012 mm at 1980.6 mm/s take 1/82,526 s.
				"motion.blur_shutter": "", "motion.sharp_shutter": "at 1/83000 s it moves by no more than the 2 pixels",
				"motion.unexposed": ""}},
		{"a frame 33.75 mm high", func(s *layout.Setup) {
			falls(12500, layout.Shooting{FallMM: 200})(s)
			s.Camera.FrameWidthMM = 50.625
		}, map[string]string{"motion.view": "its middle is in the frame for 17.1 ms: 213 frames, 8.53 s of " +
			"playback at 25 a " +
			"second"}},
		{"shown at 60 a second", func(s *layout.Setup) {
			falls(12500, layout.Shooting{FallMM: 200, PlaybackFPS: 60})(s)
			s.Camera.FrameWidthMM = 50.625
		}, map[string]string{"motion.view": "213 frames, 3.55 s of playback at 60 a second"}},
		{"a speed, no rate", falls(0, layout.Shooting{SpeedMMPerS: 1980.6}),
			map[string]string{"motion.speed": "passes the frame's middle at 1.98 m/s, as after a fall of 200 mm",
				"motion.drag": "", "motion.smear": "", "motion.unexposed": "--frame-rate or --shutter"}},
		// 2²/(2 x 9.80665) = 0.2039 m.
		{"rising", falls(12500, layout.Shooting{SpeedMMPerS: -2000}),
			map[string]string{"motion.speed": "at 2 m/s on its way up, and would rise 203.9 mm more", "motion.drag": "",
				"motion.blur_shutter": "it moves no further than it is blurred"}},
		{"a fall in which air counts", falls(12500, layout.Shooting{FallMM: 2000}),
			map[string]string{"motion.drag": "in truth it is slower: air slows a drop of this size by more than 2 % from " +
				"a fall of"}},
		{"a nozzle", falls(0, layout.Shooting{NozzleMM: 3}), map[string]string{"drop.nozzle": "off a nozzle 3 mm wide",
			"drop.jet": ""}},
		// Rayleigh: 4.508 x 2 mm.
		{"a jet", falls(0, layout.Shooting{JetMM: 2}), map[string]string{"drop.jet": "a jet 2 mm thick falls apart into by " +
			"itself, a drop every 9.02 mm of it", "drop.nozzle": ""}},
		// Rayleigh: root(8 x 0.0728 / (998.2 x 0.0025³)) / 2 pi = 30.76 a second; 12,500 / 30.76 = 406; 1.9806
		// m / 30.76 = 64.4 mm.
		{"the wobble", falls(12500, layout.Shooting{FallMM: 200}),
			map[string]string{"look.swings": "31 times a second (Rayleigh 1879): once in 40",
				"look.rings": "rings for about 1.2 s"}},
		{"the wobble, no rate", falls(0, layout.Shooting{FallMM: 200}),
			map[string]string{"look.swings": "31 times a second (Rayleigh 1879), and moves by 64.4 mm in one swing"}},
		{"the wobble of what is not known", func(s *layout.Setup) { s.Material = "1.4" },
			map[string]string{"look.swing": "width", "look.swings": "", "look.rings": ""}},
	} {
		t.Run(c.name, func(t *testing.T) { requireTold(t, reportOf(t, c.change), c.says) })
	}
}

// What should be done something about is marked: a smear larger than the blur, air that counts, light that is off.
func TestWhatOfTheShotAsksForMore(t *testing.T) {
	for _, c := range []struct {
		name, key string
		change    func(*layout.Setup)
		asks      bool
	}{
		{"a small smear", "motion.smear", func(s *layout.Setup) { s.Shooting = layout.Shooting{FallMM: 200, ShutterS: 1e-6} },
			false},
		{"a large smear", "motion.smear", func(s *layout.Setup) { s.Shooting = layout.Shooting{FallMM: 200, ShutterS: 1e-3} },
			true},
		{"no air", "motion.drag", func(s *layout.Setup) { s.Shooting.FallMM = 200 }, false},
		{"air", "motion.drag", func(s *layout.Setup) { s.Shooting.FallMM = 2000 }, true},
		{"too dark", "lux.given", func(s *layout.Setup) {
			s.Shooting, s.Lamps = layout.Shooting{ISO: 100, ShutterS: 1e-4}, panels(100)
		}, true},
		{"a sensor that nobody named", "frame.sensor", func(s *layout.Setup) { s.Camera.SensorAssumed = true }, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, ok := reportOf(t, c.change).Fact(c.key)
			require.True(t, ok)
			require.Equal(t, c.asks, f.Asks, f.Text)
		})
	}
}

// The table of stops has what light each needs as soon as that is known: four times as much for two stops.
func TestStopsTellLux(t *testing.T) {
	r := reportOf(t, func(s *layout.Setup) { s.Camera.FrameRate, s.Shooting.ISO = 25000, 1600 })
	table := r.Stops()
	require.Equal(t, []string{"stop", "light", "frames/s", "lux", "edge", "centre", "at fill", "backdrop"}, table.Heads)
	for _, row := range table.Rows {
		stop, lux := row.Cells[0].String(), row.Cells[3].String()
		if want := map[string]string{"f/4": "141,000", "f/8": "563,000", "f/16": "2,250,000",
			"f/32": "9,000,000"}[stop]; want != "" {
			require.Equal(t, want, lux, stop)
		}
	}
	require.Contains(t, r.StopsIntro().String(), "lux that the board needs at 1/25000 s")
	require.NotContains(t, reportOf(t, func(*layout.Setup) {}).Stops().Heads, "lux")
}

func TestSensorIsTold(t *testing.T) {
	requireTold(t, reportOf(t, func(*layout.Setup) {}), map[string]string{"frame.sensor": ""})
	requireTold(t, reportOf(t, func(s *layout.Setup) { s.Camera.SensorAssumed, s.Camera.HeightPx = true, 3000 }),
		map[string]string{"frame.sensor": "no sensor was given, and one of 36 x 18 mm is taken"})
}

// Lamps that are not alike are told one by one.
func TestLampsAreTold(t *testing.T) {
	lamps := func(all ...layout.Lamp) func(*layout.Setup) {
		for i := range all {
			all[i].XMM, all[i].ZMM = float64(1200*i-600), 900
		}
		return func(s *layout.Setup) { s.Lamps = all }
	}
	for _, c := range []struct {
		name   string
		change func(*layout.Setup)
		says   string
	}{
		{"nothing known", lamps(layout.Lamp{}, layout.Lamp{}), ""},
		{"one", lamps(layout.Lamp{BeamDeg: 40, SizeMM: 80}), "lamp 1 has a beam of 40°, shines with a face 80 mm wide"},
		{"two alike", lamps(layout.Lamp{BeamDeg: 40}, layout.Lamp{BeamDeg: 40}), "every lamp has a beam of 40°"},
		{"two unlike", lamps(layout.Lamp{Aim: layout.Aim{XMM: -50, YMM: 30}}, layout.Lamp{Aim: layout.Aim{YMM: -30}}),
			"lamp 1 points 50 mm left and 30 mm down of the board's middle; lamp 2 points 30 mm up of the board's middle"},
		{"of one nothing", lamps(layout.Lamp{}, layout.Lamp{Aim: layout.Aim{AtDrop: true}}), "lamp 2 points at the drop"},
	} {
		t.Run(c.name, func(t *testing.T) {
			requireTold(t, reportOf(t, c.change), map[string]string{"light.known": c.says})
		})
	}
}

// Lamps that give the board more from further off cost no light by going there.
func TestRetreatThatCostsNothing(t *testing.T) {
	back := func(lamp layout.Lamp) string {
		f, ok := reportOf(t, func(s *layout.Setup) { s.Lamps = []layout.Lamp{lamp} }).Fact("light.retreat")
		require.True(t, ok)
		return f.Text.String()
	}
	require.Contains(t, back(layout.Lamp{ZMM: 500}), "middle, which costs ")
	require.NotContains(t, back(layout.Lamp{ZMM: 100, Aim: layout.Aim{AtDrop: true}}), "costs")
}

func TestFringeIsTold(t *testing.T) {
	requireTold(t, reportOf(t, func(*layout.Setup) {}),
		map[string]string{"sharp.fringe": "from red outside to blue inside"})
	requireTold(t, reportOf(t, func(s *layout.Setup) { s.Material = "syrup-40" }), map[string]string{"sharp.fringe": ""})
}

// A longer lens from further off does for edge and picture what the sentence says, nothing to speak of, and for the
// board beside them too. Its blur, a disc at the drop of pupil x L/(D+L) with the pupil as D, grows as D/(D+L): from
// 300 to 1500 mm, the board 400 mm behind, by (1500/1900)/(300/700) = 1.842, and past all bounds by 1 + L/D = 2.33.
func TestLongerLens(t *testing.T) {
	near := reportOf(t, func(s *layout.Setup) { s.Camera.FrameWidthMM = 72 })
	far := reportOf(t, func(s *layout.Setup) { s.Camera.FrameWidthMM, s.CameraMM = 72, 1500 })
	require.InEpsilon(t, near.sharp().Least.BlurPx, far.sharp().Least.BlurPx, 0.025)
	backdrop := func(r *Report) float64 {
		own, _ := r.ownStop()
		return own.Best.Blur.BackdropPx
	}
	require.InEpsilon(t, 1.842, backdrop(far)/backdrop(near), 0.01)
	require.Less(t, far.coverage().Sees.WidthMM, near.coverage().Sees.WidthMM)
	requireTold(t, near, map[string]string{"sharp.longer": "does not help",
		"sharp.beside": "blurs more, up to 2.3 times as much"})
}

// JSON has the shot in short, and leaves out what is not known.
func TestShotInShort(t *testing.T) {
	shotOf := func(change func(*layout.Setup)) map[string]float64 {
		text, err := json.Marshal(reportOf(t, change).Figures(1))
		require.NoError(t, err)
		var figures struct{ Shot map[string]any }
		require.NoError(t, json.Unmarshal(text, &figures))
		numbers := map[string]float64{}
		for name, figure := range figures.Shot {
			if number, ok := figure.(float64); ok {
				numbers[name] = number
			}
		}
		return numbers
	}
	require.Empty(t, shotOf(func(s *layout.Setup) { s.Drop.Body, s.Drop.DiameterMM = flip.UprightRod, 20 }))
	require.Equal(t, []string{"swing_hz"}, keys(shotOf(func(*layout.Setup) {})))
	got := shotOf(func(s *layout.Setup) {
		s.Camera.FNumber, s.Camera.FrameRate, s.Camera.FrameWidthMM = 11.3, 2000, 72
		s.Shooting, s.Lamps = layout.Shooting{ISO: 3200, FallMM: 200}, panels(20000)
	})
	for name, want := range map[string]float64{
		"illuminance_needed_lux": 44892, "illuminance_given_lux": 32000, "exposure_over_stops": math.Log2(32000 / 44892.0),
		"speed_mm_per_s": 1980.6, "smear_mm": 0.9903, "smear_px": 82.5, "in_view_ms": 24.25, "frames_in_view": 48.5,
		"playback_s": 1.94, "swing_hz": 30.76, "frames_per_swing": 65,
	} {
		require.InEpsilon(t, want, got[name], 0.002, name)
		delete(got, name)
	}
	require.Empty(t, got)

	dark := shotOf(func(s *layout.Setup) {
		s.Shooting = layout.Shooting{ISO: 3200, ShutterS: 1e-4}
		s.Lamps = []layout.Lamp{{ZMM: 100, LuxAt1M: 5000, Aim: layout.Aim{AtDrop: true}}}
	})
	require.Contains(t, dark, "illuminance_given_lux", "no light is known, and is none")
	require.Zero(t, dark["illuminance_given_lux"])
	require.Equal(t, -layout.NoLightStops, dark["exposure_over_stops"])
}

func keys(m map[string]float64) (all []string) {
	for key := range m {
		all = append(all, key)
	}
	return all
}
