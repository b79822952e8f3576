package ask

import (
	"cmp"
	"context"
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
	given string // what TakeIn was told
	JSON  bool
	// Verbose asks for every fact in place of a few lines.
	Verbose bool
	// Drawn tells, after Plan, that the artwork is a page of a PDF, which is drawn as finely as it is printed.
	Drawn bool
	// EitherWay tells, after Plan, that the paper may lie the other way too, on as many sheets: make takes the way whose
	// seams show less in the artwork, which is not to be had here.
	EitherWay bool
}

// Register adds the words to a set of flags.
func (s *Size) Register(flags *pflag.FlagSet) {
	s.setup.register(flags)
	add(flags, &s.shape, "shape", "W:H", "3:2", proportions, "proportions of the picture, when neither ARTWORK nor "+
		"--print-size tells them")
	addVerbose(flags, &s.Verbose)
	flags.BoolVar(&s.JSON, "json", false, "tell the figures as JSON")
}

// TakeIn is Of for an artwork that may be piped in, which is then taken into a file until remove is called.
func (s *Size) TakeIn(ctx context.Context, path string) (remove func(), err error) {
	s.given = path
	at, remove, err := job.TakeIn(ctx, path, s.limits)
	if err != nil {
		return nil, err
	}
	if err := s.Of(at); err != nil {
		remove()
		return nil, err
	}
	return remove, nil
}

// Plan is what the words come to for what Of or TakeIn was told, with the picture's proportions from the artwork, if
// there is one, the print size or the shape, in this order. part is the part of the artwork that is used, in its
// pixels; empty without one.
func (s *Size) Plan(ctx context.Context) (p layout.Plan, part image.Rectangle, err error) {
	setup, err := s.read()
	if err != nil {
		return layout.Plan{}, part, err
	}
	if err := s.again.check(s.flags); err != nil {
		return layout.Plan{}, part, job.WrongWords(err)
	}
	if part, err = s.part(); err != nil {
		return layout.Plan{}, part, err
	}
	switch {
	case !part.Empty() && s.flags.Changed("shape"):
		return layout.Plan{}, part, job.WrongWords(errors.New("ARTWORK and --shape both tell the picture's proportions\n" +
			"hint: give one of them"))
	case !part.Empty():
		setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	case setup.Print.HeightMM != 0 && !s.flags.Changed("shape") && setup.Look == layout.Bulged &&
		setup.Framing == (layout.Framing{}):
		setup.Proportions = setup.Print.WidthMM / setup.Print.HeightMM
	default:
		setup.Proportions = s.picture.crop.Proportions(s.shape)
	}
	plans, err := setup.Plans()
	if err != nil {
		return layout.Plan{}, part, job.WrongWords(err)
	}
	was := s.again.of
	if was != nil && s.again.artwork == "" && len(s.Changes()) == 0 {
		return was.Plan, part, nil
	}
	if len(plans) > 1 || was != nil && len(was.Asked["more-sheets"]) > 0 {
		if order, err := s.order(); err == nil && order.Artwork != "" {
			p, err := order.Laid(ctx)
			return p, part, err
		}
		s.EitherWay = len(plans) > 1
	}
	return layout.Rounded(plans[0]), part, nil // to the figures that a job keeps
}

// order is what make would be ordered by the same words.
func (s *Size) order() (job.Order, error) {
	var m Make
	flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
	m.Register(flags)
	var err error
	s.flags.Visit(func(f *pflag.Flag) {
		if flags.Lookup(f.Name) == nil || s.fromJob[f.Name] {
			return
		}
		for _, word := range wordsOf(f) {
			err = cmp.Or(err, Set(flags, f.Name, word))
		}
	})
	of := s.artwork
	if s.again.of != nil {
		of = s.again.of.Folder()
	}
	if err == nil && of != "" {
		err = m.Of(of)
	}
	if err != nil || of == "" {
		return job.Order{}, err
	}
	return m.Order()
}

// part is the part of the artwork that is used, in its pixels; empty without one. Of a job's own artwork the job knows
// the size, wherever it is.
func (s *Size) part() (image.Rectangle, error) {
	path := s.artwork
	if was := s.again.of; was != nil {
		if path = s.again.artwork; path == "" && (s.picture.page == 0 || s.picture.page == was.Artwork.Page) {
			s.Drawn = was.Artwork.Page != 0
			return s.picture.crop.Pixels(was.Artwork.WidthPx, was.Artwork.HeightPx)
		}
		if path == "" {
			var err error
			if path, err = was.FindArtwork(); err != nil {
				return image.Rectangle{}, err
			}
		}
	}
	switch {
	case path == "" && s.picture.page != 0:
		return image.Rectangle{}, job.WrongWords(errors.New("--page says which page of a PDF is meant\nhint: name the PDF"))
	case path == "":
		return image.Rectangle{}, nil
	}
	extent, err := job.ReadExtent(path, s.picture.page, s.limits)
	if err != nil {
		return image.Rectangle{}, job.OfPiped(s.given, path, err)
	}
	s.Drawn = extent.Page != 0
	return s.picture.crop.Pixels(extent.WidthPx, extent.HeightPx)
}

// addVerbose registers the wish for every fact.
func addVerbose(flags *pflag.FlagSet, into *bool) {
	flags.BoolVar(into, "verbose", false, "tell every figure: optics, stops, light and where the figures come from")
}
