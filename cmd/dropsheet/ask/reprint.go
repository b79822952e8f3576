package ask

import (
	"fmt"
	"strconv"

	"github.com/spf13/pflag"

	"dropsheet/layout"
)

// Reprint is what reprint is asked for.
type Reprint struct {
	flags *pflag.FlagSet
	jobArtwork
	printer string
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
		return 0, fmt.Errorf("%q can't be taken: write a whole number from 0 to %d", s, mostSpares)
	}
	return n, nil
}

// noPrinter is the name that stands for a printer that was not measured.
const noPrinter = "none"

// Paper is the paper and the printer, nil for one that was not measured, that sheets of a backdrop shall go on. asked
// is false when that is as they were.
func (r *Reprint) Paper(b layout.Backdrop) (paper layout.Paper, printer *layout.Printer, asked bool, err error) {
	paper, printer = b.Paper, b.Printer
	if r.flags.Changed("paper") {
		paper = r.paper
	}
	switch {
	case r.printer == noPrinter:
		printer = nil
	case r.flags.Changed("printer"):
		if printer, err = keptPrinter(r.printer); err != nil {
			return paper, nil, true, err
		}
	}
	return paper, printer, r.flags.Changed("printer") || r.flags.Changed("paper"), nil
}
