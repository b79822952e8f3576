package main

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/layout"
	"dropsheet/tile/job"
)

// doubtful is how far from 1 both of a printer's scales may be before fit to page is to be suspected: it
// shrinks A4 by some 3 % to keep margins of 4 mm, and printers by themselves err by a few parts in a thousand
// (common practice, no source).
const doubtful = 0.015

// marginsMM reads four lengths, left, top, right and bottom; the unit of the last serves those without one.
func marginsMM(s string) (layout.Margins, error) {
	parts := strings.Split(s, ",")
	if len(parts) != 4 {
		return layout.Margins{}, fmt.Errorf("%q is not four margins: write left, top, right and bottom, such as 4,4,4,12mm",
			s)
	}
	unit := strings.TrimLeft(strings.TrimSpace(parts[3]), "0123456789.eE+- ")
	if unit == "" {
		return layout.Margins{}, fmt.Errorf("%q has no unit: write it after the last, such as %smm", s, strings.TrimSpace(s))
	}
	var mm [4]float64
	for i, part := range parts {
		part = strings.TrimSpace(part)
		if part != "" && strings.Trim(part, "0123456789.eE+-") == "" {
			part += unit
		}
		var err error
		if mm[i], err = zeroOrMore(part); err != nil {
			return layout.Margins{}, err
		}
	}
	return layout.Margins{LeftMM: mm[0], TopMM: mm[1], RightMM: mm[2], BottomMM: mm[3]}, nil
}

// describePrinter tells a printer in a line.
func describePrinter(p layout.Printer) string {
	m := p.Margins
	return fmt.Sprintf("%q on %s: across %s, feed %s; margins left %g, top %g, right %g, bottom %g mm",
		p.Name, p.Paper.Name, percentOff(p.AcrossScale), percentOff(p.FeedScale), m.LeftMM, m.TopMM, m.RightMM, m.BottomMM)
}

// marginText tells the margins of the sheets: one for all edges, or those of the printer that they are drawn for.
func marginText(b layout.Backdrop) string {
	if b.Printer == nil {
		return fmt.Sprintf("margin %g mm", b.MarginMM)
	}
	return "margins as measured"
}

// printerLines tell which printer the sheets are drawn for: a name with each line.
func printerLines(b layout.Backdrop) [][2]string {
	if b.Printer == nil {
		return nil
	}
	return [][2]string{{"printer", describePrinter(*b.Printer) + "; the sheets make up for it"}}
}

// sameSizeMM is how close two papers must be to pass for one.
const sameSizeMM = 0.5

// printerWarnings tell when sheets go on other paper than their printer was measured on.
func printerWarnings(b layout.Backdrop) []string {
	if b.Printer == nil || math.Max(math.Abs(b.Printer.Paper.WidthMM-b.Paper.WidthMM),
		math.Abs(b.Printer.Paper.HeightMM-b.Paper.HeightMM)) <= sameSizeMM {
		return nil
	}
	return []string{fmt.Sprintf("printer %q was measured on %s, and the sheets are %s: its feed and margins may be "+
		"others there; measure it on that paper too, with dropsheet gauge --paper",
		b.Printer.Name, b.Printer.Paper.Name, job.Printable(b.Paper.Name))}
}

// percentOff tells a scale as what is too much or too little.
func percentOff(scale float64) string {
	off := math.Round(1e4*(scale-1)) / 100
	switch {
	case off == 0:
		return "true"
	case off < 0:
		return fmt.Sprintf("%.2f %% short", -off)
	}
	return fmt.Sprintf("%.2f %% long", off)
}

// readingWarnings tell what is odd about a reading that is not refused, off a page whose frame goes so deep.
func readingWarnings(p layout.Printer, frameMM float64) (warnings []string) {
	if a, f := p.AcrossScale-1, p.FeedScale-1; a*f > 0 && math.Min(math.Abs(a), math.Abs(f)) > doubtful {
		warnings = append(warnings, fmt.Sprintf("across comes out %s and feed %s, more than a printer's own error: was "+
			"fit to page left on? If so, print the page at 100 %% and measure again",
			percentOff(p.AcrossScale), percentOff(p.FeedScale)))
	}
	m := p.Margins
	if most := max(m.LeftMM, m.TopMM, m.RightMM, m.BottomMM); most > frameMM {
		warnings = append(warnings, fmt.Sprintf("a margin of %g mm is more than the page's frame shows, %g mm: was it "+
			"measured?", most, frameMM))
	}
	return warnings
}
