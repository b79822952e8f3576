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

// Plan is what the words come to for what Of was told, with the picture's proportions from the artwork, if there is
// one, the print size or the shape, in this order. part is the part of the artwork that is used, in its pixels; empty
// without one.
func (s *Size) Plan() (p layout.Plan, part image.Rectangle, err error) {
	setup, err := s.read()
	if err != nil {
		return layout.Plan{}, part, err
	}
	if part, err = s.part(); err != nil {
		return layout.Plan{}, part, err
	}
	switch {
	case !part.Empty() && s.flags.Changed("shape"):
		return layout.Plan{}, part, job.WrongWords(errors.New("ARTWORK and --shape both tell the picture's proportions: " +
			"give one of them"))
	case !part.Empty():
		setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	case setup.Print.HeightMM != 0 && !s.flags.Changed("shape") && setup.Look == layout.Bulged &&
		setup.Framing == (layout.Framing{}):
		setup.Proportions = setup.Print.WidthMM / setup.Print.HeightMM
	default:
		setup.Proportions = s.picture.crop.Proportions(s.shape)
	}
	p, err = setup.Plan()
	return p, part, job.WrongWords(err)
}

// part is the part of the artwork that is used, in its pixels; empty without one. Of a job's own artwork the job knows
// the size, wherever it is.
func (s *Size) part() (image.Rectangle, error) {
	switch was := s.again.of; {
	case was != nil && s.again.artwork == "":
		return s.picture.crop.Pixels(was.Artwork.WidthPx, was.Artwork.HeightPx)
	case was != nil:
		return s.picture.crop.Of(s.again.artwork, s.maxPixels)
	case s.artwork != "":
		return s.picture.crop.Of(s.artwork, s.maxPixels)
	}
	return image.Rectangle{}, nil
}
