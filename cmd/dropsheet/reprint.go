package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"
)

var reprintCommand = command{
	name: "reprint", args: "JOB SHEET...",
	summary: "chosen sheets again, as they were",
	about: `Makes sheets of a job again, pixel for pixel, from JOB (a job.json or its folder) and the artwork that it
names, which must not have changed. SHEET is a name such as R2C3, a row such as R2, a column such as C4, or all.`,
	example: "dropsheet reprint harbour-backdrop R2C3 R1",
	prepare: func(flags *pflag.FlagSet) action {
		var r reprinting
		flags.StringVar(&r.artwork, "artwork", "", "`file` that the artwork has moved to (default: where the job says)")
		flags.StringVar(&r.out, "out", "", "`file` to write (default: reprint- and the names, in the job's folder)")
		flags.BoolVar(&r.force, "force", false, "replace the file if it exists")
		return r.run
	},
}

// reprinting is what the flags of reprint ask for.
type reprinting struct {
	artwork, out string
	force        bool
}

func (r *reprinting) run(ctx context.Context, c console, args []string) error {
	if len(args) < 2 {
		return wrongWords{errors.New("reprint takes a job and the sheets to print, such as: dropsheet reprint harbour-backdrop R2C3")}
	}
	j, folder, err := readJob(args[0])
	if err != nil {
		return err
	}
	chosen, err := j.Select(args[1:])
	if err != nil {
		return asWrongWords(err)
	}
	art, err := openArtwork(j, folder, r.artwork)
	if err != nil {
		return err
	}
	if r.out == "" {
		r.out = filepath.Join(folder, reprintName(args[1:]))
	}
	if err := mayWrite(r.out, r.force, artworkPath(j, folder, r.artwork)); err != nil {
		return err
	}
	sheets, warnings := j.sheetJob(art)
	c.warn(warnings...)
	show := progress{c, "sheet", len(chosen)}
	err = writeFile(r.out, r.force, func(w io.Writer) error {
		return sheets.Write(ctx, w, chosen, show.done)
	})
	show.clear()
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.out, "written      %d of %d sheets of %s, check code %s, to %s\n", len(chosen), len(j.Sheets), j.Name, j.CheckCode, r.out)
	return err
}

// mostNamed is how many sheets a file's name tells one by one.
const mostNamed = 4

// reprintName is the file for the sheets that were asked for; Select has passed them.
func reprintName(asked []string) string {
	names := strings.ToUpper(strings.Join(asked[:min(len(asked), mostNamed)], "-"))
	if more := len(asked) - mostNamed; more > 0 {
		names += fmt.Sprintf("-and-%d-more", more)
	}
	return "reprint-" + strings.ReplaceAll(names, " ", "") + ".pdf"
}
