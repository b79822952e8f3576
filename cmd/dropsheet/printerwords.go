package main

import (
	"fmt"
	"math"
	"strings"

	"dropsheet/layout"
	"dropsheet/layout/report"
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
