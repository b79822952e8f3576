package job

import (
	"context"
	"fmt"
	"io"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/artwork"
	"dropsheet/tile/sheet"
)

// Reprint is some of a job's sheets, to be printed again as they were.
type Reprint struct {
	Job    Job // with the paper and the printer that they go on
	Sheets []layout.Sheet
	names  []string
}

// NewReprint chooses sheets of a job that was read by names such as R2C3, rows such as R2, columns such as C4, or
// all. A job that was changed since it was made is refused, since its sheets would not fit those that are printed.
func NewReprint(j Job, names []string) (Reprint, error) {
	if err := j.Changed(); err != nil {
		return Reprint{}, fmt.Errorf("job %q: %w", j.read.given, err)
	}
	chosen, err := j.Select(names)
	return Reprint{j, chosen, names}, WrongWords(err)
}

// On is what sheets are printed on.
type On struct {
	Paper   layout.Paper
	Printer *layout.Printer // nil for one that was not measured
	Margins *layout.Margins // of one that was not measured, where they are told
}

// On puts the sheets on other paper or another printer. Their pixels and their size stay as they were; their strips and
// laps may come narrower, which is warned of.
func (r Reprint) On(on On, w Watch) (Reprint, error) {
	was := r.Job.Backdrop
	plan, sheets, err := r.Job.Plan.Reprint(r.Sheets, on.Paper, on.Printer, on.Margins)
	if err != nil {
		return Reprint{}, WrongWords(err)
	}
	w.tell(report.PaperWarnings(plan.Backdrop))
	w.warn(narrowed(was, plan.Backdrop)...)
	if on.Printer == nil && was.Printer != nil {
		w.warn("nothing is known of this printer's scale: look that all cut marks are there, and measure the check rule")
	}
	r.Job.Plan, r.Sheets = layout.Rounded(plan), layout.Rounded(sheets) // as make does
	return r, nil
}

// narrowed warns of what came narrower for want of room.
func narrowed(was, is layout.Backdrop) []string {
	var all []string
	if mm := is.NarrowStripMM; mm > 0 {
		all = append(all, fmt.Sprintf("strips of %gmm", mm))
	}
	if is.LapMM < was.LapMM {
		all = append(all, fmt.Sprintf("laps of %gmm in place of %gmm", is.LapMM, was.LapMM))
	}
	if len(all) == 0 {
		return nil
	}
	return []string{fmt.Sprintf("this printer lacks the room for the sheets as they were: they have %s, and fit all the "+
		"same", strings.Join(all, " and "))}
}

// mostNamed is how many sheets a file's name tells one by one.
const mostNamed = 4

// FileName is what the reprint's file is called in the job's folder.
func (r Reprint) FileName() string {
	names := strings.ToUpper(strings.Join(r.names[:min(len(r.names), mostNamed)], "-"))
	if more := len(r.names) - mostNamed; more > 0 {
		names += fmt.Sprintf("-and-%d-more", more)
	}
	return "reprint-" + strings.ReplaceAll(names, " ", "") + ".pdf"
}

// Write writes the sheets to a PDF file, each as often as copies says, if the job still lies where it was read. An
// existing file is an error unless force is set. art is the part of the artwork that is printed.
func (r Reprint) Write(ctx context.Context, art *artwork.Picture, path string, force bool, copies int, w Watch) error {
	sheets, warnings := r.Job.sheets(art, r.Job.Hang())
	w.warn(warnings...)
	if r.Job.LandingMM == 0 && len(r.Job.Sheets) > 1 {
		w.warn(fmt.Sprintf("the sheets of this job have a line on their laps, at the seam; these have short ticks "+
			"there, %gmm past it: lay them by the pencil grid, and let the ticks check", sheet.LandingMM))
	}
	var pages []layout.Sheet
	for _, s := range r.Sheets {
		for range copies {
			pages = append(pages, s)
		}
	}
	return r.Job.writeFile(path, force, func(out io.Writer) error {
		return sheets.Write(ctx, out, pages, func(done int) { w.progress("sheet", done, len(pages)) })
	})
}
