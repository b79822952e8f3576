package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strconv"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job/place"
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
		return wrongWords{errors.New("reprint takes a job and the sheets to print, such as: dropsheet reprint " +
			"harbour-backdrop R2C3")}
	}
	j, folder, err := readJob(args[0])
	if err != nil {
		return err
	}
	if changed := j.checkCode().differs; changed != nil {
		return fmt.Errorf("job %q: %w", args[0], changed)
	}
	chosen, err := j.Select(args[1:])
	if err != nil {
		return asWrongWords(err)
	}
	j.Plan, chosen, err = r.place(c, j.Plan, chosen)
	if err != nil {
		return err
	}
	art, err := openArtwork(j, folder, r.artwork, r.maxPixels)
	if err != nil {
		return err
	}
	if r.out == "" {
		r.out = filepath.Join(folder, reprintName(args[1:]))
	}
	if err := place.MayWrite(r.out, r.force, artworkPath(j, folder, r.artwork), args[0]); err != nil {
		return err
	}
	if err := namedAs(r.out, "a reprint", ".pdf"); err != nil {
		return err
	}
	sheets, warnings := j.sheetJob(art, j.Hang())
	c.warn(warnings...)
	pages := withSpares(chosen, r.spare)
	show := progress{c, "sheet", len(pages)}
	err = j.writeFile(r.out, r.force, func(w io.Writer) error {
		return sheets.Write(ctx, w, pages, show.done)
	})
	show.clear()
	if err != nil {
		return err
	}
	copies := ""
	if r.spare > 0 {
		copies = fmt.Sprintf(", %d times each", r.spare+1)
	}
	if r.flags.Changed("printer") || r.flags.Changed("paper") {
		copies += fmt.Sprintf(", on %s, %s", printable(j.Backdrop.Paper.Name), j.Backdrop.Orientation)
	}
	text := fmt.Sprintf("written      %d of %d sheets of %s%s, check code %s, to %s\n", len(chosen), len(j.Sheets),
		j.Name, copies, j.CheckCode, r.out)
	for _, l := range printerLines(j.Backdrop) {
		text += fmt.Sprintf("%-12s %s\n", l[0], l[1])
	}
	_, err = io.WriteString(c.out, text)
	return err
}

// place puts the chosen sheets on the paper and printer that were asked for; as they were when nothing was.
func (r *reprinting) place(c console, p layout.Plan, chosen []layout.Sheet) (layout.Plan, []layout.Sheet, error) {
	if !r.flags.Changed("printer") && !r.flags.Changed("paper") {
		return p, chosen, nil
	}
	printer, paper := p.Backdrop.Printer, p.Backdrop.Paper
	if r.flags.Changed("paper") {
		paper = r.paper
	}
	switch {
	case r.printer == noPrinter:
		printer = nil
	case r.flags.Changed("printer"):
		var err error
		if printer, err = keptPrinter(r.printer); err != nil {
			return p, nil, err
		}
	}
	placed, sheets, err := p.Reprint(chosen, paper, printer)
	if err != nil {
		return p, nil, asWrongWords(err)
	}
	c.warn(printerWarnings(placed.Backdrop)...)
	if printer == nil && p.Backdrop.Printer != nil {
		c.warn("nothing is known of this printer's margins or scale: look that all cut marks are there, and measure the " +
			"check rule")
	}
	return placed, sheets, nil
}

// withSpares lists each sheet with its copies after it.
func withSpares(sheets []layout.Sheet, spare int) (pages []layout.Sheet) {
	for _, s := range sheets {
		for range spare + 1 {
			pages = append(pages, s)
		}
	}
	return pages
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
