package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/tile/hint"
	"dropsheet/tile/job"
)

var checkCommand = command{
	name: "check", args: "JOB",
	summary: "whether a job can still be printed as it was",
	about: `Looks, before a sheet is printed again, whether JOB (a job.json or its folder)
is as make left it: the files of its folder and their hashes, its format, the
sheets, the check code, the pages of sheets.pdf and the artwork, where it was or
as the folder's copy. Prints a line for each, and what to do about any that
differ. Changes nothing. Exit code 0: all agree; 1: something differs.`,
	example: "dropsheet check harbour-backdrop",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Check
		asked.Register(flags)
		return func(_ context.Context, c console, args []string) error {
			path, err := only("check", aJob, args)
			if err != nil {
				return err
			}
			return checkJob(c.out, path, asked)
		}
	},
}

// checkJob writes what is found and returns an error if anything differs.
func checkJob(w io.Writer, path string, asked ask.Check) error {
	findings, err := job.Check(path, asked.Artwork, asked.Limits)
	if err != nil {
		return err
	}
	differ := 0
	var text strings.Builder
	for _, f := range findings {
		says := f.Agrees
		if f.Differs != nil {
			differ++
			says = "DIFFERS: " + strings.ReplaceAll(hint.Text(f.Differs), "\n", "\n"+strings.Repeat(" ", factColumns))
		}
		text.WriteString(folded(w, factColumns, fmt.Sprintf("%-*s%s", factColumns, f.What, says)) + "\n")
	}
	if _, err := io.WriteString(w, text.String()); err != nil {
		return err
	}
	if differ > 0 {
		return fmt.Errorf("job %q is not as it was made: %d of %d things differ\nhint: each says what to do", path, differ,
			len(findings))
	}
	return nil
}
