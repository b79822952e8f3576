package ask

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// camera is what is asked of the camera, the lamps and the exposure.
type camera struct {
	flags    *pflag.FlagSet
	asked    layout.CameraSetup
	looks    string // "eye", or empty for a camera
	pixels   pair
	pixelMM  float64
	cameraMM float64
	lamps    lamps
	shooting shooting
}

// maxFrameRate bounds the frames a second.
const maxFrameRate = 1e9

// register adds the flags. With defaults they stand for a whole camera; without, what is not given stays as it was.
func (f *camera) register(flags *pflag.FlagSet, defaults bool) {
	f.flags = flags
	otherwise := func(text string) string {
		if defaults {
			return text
		}
		return ""
	}
	evenly := "even light"
	if !defaults {
		evenly = "as in the job"
	}
	add(flags, &f.looks, "camera", "eye", "", looking, "somebody looks, and nothing is filmed: a schematic eye of 60 "+
		"dioptres with a pupil of 3 mm (f/5.6); its frame is 40 degrees wide, a pixel half a minute of arc")
	add(flags, &f.asked.Sensor, "sensor", "WxH", otherwise("36x24mm"), sizeMM,
		"width and height of the part of the camera's sensor that is read out")
	add(flags, &f.pixelMM, "pixel-size", "length", "", pixelSize,
		"width of a pixel of the sensor, such as 28um, in place of --sensor: --pixels are then those that are read out")
	add(flags, &f.pixels, "pixels", "WxH", otherwise("6000x4000"), pixels,
		"pixels of the frame, across and down; of a JOB, its sensor stays what it was")
	add(flags, &f.asked.LensMM, "lens", "length", otherwise("100mm"), aboveZero,
		"focal length of the lens; of lens, frame width and camera distance any two give the third")
	add(flags, &f.asked.FrameWidthMM, "frame-width", "length", "", aboveZero,
		"width that the frame sees at the drop; a ruler held there reads it")
	add(flags, &f.cameraMM, "camera-distance", "length", otherwise("300mm"), aboveZero,
		"from the lens (its entrance pupil) to the drop's centre")
	add(flags, &f.asked.FNumber, "aperture", "f/N", otherwise("f/16"), fNumber, "stop of the lens, such as f/22")
	add(flags, &f.asked.Focus, "focus", "edge|picture|whole|best", otherwise("best"), layout.ParseFocus,
		"what is in focus: edge (of the drop), picture (all of it), whole (both, the picture over its area) or best (both, "+
			"where the worst place is least blurred)")
	add(flags, &f.asked.FrameRate, "frame-rate", "number", "", number(0, maxFrameRate),
		"frames a second: gives the exposure of a frame, what other stops would give, and whether lamps flicker")
	f.shooting.register(flags)
	f.lamps.register(flags, evenly)
}

// given is a camera, its distance from the drop, the lamps and the exposure.
type given struct {
	camera   layout.CameraSetup
	cameraMM float64
	lamps    []layout.Lamp
	shooting layout.Shooting
}

// over lays what was given over a job's.
func (f *camera) over(g given) (given, error) {
	for _, flag := range []struct {
		name string
		take func()
	}{
		{"camera", func() { g.camera = byEye(g.camera) }},
		{"sensor", func() { g.camera.Sensor, g.camera.SensorAssumed, g.camera.Eye = f.asked.Sensor, false, false }},
		{"pixels", func() { g.camera.WidthPx, g.camera.HeightPx = f.pixels.w, f.pixels.h }},
		{"lens", func() { g.camera.LensMM, g.camera.FrameWidthMM, g.camera.Eye = f.asked.LensMM, 0, false }},
		{"frame-width", func() { g.camera.FrameWidthMM, g.camera.Eye = f.asked.FrameWidthMM, false }},
		{"camera-distance", func() { g.cameraMM = f.cameraMM }},
		{"aperture", func() { g.camera.FNumber = f.asked.FNumber }},
		{"focus", func() { g.camera.Focus = f.asked.Focus }},
		{"frame-rate", func() { g.camera.FrameRate = f.asked.FrameRate }},
		{"pixel-size", func() {
			g.camera.Sensor, g.camera.SensorAssumed, g.camera.Eye = f.readOut(g.camera), false, false
		}},
	} {
		if f.flags.Changed(flag.name) {
			flag.take()
		}
	}
	var err error
	if g.shooting, err = f.shooting.over(g.shooting); err != nil {
		return g, err
	}
	if g.lamps, err = f.lamps.over(g.lamps); err != nil {
		return g, err
	}
	return f.framed(g)
}

// setup is the camera that the flags and their defaults stand for.
func (f *camera) setup() (given, error) {
	c := f.asked
	c.WidthPx, c.HeightPx = f.pixels.w, f.pixels.h
	c.FrameWidthMM, c.SensorAssumed = 0, true // until over takes what was given
	if f.flags.Changed("pixel-size") && !f.flags.Changed("pixels") {
		return given{}, job.WrongWords(errors.New("--pixel-size says how large a pixel of the sensor is\n" +
			"hint: say with --pixels " +
			"how many are read out"))
	}
	return f.over(given{camera: c, cameraMM: f.cameraMM})
}

// readOut is the part of the sensor that pixels of the asked size read out.
func (f *camera) readOut(c layout.CameraSetup) layout.Size {
	w, h := c.WidthPx, c.HeightPx
	if f.pixels.w > 0 {
		w, h = f.pixels.w, f.pixels.h
	}
	return layout.Size{WidthMM: f.pixelMM * float64(w), HeightMM: f.pixelMM * float64(h)}
}

// framed takes the third of lens, frame width and camera distance from the two that were given. Flags that
// contradict each other are refused.
func (f *camera) framed(g given) (given, error) {
	lens, width := f.flags.Changed("lens"), f.flags.Changed("frame-width")
	if f.flags.Changed("camera") {
		for _, own := range []string{"sensor", "pixel-size", "lens", "frame-width"} {
			if f.flags.Changed(own) {
				return g, job.WrongWords(fmt.Errorf("--camera eye and --%s can't go together: an eye has its own\n"+
					"hint: leave one of them out", own))
			}
		}
	}
	switch {
	case f.flags.Changed("sensor") && f.flags.Changed("pixel-size"):
		return g, job.WrongWords(errors.New("--sensor and --pixel-size both say how large the sensor is\n" +
			"hint: give one of them"))
	case lens && width && f.flags.Changed("camera-distance"):
		return g, job.WrongWords(errors.New("of --lens, --frame-width and --camera-distance any two give the third\n" +
			"hint: leave " +
			"one of them out"))
	case lens && width:
		g.cameraMM = g.camera.FramedFromMM()
		g.camera.FrameWidthMM = 0 // which the lens now gives from there
	}
	return g, nil
}

// looking reads what looks in place of a camera.
func looking(s string) (string, error) {
	if s != "eye" {
		return "", fmt.Errorf("%q can't look\nhint: take eye, or leave the flag out for a camera", s)
	}
	return s, nil
}

// byEye is an eye in the place of a camera. What it is focused on, and what passes for sharp, stays.
func byEye(c layout.CameraSetup) layout.CameraSetup {
	eye := layout.Eye()
	eye.FrameRate, eye.Focus, eye.SharpToPx = c.FrameRate, c.Focus, c.SharpToPx
	return eye
}
