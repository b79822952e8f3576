package main

import (
	"context"
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

var sizeCommand = command{
	name: "size", args: "[ARTWORK|JOB]",
	summary: "work out sizes and distances; writes no file",
	about: `Works out how large the backdrop must be, how many sheets it takes, and what the
drop will show of it. Any two of --distance, --print-size (or --max-sheets) and
--fill give the third. ARTWORK (or - for a picture that is piped in) gives the
proportions, and which way the paper lies where that is left open: the way in
which seams show less. A JOB (a job.json or its folder) is asked for as it was,
but for the flags given, and what differs is told first. Writes no file.`,
	example: "dropsheet size --drop 4.6mm --distance 40cm --fill 0.9",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Size
		asked.Register(flags)
		return func(ctx context.Context, c console, args []string) error {
			if len(args) > 0 {
				path, err := only("size", anArtwork, args)
				if err != nil {
					return err
				}
				remove, err := asked.TakeIn(ctx, path)
				if err != nil {
					return err
				}
				defer remove()
			}
			p, part, err := asked.Plan(ctx)
			if err != nil {
				return err
			}
			r := report.Of(p)
			if asked.EitherWay {
				r.LiesEitherWay()
			}
			c.tell(r.Warnings())
			if !part.Empty() && !asked.Drawn {
				c.tell(r.TooCoarse(part.Dx(), part.Dy()))
			}
			if asked.JSON {
				return writeJSON(c.out, struct {
					report.Figures
					*since
				}{r.Figures(job.Version), sinceJob(asked.Job(), asked.Changes(), r)})
			}
			if err := sinceJob(asked.Job(), asked.Changes(), r).write(c.out); err != nil {
				return err
			}
			if !asked.Verbose {
				if err := writeGlance(c.out, r.Glance()); err != nil {
					return err
				}
				_, err := fmt.Fprintln(c.out, "More: --verbose (every figure, stops, sources), --json (for programs)")
				return err
			}
			facts := r.Facts()
			if was := asked.Job(); len(p.Sheets) > 1 && (was == nil || len(asked.Changes()) > 0) {
				facts = append(facts, report.Fact{Name: "seams",
					Text: report.Words("told in even cells; make slides seams to where they show least in the artwork")})
			}
			if err := writeFacts(c.out, facts...); err != nil {
				return err
			}
			if _, err := fmt.Fprintf(c.out, "\nThe bench from the side, to scale\n%s\n",
				strings.Join(r.BenchView(), "\n")); err != nil {
				return err
			}
			return writeTable(c.out, r.StopsIntro().Capital().String(), r.Stops())
		}
	},
}
