package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

var reprintCommand = command{
	name: "reprint", args: "JOB SHEET...",
	summary: "print chosen sheets again, as they were",
	about: `Makes sheets of JOB (a job.json or its folder) again, pixel for pixel. SHEET is
a name such as R2C3, a row such as R2, a column such as C4, or all.
It needs the artwork, where it was or as the folder's copy; without either, the
pages come out of sheets.pdf, for the printer and the paper of the job.
On another printer or other paper (--printer, --margin, --paper) pixels and
cells stay as they were, and only the sheet's place on its page changes. Where
there is too little room, the sheet is turned, its strips come narrower, and
then its laps, down to 3mm.`,
	example: "dropsheet reprint harbour-backdrop R2C3 R1",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Reprint
		asked.Register(flags)
		return func(ctx context.Context, c console, args []string) error { return reprint(ctx, c, &asked, args) }
	},
}

// reprint writes the sheets that are named after their job into a file.
func reprint(ctx context.Context, c console, r *ask.Reprint, args []string) error {
	if len(args) < 2 {
		return job.WrongWords(errors.New("reprint takes a job and the sheets to print\nhint: dropsheet reprint " +
			"harbour-backdrop R2C3"))
	}
	j, err := job.Read(args[0])
	if err != nil {
		return err
	}
	again, err := job.NewReprint(j, args[1:])
	if err != nil {
		return err
	}
	show := progress{console: c}
	defer show.clear()
	on, asked, err := r.Paper(j.Backdrop)
	if err != nil {
		return err
	}
	if asked {
		if again, err = again.On(on, show.watch()); err != nil {
			return err
		}
	}
	if r.Out == "" {
		r.Out = filepath.Join(j.Folder(), again.FileName())
	}
	if err := j.MayWrite(r.Out, r.Force, r.Artwork); err != nil {
		return err
	}
	if err := namedAs(r.Out, "a reprint", ".pdf"); err != nil {
		return err
	}
	art, err := j.OpenArtwork(r.Artwork, r.Limits)
	fromPages := err != nil && r.Artwork == "" && again.MayCopy() == nil
	switch {
	case fromPages && asked:
		return fmt.Errorf("%w, and another printer or paper needs it\nhint: for those that the job was made for %s", err,
			again.Pages())
	case err != nil && !fromPages:
		return err
	case err == nil:
		c.warn(art.Warning()...)
	}
	if fromPages {
		c.warn("the artwork is not to be had: the sheets are taken from sheets.pdf, exactly as they were")
		err = again.Copy(ctx, r.Out, r.Force, r.Spare+1)
	} else {
		err = again.Write(ctx, art.Picture, r.Out, r.Force, r.Spare+1, show.watch())
	}
	if err != nil {
		return err
	}
	return tellReprint(c, r, again, asked)
}

// tellReprint says what was printed again, and on what where that is not as it was.
func tellReprint(c console, r *ask.Reprint, again job.Reprint, elsewhere bool) error {
	j, more := again.Job, ""
	if r.Spare > 0 {
		more = fmt.Sprintf(", %d times each", r.Spare+1)
	}
	if elsewhere {
		more += fmt.Sprintf(", on %s, %s", job.Printable(j.Backdrop.Paper.Name), j.Backdrop.Orientation)
	}
	text := fmt.Sprintf("written      %d of %d sheets of %s%s, check code %s, to %s\n", len(again.Sheets), len(j.Sheets),
		j.Name, more, j.CheckCode, r.Out)
	if _, err := io.WriteString(c.out, text); err != nil {
		return err
	}
	if f, ok := report.Of(j.Plan).Fact("print.printer"); ok {
		return writeFacts(c.out, f)
	}
	return nil
}
