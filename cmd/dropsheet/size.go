package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"image"
	"io"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

var sizeCommand = command{
	name: "size", args: "[ARTWORK]",
	summary: "work out sizes and distances; writes no file",
	about: `Works out how large the backdrop must be, how many sheets it takes, and what the drop will show of
it. Any two of --distance, --print-size (or --max-sheets) and --fill give the third. With ARTWORK,
its proportions count; only its header is read. Writes no file.`,
	example: "dropsheet size --drop 4.6mm --distance 40cm --fill 0.9",
	prepare: func(flags *pflag.FlagSet) action {
		var s setupFlags
		var shape float64
		var asJSON bool
		s.register(flags)
		add(flags, &shape, "shape", "W:H", "3:2", proportions, "proportions of the picture, when neither ARTWORK nor "+
			"--print-size tells them")
		flags.BoolVar(&asJSON, "json", false, "tell the figures as JSON")
		return func(_ context.Context, c console, args []string) error {
			p, part, err := sizePlan(&s, shape, args)
			if err != nil {
				return err
			}
			r := report.Of(p)
			c.tell(r.Warnings())
			if !part.Empty() {
				c.tell(r.TooCoarse(part.Dx(), part.Dy()))
			}
			if asJSON {
				return writeJSON(c.out, r.Figures(job.Version))
			}
			if err := writeFacts(c.out, r.Facts()...); err != nil {
				return err
			}
			return writeTable(c.out, capital(r.StopsIntro().String()), r.Stops())
		}
	},
}

// sizePlan is the plan for the flags, with the picture's proportions from the artwork, the print size or the
// shape, in this order. part is the part of the artwork that is used, in its pixels; empty without one.
func sizePlan(s *setupFlags, shape float64, args []string) (p layout.Plan, part image.Rectangle, err error) {
	setup, err := s.setup()
	if err != nil {
		return layout.Plan{}, part, err
	}
	switch {
	case len(args) > 1:
		_, err = only("size", anArtwork, args)
		return layout.Plan{}, part, err
	case len(args) == 1 && s.flags.Changed("shape"):
		return layout.Plan{}, part, job.WrongWords(errors.New("ARTWORK and --shape both tell the picture's proportions: " +
			"give one of them"))
	case len(args) == 1:
		part, err = s.picture.crop.Of(args[0], s.maxPixels)
		if err != nil {
			return layout.Plan{}, part, err
		}
		setup.Proportions = float64(part.Dx()) / float64(part.Dy())
	case setup.Print != layout.Size{} && !s.flags.Changed("shape") && setup.Look == layout.Bulged &&
		setup.Framing == (layout.Framing{}):
		setup.Proportions = setup.Print.WidthMM / setup.Print.HeightMM
	default:
		setup.Proportions = s.picture.crop.Proportions(shape)
	}
	p, err = setup.Plan()
	return p, part, job.WrongWords(err)
}

// writeJSON writes a value as programs get it.
func writeJSON(w io.Writer, v any) error {
	text, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "%s\n", text)
	return err
}
