package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strconv"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

var reprintCommand = command{
	name: "reprint", args: "JOB SHEET...",
	summary: "print chosen sheets again, as they were",
	about: `Makes sheets of a job again, pixel for pixel, from JOB (a job.json or its folder) and the artwork
that it names, which must not have changed. SHEET is a name such as R2C3, a row such as R2, a column
such as C4, or all. On another printer or other paper the pixels are the same and the cell comes out
as large as before: only where the sheet lies on its page changes, and what the page makes up for.`,
	example: "dropsheet reprint harbour-backdrop R2C3 R1",
	prepare: func(flags *pflag.FlagSet) action {
		r := reprinting{flags: flags}
		add(flags, &r.artwork, "artwork", "file", "", named, "file that the artwork has moved to (default: where the "+
			"job says)")
		addMaxPixels(flags, &r.maxPixels)
		add(flags, &r.printer, "printer", "name", "", named, "print on the measured printer of that name, or none: on "+
			"one that was not measured (default: as the job was made)")
		add(flags, &r.paper, "paper", "name|WxH", "", layout.ParsePaper,
			"print on other paper that holds the sheets (default: as the job was made)")
		add(flags, &r.spare, "spare", "N", "", spares,
			fmt.Sprintf("that many more copies of each sheet, right after it, 0 to %d (default 0)", mostSpares))
		add(flags, &r.out, "out", "file", "", named, "file to write (default: reprint- and the names, in the job's folder)")
		flags.BoolVar(&r.force, "force", false, "replace the file if it exists")
		return r.run
	},
}

// reprinting is what the flags of reprint ask for.
type reprinting struct {
	maxPixels             int
	flags                 *pflag.FlagSet
	artwork, out, printer string
	paper                 layout.Paper
	spare                 int
	force                 bool
}

// mostSpares bounds the copies, so that a slip does not fill a disk.
const mostSpares = 99

// spares reads a number of copies.
func spares(s string) (int, error) {
	n, err := strconv.Atoi(s)
	if err != nil || n < 0 || n > mostSpares {
		return 0, fmt.Errorf("%q can't be taken: write a whole number from 0 to %d", s, mostSpares)
	}
	return n, nil
}

// noPrinter is the name that stands for a printer that was not measured.
const noPrinter = "none"

func (r *reprinting) run(ctx context.Context, c console, args []string) error {
	if len(args) < 2 {
		return job.WrongWords(errors.New("reprint takes a job and the sheets to print, such as: dropsheet reprint " +
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
	if again, err = r.place(c, again); err != nil {
		return err
	}
	art, err := j.OpenArtwork(r.artwork, r.maxPixels)
	if err != nil {
		return err
	}
	if r.out == "" {
		r.out = filepath.Join(j.Folder(), again.FileName())
	}
	if err := j.MayWrite(r.out, r.force, r.artwork); err != nil {
		return err
	}
	if err := namedAs(r.out, "a reprint", ".pdf"); err != nil {
		return err
	}
	show := progress{console: c}
	defer show.clear()
	if err := again.Write(ctx, art, r.out, r.force, r.spare+1, show.watch()); err != nil {
		return err
	}
	return r.tell(c, again)
}

// place puts the sheets on the paper and printer that were asked for; as they were when nothing was.
func (r *reprinting) place(c console, again job.Reprint) (job.Reprint, error) {
	if !r.flags.Changed("printer") && !r.flags.Changed("paper") {
		return again, nil
	}
	printer, paper := again.Job.Backdrop.Printer, again.Job.Backdrop.Paper
	if r.flags.Changed("paper") {
		paper = r.paper
	}
	switch {
	case r.printer == noPrinter:
		printer = nil
	case r.flags.Changed("printer"):
		var err error
		if printer, err = keptPrinter(r.printer); err != nil {
			return again, err
		}
	}
	placed, warnings, err := again.On(paper, printer)
	if err != nil {
		return again, err
	}
	c.tell(report.PaperWarnings(placed.Job.Backdrop))
	c.warn(warnings...)
	return placed, nil
}

// tell says what was printed again.
func (r *reprinting) tell(c console, again job.Reprint) error {
	j, more := again.Job, ""
	if r.spare > 0 {
		more = fmt.Sprintf(", %d times each", r.spare+1)
	}
	if r.flags.Changed("printer") || r.flags.Changed("paper") {
		more += fmt.Sprintf(", on %s, %s", job.Printable(j.Backdrop.Paper.Name), j.Backdrop.Orientation)
	}
	text := fmt.Sprintf("written      %d of %d sheets of %s%s, check code %s, to %s\n", len(again.Sheets), len(j.Sheets),
		j.Name, more, j.CheckCode, r.out)
	if _, err := io.WriteString(c.out, text); err != nil {
		return err
	}
	if f, ok := report.Of(j.Plan).Fact("print.printer"); ok {
		return writeFacts(c.out, f)
	}
	return nil
}
