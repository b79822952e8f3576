package ask

import (
	"errors"
	"fmt"
	"strconv"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// Reprint is what reprint is asked for.
type Reprint struct {
	flags *pflag.FlagSet
	jobArtwork
	printer string
	margin  margins
	paper   layout.Paper
	Spare   int // more copies of each sheet
	Out     string
	Force   bool
}

// Register adds the words to a set of flags.
func (r *Reprint) Register(flags *pflag.FlagSet) {
	r.flags = flags
	r.jobArtwork.register(flags)
	add(flags, &r.printer, "printer", "name", "", named, "print on the measured printer of that name, or none: on "+
		"one that was not measured (default: as the job was made)")
	add(flags, &r.paper, "paper", "name|WxH", "", layout.ParsePaper,
		"print on other paper that holds the sheets (default: as the job was made)")
	add(flags, &r.margin, "margin", "length|L,T,R,B", "", margin, "print on a printer that was not measured and can't "+
		"reach that along the paper's edges: one length, or left, top, right and bottom (default: as the job was made)")
	add(flags, &r.Spare, "spare", "N", "", spares,
		fmt.Sprintf("that many more copies of each sheet, right after it, 0 to %d (default 0)", mostSpares))
	add(flags, &r.Out, "out", "file", "", named, "file to write (default: reprint- and the names, in the job's folder)")
	flags.BoolVar(&r.Force, "force", false, "replace the file if it exists")
}

// mostSpares bounds the copies, so that a slip does not fill a disk.
const mostSpares = 99

// spares reads a number of copies.
func spares(s string) (int, error) {
	n, err := strconv.Atoi(s)
	if err != nil || n < 0 || n > mostSpares {
		return 0, fmt.Errorf("%q can't be taken\nhint: write a whole number from 0 to %d", s, mostSpares)
	}
	return n, nil
}

// noPrinter is the name that stands for a printer that was not measured.
const noPrinter = "none"

// Paper is the paper and the printer, nil for one that was not measured, that sheets of a backdrop shall go on,
// and that one's margins where they are told. asked is false when that is as they were.
func (r *Reprint) Paper(b layout.Backdrop) (on job.On, asked bool, err error) {
	given := r.flags.Changed
	on = job.On{Paper: b.Paper, Printer: b.Printer}
	if given("paper") {
		on.Paper = r.paper
	}
	if given("margin") {
		if given("printer") && r.printer != noPrinter {
			return on, true, job.WrongWords(errors.New("--printer brings the margins that were measured, and --margin " +
				"others\nhint: give one of them"))
		}
		on.Printer, on.Margins = nil, r.margin.each
		if on.Margins == nil {
			mm := r.margin.allMM
			on.Margins = &layout.Margins{LeftMM: mm, TopMM: mm, RightMM: mm, BottomMM: mm}
		}
	}
	switch {
	case r.printer == noPrinter:
		on.Printer = nil
	case given("printer"):
		if on.Printer, err = keptPrinter(r.printer); err != nil {
			return on, true, err
		}
	}
	return on, given("printer") || given("paper") || given("margin"), nil
}
