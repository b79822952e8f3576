package main

import (
	"fmt"
	"math"

	"dropsheet/layout"
	"dropsheet/layout/report"
)

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
