package ask

import (
	"errors"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// camera is what is asked of the camera and the lamps.
type camera struct {
	flags  *pflag.FlagSet
	asked  layout.CameraSetup
	pixels pair
	lamps  []layout.Lamp
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
	rate, evenly := "frames a second, to tell what other stops would give and whether lamps flicker", "even light"
	if !defaults {
		rate, evenly = "frames a second; nothing here depends on it", "as in the job"
	}
	add(flags, &f.asked.Sensor, "sensor", "WxH", otherwise("36x24mm"), sizeMM, "width and height of the camera's sensor")
	add(flags, &f.pixels, "pixels", "WxH", otherwise("6000x4000"), pixels, "pixels of the frame")
	add(flags, &f.asked.LensMM, "lens", "length", otherwise("100mm"), aboveZero, "focal length of the lens")
	add(flags, &f.asked.FrameWidthMM, "frame-width", "length", "", aboveZero,
		"width that the frame sees at the drop, in place of --lens; a ruler held there reads it")
	add(flags, &f.asked.FNumber, "aperture", "f/N", otherwise("f/16"), fNumber, "stop of the lens, such as f/22")
	add(flags, &f.asked.Focus, "focus", "point", otherwise("best"), layout.ParseFocus,
		"what is in focus: edge (of the drop), picture (its image in the drop) or best (between them)")
	add(flags, &f.asked.FrameRate, "frame-rate", "number", "", number(0, maxFrameRate), rate)
	flags.Var(&lampsValue{&f.lamps}, "lamp", "where a lamp stands from the backdrop's centre: right, down, toward the "+
		"camera, such as -60cm,-40cm,90cm; repeat it for more (default: "+evenly+")")
}

// over lays what was given over a camera and its lamps.
func (f *camera) over(c layout.CameraSetup, lamps []layout.Lamp) (layout.CameraSetup, []layout.Lamp, error) {
	if err := f.check(); err != nil {
		return c, lamps, err
	}
	for _, flag := range []struct {
		name string
		take func()
	}{
		{"sensor", func() { c.Sensor = f.asked.Sensor }},
		{"pixels", func() { c.WidthPx, c.HeightPx = f.pixels.w, f.pixels.h }},
		{"lens", func() { c.LensMM = f.asked.LensMM }},
		{"frame-width", func() { c.FrameWidthMM = f.asked.FrameWidthMM }},
		{"aperture", func() { c.FNumber = f.asked.FNumber }},
		{"focus", func() { c.Focus = f.asked.Focus }},
		{"frame-rate", func() { c.FrameRate = f.asked.FrameRate }},
		{"lamp", func() { lamps = f.lamps }},
	} {
		if f.flags.Changed(flag.name) {
			flag.take()
		}
	}
	return c, lamps, nil
}

// setup is the camera that the flags and their defaults stand for.
func (f *camera) setup() (layout.CameraSetup, []layout.Lamp, error) {
	c := f.asked
	c.WidthPx, c.HeightPx = f.pixels.w, f.pixels.h
	return c, f.lamps, f.check()
}

// check refuses flags that contradict each other.
func (f *camera) check() error {
	if f.flags.Changed("lens") && f.flags.Changed("frame-width") {
		return job.WrongWords(errors.New("--lens and --frame-width both say how much the frame sees: give one of them"))
	}
	return nil
}
