package main

import (
	"context"
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
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
	summary: "measure the printer, and keep the reading",
	about:   gaugeAbout(),
	example: "dropsheet gauge --paper A4",
	prepare: func(flags *pflag.FlagSet) action {
		var asked ask.Gauge
		asked.Register(flags)
		return func(ctx context.Context, c console, args []string) error { return measure(ctx, c, &asked, args) }
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
		lengths = append(lengths, fmt.Sprintf("%-7s %s", paper.Name, acrossFeed(gauge.Rules(paper))))
	}
	return `Makes a page that shows how true the printer prints, how near the paper's edges
it comes, and which greys and lines it keeps apart. Print it as the sheets will
be printed, measure its two rules, and keep the reading:
  dropsheet gauge --save study --read 199.2x248.5mm --margins 4,4,4,12mm
The rules' true lengths, across x feed:
  ` + strings.Join(lengths, "\n  ") + `
The page says those of any other paper. --list tells which readings are kept,
and in which file; --forget drops one. Paper that is pasted wet grows, more
across its grain than along it: --pasted takes what the rules measure on a page
that is pasted and dry, and sheets make up for that.`
}

func acrossFeed(s layout.Size) string { return fmt.Sprintf("%gx%gmm", s.WidthMM, s.HeightMM) }

// measure does one of the things that gauge is for.
func measure(ctx context.Context, c console, g *ask.Gauge, args []string) error {
	if len(args) > 0 {
		return job.WrongWords(fmt.Errorf("gauge takes no artwork, and got %q\nhint: give flags only", args))
	}
	if err := g.Check(); err != nil {
		return err
	}
	switch {
	case g.List:
		return tellPrinters(c)
	case g.Forget != "":
		return forgetPrinter(ctx, c, g.Forget)
	case g.Keeps():
		return keepReading(ctx, c, g)
	}
	return writeGauge(c, g)
}

// writeGauge writes the page and says what to do with it.
func writeGauge(c console, g *ask.Gauge) error {
	path := g.Out
	if path == "" {
		path = "gauge-" + g.Paper.Name + ".pdf"
	}
	if err := namedAs(path, "a gauge page", ".pdf"); err != nil {
		return err
	}
	if err := place.WriteFile(path, g.Force, func(w io.Writer) error { return gauge.Write(w, g.Paper) }); err != nil {
		return err
	}
	text := fmt.Sprintf("written      a gauge page for %s to %s\n\n", g.Paper.Name, path)
	for i, step := range gauge.Steps(g.Paper) {
		text += fmt.Sprintf("%d  %s\n", i+1, step)
	}
	_, err := fmt.Fprintf(c.out, "%s\n  %s\n\n%s\n  %s\n", text, gauge.SaveCommand(g.Paper), "Paper that is pasted wet "+
		"grows. Paste two such pages as you will paste the sheets, measure their\nrules when they are dry, and add the mean:",
		gauge.PastedCommand(g.Paper))
	return err
}

// keepReading keeps the reading.
func keepReading(ctx context.Context, c console, g *ask.Gauge) error {
	path, err := printers.Path()
	if err != nil {
		return err
	}
	p, err := printers.Keep(ctx, path, g.Name(), g.Force, g.Printer)
	if err != nil {
		return err
	}
	c.warn(readingWarnings(p, gauge.DepthMM(p.Paper))...)
	if printed, full := pdf.Printed(p.Name); !full {
		c.warn(fmt.Sprintf("the name %q can't be printed in full: guides show it as %q, and sheets don't carry it", p.Name,
			printed))
	}
	_, err = fmt.Fprintf(c.out, "kept         %s\nin           %s\n", report.Printer(p), path)
	return err
}

// forgetPrinter forgets a printer that is kept.
func forgetPrinter(ctx context.Context, c console, name string) error {
	path, err := printers.Path()
	if err != nil {
		return err
	}
	if err := printers.Forget(ctx, path, strings.TrimSpace(name)); err != nil {
		return err
	}
	_, err = fmt.Fprintf(c.out, "forgotten    %q\nin           %s\n", strings.TrimSpace(name), path)
	return err
}

// tellPrinters lists what is kept.
func tellPrinters(c console) error {
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

// doubtful is how far from 1 both of a printer's scales may be before fit to page is to be suspected: it
// shrinks A4 by some 3 % to keep margins of 4 mm, and printers by themselves err by a few parts in a thousand
// (common practice, no source).
const doubtful = 0.015

// readingWarnings tell what is odd about a reading that is not refused, off a page whose frame goes so deep.
func readingWarnings(p layout.Printer, frameMM float64) (warnings []string) {
	if a, f := p.AcrossScale-1, p.FeedScale-1; a*f > 0 && math.Min(math.Abs(a), math.Abs(f)) > doubtful {
		warnings = append(warnings, fmt.Sprintf("across comes out %s and feed %s, more than a printer's own error: was "+
			"fit to page left on? If so, print the page at 100 %% and measure again",
			report.PercentOff(p.AcrossScale), report.PercentOff(p.FeedScale)))
	}
	m := p.Margins
	if most := max(m.LeftMM, m.TopMM, m.RightMM, m.BottomMM); most > frameMM {
		warnings = append(warnings, fmt.Sprintf("a margin of %g mm is more than the page's frame shows, %g mm: was it "+
			"measured?", most, frameMM))
	}
	return warnings
}
