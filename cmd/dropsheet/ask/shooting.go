package ask

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/job"
)

// shooting is what is asked of exposure and motion.
type shooting struct {
	flags *pflag.FlagSet
	asked layout.Shooting
}

// Bounds of numbers without a unit.
const (
	maxISO         = 1e9
	maxPlaybackFPS = 1e6
)

// register adds the flags. None has a default: what is not given is not known, or stays as in the job.
func (s *shooting) register(flags *pflag.FlagSet) {
	s.flags = flags
	add(flags, &s.asked.ISO, "iso", "number", "", number(0, maxISO), "what the camera is set to, such as 1600")
	add(flags, &s.asked.ShutterS, "shutter", "time", "", units.ParseTime,
		"how long a frame is exposed, such as 1/24000s or 20us; with flash, how long that lasts (default: as long as a "+
			"frame, by --frame-rate)")
	add(flags, &s.asked.FallMM, "fall", "length", "", aboveZero,
		"from where the drop is let go down to the middle of the "+
			"frame; gives its speed there")
	add(flags, &s.asked.SpeedMMPerS, "speed", "speed", "", speed,
		"the drop's speed in the middle of the frame, such as 2m/s, in place of --fall; below 0 for one that rises on a jet")
	add(flags, &s.asked.PlaybackFPS, "playback", "number", "", number(0, maxPlaybackFPS),
		fmt.Sprintf("frames a second that the film is shown at (%g unless given)", layout.DefaultPlaybackFPS))
}

// over lays what was given over a job's.
func (s *shooting) over(p layout.Shooting) (layout.Shooting, error) {
	if s.flags.Changed("fall") && s.flags.Changed("speed") {
		return p, job.WrongWords(errors.New("--fall gives the drop's speed, and --speed says it\nhint: give one of them"))
	}
	for _, flag := range []struct {
		name string
		take func()
	}{
		{"iso", func() { p.ISO = s.asked.ISO }},
		{"shutter", func() { p.ShutterS = s.asked.ShutterS }},
		{"fall", func() { p.FallMM, p.SpeedMMPerS = s.asked.FallMM, 0 }},
		{"speed", func() { p.SpeedMMPerS, p.FallMM = s.asked.SpeedMMPerS, 0 }},
		{"playback", func() { p.PlaybackFPS = s.asked.PlaybackFPS }},
	} {
		if s.flags.Changed(flag.name) {
			flag.take()
		}
	}
	return p, nil
}

// speed reads a length a second: 2m/s, -500mm/s.
func speed(s string) (float64, error) {
	length, ok := strings.CutSuffix(strings.ToLower(strings.TrimSpace(s)), "/s")
	mm, err := units.ParseLength(length)
	switch {
	case !ok || err != nil:
		return 0, fmt.Errorf("%q is not a speed\nhint: write a length a second, such as 2m/s (%s)", s, units.UnitsTaken)
	case mm == 0:
		return 0, fmt.Errorf("%q is no speed of a drop that passes\nhint: leave it out for one that stands still", s)
	}
	return mm, nil
}
