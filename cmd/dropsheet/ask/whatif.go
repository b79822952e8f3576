package ask

import (
	"reflect"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// whatIf is another camera or other lamps to look at a job with.
type whatIf struct {
	camera
	oblate float64
}

// register adds the flags. None has a default: what is not given stays as in the job.
func (w *whatIf) register(flags *pflag.FlagSet) {
	w.camera.register(flags, false)
	add(flags, &w.oblate, "oblate", "ratio", "", within(leastOblate, mostOblate),
		"height of the ball over its width, 0.8 to 1.35: what the print shows in a drop out of round")
}

// Apply is the plan as the words would have it.
func (w *whatIf) Apply(p layout.Plan) (layout.Plan, error) {
	was := given{p.Camera.AsSetup(), p.Drop.CameraMM, p.Lamps, p.Shooting}
	g, err := w.over(was)
	if err != nil {
		return layout.Plan{}, err
	}
	if w.flags.Changed("oblate") {
		if p, err = p.WithShape(w.oblate); err != nil {
			return layout.Plan{}, job.WrongWords(err)
		}
	}
	if reflect.DeepEqual(g, was) { // to the last digit, which the job rounds
		return p, nil
	}
	if p, err = p.WithCamera(g.camera, g.cameraMM, g.lamps); err != nil {
		return layout.Plan{}, job.WrongWords(err)
	}
	p, err = p.WithShooting(g.shooting)
	return p, job.WrongWords(err)
}
