package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/layout/shot"
	"dropsheet/tile/job"
	"dropsheet/tile/seamsight"
)

var makeCommand = command{
	name: "make", args: "ARTWORK|JOB",
	summary: "a job into a folder: sheets, guide, pictures",
	about: `Turns ARTWORK (JPEG, PNG, TIFF, BMP, GIF, WebP, or a page of a PDF) as the drop
demands, cuts it into sheets and writes a folder with
  sheets.pdf   one sheet a page, in pasting order
  guide.pdf    how to assemble them
  proof.png    what the camera will record
  closeup.png  the drop in it, large
  seams.png    where the seams fall, on the board and in the drop
  rays.pdf     of a rod: its rays and their angles, to scale, to draw on
  job.json     the job, which proof, seams, reprint and check read
  artwork.*    a copy of ARTWORK, for the day that it has moved or changed
For a picture that is piped in, write - in place of ARTWORK.
Any two of --distance, --print-size (or --max-sheets) and --fill give the third.
A JOB (a job.json or its folder) is made again as it was asked for, but for the
flags given.`,
	example: "dropsheet make examples/harbour/harbour.jpg --max-sheets 1 --out harbour-one",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Make
		asked.Register(flags)
		return func(ctx context.Context, c console, args []string) error { return makeJob(ctx, c, &asked, args) }
	},
}

// makeJob makes the job and says what was made.
func makeJob(ctx context.Context, c console, m *ask.Make, args []string) error {
	path, err := only("make", anArtwork, args)
	if err != nil {
		return err
	}
	if err := m.Of(path); err != nil {
		return err
	}
	order, err := m.Order()
	if err != nil {
		return err
	}
	show := progress{console: c}
	defer show.clear()
	j, err := job.Make(ctx, order, show.watch())
	if err != nil {
		return err
	}
	if m.JSON {
		return j.Encode(c.out)
	}
	if err := sinceJob(m.Job(), m.Changes(), j.Told).write(c.out); err != nil {
		return err
	}
	return tellMade(c.out, j, order.Folder, m.Verbose)
}

// tellMade says what was made, and into which folder: in short, or with all facts.
func tellMade(w io.Writer, j job.Made, folder string, verbose bool) error {
	r := j.Told
	if !verbose {
		if err := writeGlance(w, shortened(r.Glance(), "PRINT", "PLACE", "SEE", "CHECK")); err != nil {
			return err
		}
		return tellFolder(w, j, folder)
	}
	if err := writeFacts(w, r.Facts()...); err != nil {
		return err
	}
	if err := writePlacement(w, j.Placement, len(j.Sheets)); err != nil {
		return err
	}
	if err := writeSeen(w, j.Seen, folder); err != nil {
		return err
	}
	placed := j.Print.Grid.Resolution(j.PictureOnBoard())
	part := j.Print.Part
	if err := writeFacts(w, r.Artwork(part.WidthPx, part.HeightPx, placed.PixelsPerMM())); err != nil {
		return err
	}
	if err := writeFact(w, "proof", job.Brightness(j.Plan)); err != nil {
		return err
	}
	if err := writeFact(w, "written", fmt.Sprintf("%s in %s (%s, check code %s)", strings.Join(j.FileNames(), ", "),
		folder, report.PerInch(placed.PixelsPerInch()), j.CheckCode)); err != nil {
		return err
	}
	return writeFact(w, "care", report.Care(j.Plan, report.GlanceColumns-factColumns))
}

// tellFolder says in short how the seams show, and what lies in the folder.
func tellFolder(w io.Writer, j job.Made, folder string) error {
	var b strings.Builder
	if n := seamsight.Count(j.Seen); len(j.Seen) > 0 {
		mark := " "
		if n.Shows > 0 {
			mark = "!"
		}
		fmt.Fprintf(&b, "%-*s%-*s%s\n", report.GlanceGroupColumns, "", report.GlanceNameColumns, mark+" seams",
			n.Seen())
	}
	placed := j.Print.Grid.Resolution(j.PictureOnBoard())
	bright := "proof.png has a brightness that is set for it, not the camera's"
	if _, ok := shot.Of(j.Plan).RecordedWhite(); ok {
		bright = "proof.png is as bright as the camera records it"
	}
	fmt.Fprintf(&b, "%-*s%s (check code %s, %s)\n%-[1]*[6]s"+
		"read guide.pdf, look at proof.png, print sheets.pdf at 100 %%\n%-[1]*[6]s%[7]s\n",
		report.GlanceGroupColumns, "MADE", folder, j.CheckCode, report.PerInch(placed.PixelsPerInch()), "", bright)
	fmt.Fprintf(&b, "%-*s%s\n", report.GlanceGroupColumns, "CARE", report.Care(j.Plan,
		report.GlanceColumns-report.GlanceGroupColumns))
	fmt.Fprintf(&b, "More: dropsheet make --verbose, dropsheet seams %s\n", report.Typed(folder))
	_, err := io.WriteString(w, b.String())
	return err
}

// writePlacement says in a line where the seams went. sheets is how many there are.
func writePlacement(w io.Writer, p job.Placement, sheets int) error {
	if sheets == 1 {
		return nil
	}
	text := "cells as even as they can be"
	if p.Rule == layout.SeamsLeast {
		text = fmt.Sprintf("moved up to %.0f mm", p.MovedMM)
		if p.Cost != nil {
			text += fmt.Sprintf("; they show %.0f %% less than an even grid would", 100*(1-*p.Cost))
		}
	}
	return writeFact(w, "seams", text)
}
