package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/gauge"
	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf"
	"dropsheet/tile/printers"
)

var gaugeCommand = command{
	name: "gauge", args: "",
	summary: "a page to measure the printer with; keeps the reading",
	about:   gaugeAbout(),
	example: "dropsheet gauge --paper A4",
	prepare: func(flags *pflag.FlagSet) action {
		g := gauging{flags: flags}
		add(flags, &g.paper, "paper", "name|WxH", "A4", layout.ParsePaper, "what to print on: "+layout.PapersTaken)
		add(flags, &g.out, "out", "file", "", named, "file to write (default: gauge- and the paper)")
		flags.StringVar(&g.save, "save", "", "keep a reading under this `name`, for make --printer")
		add(flags, &g.read, "read", "WxH", "", sizeMM, "what the steel rule says between the end ticks: across, then "+
			"feed; such as 199.2x248.5mm")
		add(flags, &g.between, "between", "WxH", "", sizeMM, "true distances of the ticks that were read, when they are "+
			"not the end ticks; such as 180x240mm")
		add(flags, &g.margins, "margins", "L,T,R,B", "", marginsMM, "the frame's first whole line on the left, top, "+
			"right and bottom; such as 4,4,4,12mm, 0mm or more")
		flags.BoolVar(&g.list, "list", false, "tell the printers that are kept, and where")
		flags.BoolVar(&g.force, "force", false, "replace the file, or the printer of that name, if there is one")
		return g.run
	},
}

// gaugeAbout explains the command, with the rules' lengths on the usual papers.
func gaugeAbout() string {
	var lengths []string
	for _, name := range []string{"A3", "A4", "A5", "letter"} {
		paper, err := layout.ParsePaper(name)
		if err != nil {
			panic(err) // a slip in this program, found by any test
		}
		lengths = append(lengths, fmt.Sprintf("%s %s", paper.Name, acrossFeed(gauge.Rules(paper))))
	}
	return `Makes a page that shows how true the printer prints, how near the paper's edges it comes, and which
greys and lines it keeps apart. Print it as the sheets will be printed, measure its two rules, and
keep the reading:
  dropsheet gauge --save "study inkjet" --read 199.2x248.5mm --margins 4,4,4,12mm
The rules' true lengths, across x feed: ` + strings.Join(lengths, ", ") + `;
the page says those of any other paper. --list tells the readings that are kept, and in which file.`
}

func acrossFeed(s layout.Size) string { return fmt.Sprintf("%gx%gmm", s.WidthMM, s.HeightMM) }

// gauging is what the flags of gauge ask for.
type gauging struct {
	flags         *pflag.FlagSet
	paper         layout.Paper
	out, save     string
	read, between layout.Size
	margins       layout.Margins
	list, force   bool
}

func (g *gauging) run(_ context.Context, c console, args []string) error {
	if err := g.check(args); err != nil {
		return job.WrongWords(err)
	}
	switch {
	case g.list:
		return g.tellPrinters(c)
	case g.flags.Changed("save"):
		return g.keep(c)
	}
	return g.makePage(c)
}

// check refuses flags that don't go together.
func (g *gauging) check(args []string) error {
	if len(args) > 0 {
		return fmt.Errorf("gauge takes no artwork, and got %q: give flags only", args)
	}
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
	case g.list:
		return refuse("has no meaning with --list: give --list alone", "paper", "out", "save", "read", "between", "margins",
			"force")
	case given("save") && strings.TrimSpace(g.save) == noPrinter:
		return fmt.Errorf("a printer can't be named %q, which stands for one that was not measured: choose another name "+
			"with --save", noPrinter)
	case given("save"):
		if !given("read") || !given("margins") {
			return errors.New("--save keeps what was measured: give --read and --margins with it, such as --read " +
				"199.2x248.5mm --margins 4,4,4,12mm")
		}
		return refuse("names a page to write, and --save writes none: give one of them", "out")
	}
	return refuse("is a part of a reading: name the printer with --save", "read", "between", "margins")
}

// makePage writes the page and says what to do with it.
func (g *gauging) makePage(c console) error {
	path := g.out
	if path == "" {
		path = "gauge-" + g.paper.Name + ".pdf"
	}
	if err := namedAs(path, "a gauge page", ".pdf"); err != nil {
		return err
	}
	if err := place.WriteFile(path, g.force, func(w io.Writer) error { return gauge.Write(w, g.paper) }); err != nil {
		return err
	}
	text := fmt.Sprintf("written      a gauge page for %s to %s\n\n", g.paper.Name, path)
	for i, step := range gauge.Steps(g.paper) {
		text += fmt.Sprintf("%d  %s\n", i+1, step)
	}
	_, err := fmt.Fprintf(c.out, "%s\n  %s\n", text, gauge.SaveCommand(g.paper))
	return err
}

// keep stores the reading.
func (g *gauging) keep(c console) error {
	trueMM := gauge.Rules(g.paper)
	if g.flags.Changed("between") {
		if g.between.WidthMM > trueMM.WidthMM || g.between.HeightMM > trueMM.HeightMM {
			return job.WrongWords(fmt.Errorf("--between %s is longer than the rules on %s, %s: give the true distances of the "+
				"ticks that were read",
				acrossFeed(g.between), g.paper.Name, acrossFeed(trueMM)))
		}
		trueMM = g.between
	}
	p, err := layout.NewPrinter(strings.TrimSpace(g.save), g.paper, trueMM, g.read, g.margins)
	if err != nil {
		return job.WrongWords(err)
	}
	path, err := printers.Path()
	if err != nil {
		return err
	}
	if err := printers.Keep(path, p, g.force); err != nil {
		return err
	}
	c.warn(readingWarnings(p, gauge.DepthMM(g.paper))...)
	if printed, full := pdf.Printed(p.Name); !full {
		c.warn(fmt.Sprintf("the name %q can't be printed in full: guides show it as %q, and sheets don't carry it", p.Name,
			printed))
	}
	_, err = fmt.Fprintf(c.out, "kept         %s\nin           %s\n", report.Printer(p), path)
	return err
}

// tellPrinters lists what is kept.
func (g *gauging) tellPrinters(c console) error {
	path, err := printers.Path()
	if err != nil {
		return err
	}
	kept, err := printers.Read(path)
	if err != nil {
		return err
	}
	if len(kept) == 0 {
		_, err := fmt.Fprintf(c.out, "no printers are kept in %s: dropsheet gauge makes the page to measure one with\n", path)
		return err
	}
	text := fmt.Sprintf("kept in      %s\n", path)
	for _, p := range kept {
		text += report.Printer(p).String() + "\n"
	}
	_, err = io.WriteString(c.out, text)
	return err
}
