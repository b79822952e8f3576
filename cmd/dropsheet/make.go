package main

import (
	"context"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout/report"
	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
	"dropsheet/tile/seamsight"
)

var makeCommand = command{
	name: "make", args: "ARTWORK",
	summary: "the whole job into a folder: sheets, guide, proof, seam map, job file",
	about: `Turns ARTWORK (JPEG, PNG, TIFF, BMP, GIF or WebP) as the drop demands, cuts it into sheets and
writes a folder with
  sheets.pdf   one sheet a page, in pasting order
  guide.pdf    how to assemble them
  proof.png    what the camera will record
  seams.png    where the seams fall, on the board and in the drop
  job.json     the job, which proof, seams, reprint and check read
Any two of --distance, --print-size (or --max-sheets) and --fill give the third.`,
	example: "dropsheet make examples/harbour/harbour.jpg --distance 40cm --out harbour-backdrop",
	prepare: func(flags *pflag.FlagSet) action {
		var m making
		m.setup.register(flags)
		m.placement.register(flags)
		addPPI(flags, &m.ppi)
		flags.BoolVar(&m.setup.Level, "level", false, "print darker where the lamps give more light, so that the board "+
			"comes out even; needs --lamp")
		flags.BoolVar(&m.lossless, "lossless", false, "keep every pixel as it is, in place of JPEG, which stores colour "+
			"at half the resolution; sheets.pdf grows several times larger")
		add(flags, &m.out, "out", "folder", "", named, "folder to write, new or empty (default: the artwork's name with "+
			"-backdrop)")
		flags.BoolVar(&m.json, "json", false, "tell the job as JSON, as job.json has it")
		flags.BoolVar(&m.force, "force", false, "replace a job that is already in the folder, its reprints and "+
			"trials included")
		return m.run
	},
}

// making is what the flags of make ask for.
type making struct {
	setup                 setupFlags
	placement             placementFlags
	ppi                   job.PPI
	out                   string
	lossless, json, force bool
}

func (m *making) run(ctx context.Context, c console, args []string) error {
	path, err := only("make", anArtwork, args)
	if err != nil {
		return err
	}
	setup, err := m.setup.setup()
	if err != nil {
		return err
	}
	if err := m.placement.check(); err != nil {
		return err
	}
	if m.out == "" {
		base := filepath.Base(path)
		m.out = strings.TrimSuffix(base, filepath.Ext(base)) + "-backdrop"
	}
	show := progress{console: c}
	defer show.clear()
	j, seams, err := job.Make(ctx, job.Order{
		Artwork: path, MaxPixels: m.setup.maxPixels, Crop: m.setup.picture.crop, Setup: setup,
		Seams: m.placement.rule, Avoid: m.placement.avoid,
		PPI: m.ppi, Lossless: m.lossless,
		Folder: m.out, Force: m.force,
	}, show.watch())
	if err != nil {
		return err
	}
	if m.json {
		return j.Encode(c.out)
	}
	return m.tell(c.out, j, seams)
}

// tell says what was made.
func (m *making) tell(w io.Writer, j job.Job, seams []seamsight.Seam) error {
	r := report.Of(j.Plan)
	if err := writeFacts(w, r.Facts()...); err != nil {
		return err
	}
	if err := writePlacement(w, j.Placement, len(j.Sheets)); err != nil {
		return err
	}
	if err := writeSeen(w, seams, m.out); err != nil {
		return err
	}
	placed := j.Print.Grid.Resolution(j.PictureOnBoard())
	part := j.Print.Part
	if err := writeFacts(w, r.Artwork(part.WidthPx, part.HeightPx, placed.PixelsPerMM())); err != nil {
		return err
	}
	ppi := placed.PixelsPerInch()
	_, err := fmt.Fprintf(w, "%-12s %s in %s (%.0f pixels to the inch, check code %s)\n", "written",
		strings.Join(place.Files, ", "), m.out, ppi, j.CheckCode)
	return err
}

// levelProfileWarning says what levelling takes for granted of an artwork that carries a colour profile of its own.
const levelProfileWarning = "--level darkens by sRGB's curve, and the artwork's own colour profile may have " +
	"another: check one sheet before you print all"
