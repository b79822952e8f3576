package report

import "math"

// exposed tells how much light the board needs, what the lamps give, and what closes the gap; nothing where ISO or
// exposure are not known.
func (r *Report) exposed() []Fact {
	e, c := r.exposure(), r.shot.Camera
	if e == nil {
		return nil
	}
	facts := []Fact{{Key: "lux.needed", Name: "exposure",
		Text: say("at %s, %s and ISO %s, the %s at %s of life size on the "+
			"sensor, the board's middle needs %s",
			strong(stop("camera.f_number", c.FNumber)), shutterTime("exposure.shutter_s", e.ShutterS),
			significant("shooting.iso", r.shot.Shooting.ISO, Bare, 6), r.body,
			Figure{Value: c.Sensor.WidthMM / c.FrameWidthMM, Unit: Percent, Decimals: 1},
			strong(lux("shot.illuminance_needed_lux", e.NeededLux)))},
		{Key: "lux.source", Text: say("that is by ISO 2720 for a flat subject (C = 250), with the light that a lens so " +
			"close loses; the " +
			"stop is the one marked on the lens")}}
	if e.Given == nil {
		return append(facts, Fact{Key: "lux.suns", Text: say("that is about %s times direct sun (100,000 lux, common "+
			"practice, no source); to see what your lamps give of it, name them with "+
			"--lamp and --lamp-lux",
			rounded("exposure.suns", e.Suns, Bare, 2))})
	}
	return append(facts, r.given()...)
}

// given tells what the lamps give, beside what is needed.
func (r *Report) given() []Fact {
	g := r.exposure().Given
	given, by := lux("shot.illuminance_given_lux", g.Lux), Figure{Value: math.Abs(g.OverStops), Unit: Stops, Decimals: 1}
	text, way := say("the lamps give it %s", given), "light"
	switch {
	case g.Lux == 0:
		return []Fact{{Key: "lux.given", Asks: true, Text: say("the lamps give it %s", strong("no light at all"))}}
	case by.Number() == "0":
		return []Fact{{Key: "lux.given", Text: say("%s, which is %s", text, strong("just that"))}}
	case g.OverStops < 0:
		way = "dark"
	}
	facts := []Fact{{Key: "lux.given", Asks: true, Text: say("%s, %s", text, strong(say("%s too "+way, by)))},
		{Key: "lux.ways", Asks: true, Text: say("each of these alone mends it: %s", join(r.lightWays(), "; "))}}
	if w := g.Ways; w.LampsFactor > 0 && w.LampsFactor < 1 {
		facts = append(facts, Fact{Key: "lux.near", Text: say("no lamp nearer than its maker allows: hot lamps set paper " +
			"on fire")})
	}
	return facts
}

// lightWays is what each alone makes the light given the light needed.
func (r *Report) lightWays() []Text {
	w, short := r.exposure().Given.Ways, r.exposure().Given.OverStops < 0
	path := func(name string) string { return "exposure.given.ways." + name }
	var ways []Text
	if w.FNumber > 0 {
		ways = append(ways, say("%s", stop(path("f_number"), w.FNumber)))
	}
	switch {
	case w.FrameRate > 0:
		ways = append(ways, say("%s frames a second", frameRate(path("frame_rate"), w.FrameRate)))
	case w.ShutterS > 0:
		ways = append(ways, say("a shutter of %s", shutterNear(path("shutter_s"), w.ShutterS)))
	}
	ways = append(ways, say("ISO %s", rounded(path("iso"), w.ISO, Bare, 3)))
	if w.LampsFactor > 0 {
		place := say("every lamp %s times as far from the board's middle (%s)",
			rounded(path("lamps_factor"), w.LampsFactor, Bare, 2), lampPlaces(w.Lamps))
		if w.LampsSeen {
			place = say("%s, where a lamp comes into view", place)
		}
		ways = append(ways, place)
	}
	if short {
		times := rounded(path("lamps_times"), w.LampsTimes, Bare, 2)
		times.rounds = up
		ways = append(ways, say("%s times as many lamps, or lamps so many times as strong", times))
	}
	return ways
}

// lux is an illuminance, to three figures: no meter tells more.
func lux(path string, v float64) Figure {
	f := rounded(path, v, "lux", 3)
	f.grouped = true
	return f
}

// shutterTime is a time as cameras show it: a fraction of a second where it is shorter than a third of one.
func shutterTime(path string, s float64) Figure {
	const longestFraction = 0.3
	if s >= longestFraction {
		return significant(path, s, "s", 3)
	}
	return Figure{Path: path, Value: s, Unit: "s", fraction: true}
}

// shutterNear is such a time to three figures.
func shutterNear(path string, s float64) Figure {
	f := shutterTime(path, s)
	if f.fraction {
		f.Decimals = rounded("", 1/s, Bare, 3).Decimals
	}
	return f
}

// shutterUnder is such a time where no longer one would do.
func shutterUnder(path string, s float64) Figure {
	f := shutterTime(path, s)
	f.rounds = down
	if f.fraction {
		f.Decimals, f.rounds = rounded("", 1/s, Bare, 2).Decimals, up
	}
	return f
}
