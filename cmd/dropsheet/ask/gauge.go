package ask

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/flip/units"
	"dropsheet/layout"
	"dropsheet/tile/gauge"
	"dropsheet/tile/job"
)

// Gauge is what gauge is asked for: its page, to keep a reading, or the list of what is kept.
type Gauge struct {
	flags         *pflag.FlagSet
	Paper         layout.Paper
	Out           string
	save          string
	Forget        string // a printer to forget
	read, between layout.Size
	pasted        layout.Size
	margins       layout.Margins
	List, Force   bool
}

// Register adds the words to a set of flags.
func (g *Gauge) Register(flags *pflag.FlagSet) {
	g.flags = flags
	add(flags, &g.Paper, "paper", "name|WxH", "A4", layout.ParsePaper, "what to print on: "+layout.PapersTaken)
	add(flags, &g.Out, "out", "file", "", named, "file to write (default: gauge- and the paper)")
	flags.StringVar(&g.save, "save", "", "keep a reading under this `name`, for make --printer")
	add(flags, &g.read, "read", "WxH", "", sizeMM, "what the steel rule says between the end ticks: across, then "+
		"feed; such as 199.2x248.5mm")
	add(flags, &g.between, "between", "WxH", "", sizeMM, "true distances of the ticks that were read, when they are "+
		"not the end ticks; such as 180x240mm")
	add(flags, &g.margins, "margins", "L,T,R,B", "", marginsMM, "the frame's first whole line on the left, top, "+
		"right and bottom; such as 4,4,4,12mm, 0mm or more")
	add(flags, &g.pasted, "pasted", "WxH", "", sizeMM, "what the steel rule says between the same ticks once the page "+
		"is pasted and dry: sheets then make up for paper that grows")
	add(flags, &g.Forget, "forget", "name", "", named, "forget the printer of that name")
	flags.BoolVar(&g.List, "list", false, "tell the printers that are kept, and where")
	flags.BoolVar(&g.Force, "force", false, "replace the file, or the printer of that name, if there is one")
}

// Keeps tells whether a reading shall be kept.
func (g *Gauge) Keeps() bool { return g.flags.Changed("save") }

// Check refuses flags that don't go together.
func (g *Gauge) Check() error { return job.WrongWords(g.check()) }

func (g *Gauge) check() error {
	given := g.flags.Changed
	refuse := func(because string, flags ...string) error {
		for _, f := range flags {
			if given(f) {
				return fmt.Errorf("--%s %s", f, because)
			}
		}
		return nil
	}
	switch {
	case g.List, given("forget"):
		alone := "list"
		if given("forget") {
			alone = "forget"
		}
		var others []string
		for _, f := range []string{"paper", "out", "save", "read", "between", "margins", "pasted", "list", "force"} {
			if f != alone {
				others = append(others, f)
			}
		}
		return refuse(fmt.Sprintf("has no meaning with --%s\nhint: give --%[1]s alone", alone), others...)
	case given("save") && strings.TrimSpace(g.save) == noPrinter:
		return fmt.Errorf("a printer can't be named %q, which stands for one that was not measured\n"+
			"hint: choose another name "+
			"with --save", noPrinter)
	case given("save"):
		if given("read") && !given("margins") || !given("margins") && !given("pasted") {
			return errors.New("--save keeps what was measured\n" +
				"hint: give --read and --margins with it, such as --read 199.2x248.5mm --margins 4,4,4,12mm; --margins alone " +
				"where no scale was measured; or --pasted of a printer that is kept")
		}
		return refuse("names a page to write, and --save writes none\nhint: give one of them", "out")
	}
	return refuse("is a part of a reading\nhint: name the printer with --save", "read", "between", "margins", "pasted")
}

// Name is the printer's name.
func (g *Gauge) Name() string { return strings.TrimSpace(g.save) }

// Printer is the printer of the reading, of which was is kept already, nil for nothing; replaces tells whether
// something of that is replaced.
func (g *Gauge) Printer(was *layout.Printer) (p layout.Printer, replaces bool, err error) {
	given := g.flags.Changed
	paper := g.Paper
	if was != nil && !given("paper") {
		paper = was.Paper
	}
	trueMM := gauge.Rules(paper)
	if given("between") {
		b := g.between
		if b.WidthMM > trueMM.WidthMM || b.HeightMM > trueMM.HeightMM {
			return p, false, job.WrongWords(fmt.Errorf("--between %gx%gmm is longer than the rules on %s, %gx%gmm\n"+
				"hint: give the true distances of the ticks that were read",
				b.WidthMM, b.HeightMM, paper.Name, trueMM.WidthMM, trueMM.HeightMM))
		}
		trueMM = b
	}
	switch {
	case given("read"):
		p, err = layout.NewPrinter(g.Name(), paper, trueMM, g.read, g.margins)
		if other := rulesOf(g.read); err != nil && other != "" && other != paper.Name && !given("between") {
			err = fmt.Errorf("%w\nhint: these are about the rules of %s: if its page was printed, give --paper %s", err, other,
				other)
		}
		replaces = was != nil
		if was != nil {
			p.Growth = was.Growth
		}
	case was != nil:
		p = *was
	case given("margins"): // nothing is known of its scale
		p = layout.Printer{Name: g.Name(), Paper: paper, AcrossScale: 1, FeedScale: 1, Margins: g.margins}
		err = p.Check()
	default:
		err = fmt.Errorf("no printer %q is kept that --pasted could be a part of\nhint: give --read and --margins with it",
			g.Name())
	}
	if err == nil && given("margins") && was != nil && !given("read") {
		replaces, p.Margins = p.Margins != g.margins, g.margins
		err = p.Check()
	}
	if err == nil && given("pasted") {
		replaces = replaces || p.Growth != layout.Growth{}
		p, err = p.Pasted(trueMM, g.pasted)
	}
	return p, replaces, job.WrongWords(err)
}

// rulesOf is the first of the usual papers whose rules a reading is within a hundredth of; empty for none.
func rulesOf(read layout.Size) string {
	for _, name := range []string{"A4", "letter", "A3", "A5", "legal", "tabloid", "13x19in", "A2"} {
		paper, err := layout.ParsePaper(name)
		if err != nil {
			panic(err) // a slip in this program, found by any test
		}
		is := gauge.Rules(paper)
		if math.Abs(read.WidthMM/is.WidthMM-1) < 0.01 && math.Abs(read.HeightMM/is.HeightMM-1) < 0.01 {
			return name
		}
	}
	return ""
}

// marginsMM reads four lengths, left, top, right and bottom; the unit of the last serves those without one.
func marginsMM(s string) (layout.Margins, error) {
	parts := strings.Split(s, ",")
	if len(parts) != 4 {
		return layout.Margins{}, fmt.Errorf("%q is not four margins\n"+
			"hint: write left, top, right and bottom, such as 4,4,4,12mm",
			s)
	}
	if last := parts[3]; strings.Trim(strings.TrimSpace(last), "0123456789.eE+-") == "" {
		return layout.Margins{}, fmt.Errorf("%q has no unit\n"+
			"hint: write it after the last, such as %smm", s, strings.TrimSpace(s))
	}
	mm, err := units.ParseLengths(s, len(parts))
	if err != nil {
		return layout.Margins{}, err
	}
	if least := min(mm[0], mm[1], mm[2], mm[3]); least < 0 {
		return layout.Margins{}, fmt.Errorf("%q has a margin below 0mm\nhint: write 0mm or more", s)
	}
	return layout.Margins{LeftMM: mm[0], TopMM: mm[1], RightMM: mm[2], BottomMM: mm[3]}, nil
}
