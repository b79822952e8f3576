package ask

import (
	"cmp"
	"fmt"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// lamps is where lamps stand and what is known of them. What is known is given once for all of them or once for
// each, in their order.
type lamps struct {
	flags *pflag.FlagSet
	at    []layout.Lamp
	lux   []float64
	size  []float64
	beam  []float64
	aim   []layout.Aim
}

// Bounds of numbers without a unit.
const (
	maxLampLux       = 1e12
	narrowestBeamDeg = 1
	widestBeamDeg    = 179
)

// register adds the flags; evenly says what holds where no lamp is given.
func (l *lamps) register(flags *pflag.FlagSet, evenly string) {
	l.flags = flags
	addList(flags, &l.at, "lamp", "X,Y,Z", lampPlace, "where a lamp stands from the backdrop's centre: right, down, "+
		"toward the camera, such as -60cm,-40cm,90cm; repeat it for more (default: "+evenly+")")
	addList(flags, &l.lux, "lamp-lux", "number", number(0, maxLampLux),
		"what a lamp gives at 1 m, in lux, as makers' sheets state; once for all lamps or once for each, in their order")
	addList(flags, &l.size, "lamp-size", "length", aboveZero, "width of a lamp's shining face; once or for each, likewise")
	addList(flags, &l.beam, "lamp-beam", "degrees", within(narrowestBeamDeg, widestBeamDeg),
		fmt.Sprintf("full angle of a lamp's beam at half its light, %d to %d; once or for each (default: that of a bare "+
			"panel, %g)", narrowestBeamDeg, widestBeamDeg, layout.LambertBeamDeg))
	addList(flags, &l.aim, "lamp-aim", "drop|X,Y", lampAim,
		"what a lamp points at: drop, or a place of the board from its centre, right and down; once or for each "+
			"(default: the board's middle)")
}

// over lays what was given over a job's lamps.
func (l *lamps) over(was []layout.Lamp) ([]layout.Lamp, error) {
	lit := append([]layout.Lamp(nil), was...)
	if l.flags.Changed("lamp") {
		lit = append([]layout.Lamp(nil), l.at...)
	}
	err := cmp.Or(
		each(lit, "lamp-lux", l.lux, func(to *layout.Lamp, v float64) { to.LuxAt1M = v }),
		each(lit, "lamp-size", l.size, func(to *layout.Lamp, v float64) { to.SizeMM = v }),
		each(lit, "lamp-beam", l.beam, func(to *layout.Lamp, v float64) { to.BeamDeg = v }),
		each(lit, "lamp-aim", l.aim, func(to *layout.Lamp, v layout.Aim) { to.Aim = v }))
	if err != nil {
		return nil, job.WrongWords(err)
	}
	if len(lit) == 0 {
		return nil, nil
	}
	return lit, nil
}

// each gives the lamps what a flag was given, once for all of them or once for each.
func each[T any](lamps []layout.Lamp, flag string, values []T, set func(*layout.Lamp, T)) error {
	switch n := len(values); {
	case n == 0:
		return nil
	case len(lamps) == 0:
		return fmt.Errorf("--%s tells of lamps and there is none\nhint: say with --lamp where each stands", flag)
	case n != 1 && n != len(lamps):
		return fmt.Errorf("--%s is given %d times, and the lamps are %d\n"+
			"hint: give it once for all of them, or once for each in their order", flag, n, len(lamps))
	}
	for i := range lamps {
		set(&lamps[i], values[min(i, len(values)-1)])
	}
	return nil
}
