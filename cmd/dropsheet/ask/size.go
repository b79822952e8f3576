package ask

import (
	"errors"
	"image"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// Size is what size is asked for.
type Size struct {
	setup
	shape float64
	JSON  bool
}

// Register adds the words to a set of flags.
func (s *Size) Register(flags *pflag.FlagSet) {
	s.setup.register(flags)
	add(flags, &s.shape, "shape", "W:H", "3:2", proportions, "proportions of the picture, when neither ARTWORK nor "+
		"--print-size tells them")
	flags.BoolVar(&s.JSON, "json", false, "tell the figures as JSON")
}

// Plan is what the words come to, with the picture's proportions from the artwork, which may be empty, the print size
// or the shape, in this order. part is the part of the artwork that is used, in its pixels; empty without one.
func (s *Size) Plan(artwork string) (p layout.Plan, part image.Rectangle, err error) {
	setup, err := s.read()
	if err != nil {
		return layout.Plan{}, part, err
	}
	switch {
	case artwork != "" && s.flags.Changed("shape"):
		return layout.Plan{}, part, job.WrongWords(errors.New("ARTWORK and --shape both tell the picture's proportions: " +
			"give one of them"))
	case artwork != "":
		part, err = s.picture.crop.Of(artwork, s.maxPixels)
		if err != nil {
			return layout.Plan{}, part, err
		}
		setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	case setup.Print != layout.Size{} && !s.flags.Changed("shape") && setup.Look == layout.Bulged &&
		setup.Framing == (layout.Framing{}):
		setup.Proportions = setup.Print.WidthMM / setup.Print.HeightMM
	default:
		setup.Proportions = s.picture.crop.Proportions(s.shape)
	}
	p, err = setup.Plan()
	return p, part, job.WrongWords(err)
}
