package layout

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"unicode"
)

// Printer is a printer as its gauge page was measured. It is told of the upright page: across runs along the
// paper's shorter side, feed along its longer side, the way that paper runs through a desk printer.
//
// A landscape page is the same sheet, turned by a quarter turn: its width runs along the sheet's feed. Which
// way it is turned is the driver's affair: printing systems take it anticlockwise (RFC 8011, 5.2.10,
// orientation-requested 4), and PPD files have LandscapeOrientation Plus90 and Minus90. So a landscape page
// keeps the larger of two opposite margins on both sides, and is right either way; that costs it a few
// millimetres of paper.
type Printer struct {
	Name  string `json:"name"`
	Paper Paper  `json:"paper"` // what it was measured on
	// AcrossScale and FeedScale are what the printer makes of one: 0.996 where 200 mm come out as 199.2 mm.
	AcrossScale float64 `json:"across_scale"`
	FeedScale   float64 `json:"feed_scale"`
	// Margins are what it can't reach along each side of the upright page, in mm of the page as it is drawn:
	// the gauge's lines carry the numbers of the page, so that no scale enters.
	Margins Margins `json:"margins_mm"`
	// Growth is what pasting makes of its paper.
	Growth Growth `json:"pasted,omitzero"`
}

// Margins are Sides of an upright page, in mm, as a file holds them.
type Margins struct {
	LeftMM   float64 `json:"left"`
	TopMM    float64 `json:"top"`
	RightMM  float64 `json:"right"`
	BottomMM float64 `json:"bottom"`
}

// How far from 1 a scale may be, as a share: printers err by a few parts in a thousand, and borderless printing
// enlarges by 2 to 3 % (common practice, no source). A reading that is further off is another paper's, or of a page
// made to fit. A printer that is kept, or in a job's file, may have been read when twice that was taken.
const (
	mostReadOff = 0.05
	mostOff     = 0.1
)

// maxPrinterName is the most letters of a printer's name.
const maxPrinterName = 80

// NewPrinter makes a printer of a reading: what was measured between two ticks of each of the gauge's rules,
// and the true lengths between them, both across x feed in mm. A reading more than a twentieth off, and margins
// that leave nothing to print on, are errors.
func NewPrinter(name string, paper Paper, trueMM, read Size, m Margins) (Printer, error) {
	p := Printer{Name: name, Paper: paper, AcrossScale: read.WidthMM / trueMM.WidthMM,
		FeedScale: read.HeightMM / trueMM.HeightMM, Margins: m}
	for _, d := range []struct {
		way          string
		trueMM, read float64
		scale, other float64 // other: when across and feed were read the wrong way round
	}{
		{"across", trueMM.WidthMM, read.WidthMM, p.AcrossScale, read.HeightMM / trueMM.WidthMM},
		{"feed", trueMM.HeightMM, read.HeightMM, p.FeedScale, read.WidthMM / trueMM.HeightMM},
	} {
		if plausible(d.scale, mostReadOff) {
			continue
		}
		ask := fmt.Sprintf("was the page made for other paper than %s (--paper), or printed with scale to fit left on? "+
			"Print it again at 100 %% and measure again", paper.Name)
		if plausible(d.other, mostReadOff) {
			ask = "were the two rules taken for each other? Across comes first, then feed"
		}
		return Printer{}, fmt.Errorf("%gmm read %s, where %gmm were drawn, is off by %.0f %%, and no printer errs by "+
			"more than %.0f %%\nhint: %s",
			d.read, d.way, d.trueMM, 100*math.Abs(d.scale-1), 100*mostReadOff, ask)
	}
	return p, p.Check()
}

// plausible tells whether a printer may come out at such a scale.
func plausible(scale, most float64) bool { return math.Abs(scale-1) <= most+slack } // false for NaN

// Check tells why a printer can't be used: a name that can't be printed, a scale more than a tenth off, a
// margin below zero, or margins that leave no room for the least cell on the paper that it was measured on.
func (p Printer) Check() error {
	switch name := p.Name; {
	case strings.TrimSpace(name) == "":
		return errors.New("a printer needs a name\nhint: take one such as study inkjet")
	case name != strings.TrimSpace(name) || strings.ContainsFunc(name, func(r rune) bool { return !unicode.IsPrint(r) }):
		return fmt.Errorf("printer name %q has blanks at its ends or letters that can't be printed\n"+
			"hint: take plain words", name)
	case len([]rune(name)) > maxPrinterName:
		return fmt.Errorf("a printer name of %d letters is too long\n"+
			"hint: take at most %d", len([]rune(name)), maxPrinterName)
	}
	for _, scale := range []float64{p.AcrossScale, p.FeedScale} {
		if !plausible(scale, mostOff) {
			return fmt.Errorf("printer %q: a scale of %g can't be, it must lie within %.0f %% of 1\nhint: measure the gauge "+
				"page again", p.Name, scale, 100*mostOff)
		}
	}
	if err := p.Growth.check(); err != nil {
		return fmt.Errorf("printer %q: %w", p.Name, err)
	}
	for _, mm := range []float64{p.Margins.LeftMM, p.Margins.TopMM, p.Margins.RightMM, p.Margins.BottomMM} {
		if !(mm >= 0 && mm <= maxPaperMM) {
			return fmt.Errorf("printer %q: a margin of %gmm can't be: it must be 0mm or more", p.Name, mm)
		}
	}
	if strings.ContainsFunc(p.Paper.Name, func(r rune) bool { return !unicode.IsPrint(r) }) {
		return fmt.Errorf("printer %q: its paper's name %q has letters that can't be printed", p.Name, p.Paper.Name)
	}
	if !(p.Paper.WidthMM > 0 && p.Paper.HeightMM >= p.Paper.WidthMM && p.Paper.HeightMM <= maxPaperMM) {
		return fmt.Errorf("printer %q: a paper of %gx%gmm can't be: the width must be the shorter side", p.Name,
			p.Paper.WidthMM, p.Paper.HeightMM)
	}
	if live := p.Live(p.Paper, Portrait); !(min(live.WidthMM, live.HeightMM) > 0) {
		return fmt.Errorf("printer %q: margins of %g, %g, %g and %gmm leave nothing of %s to print on\nhint: give them as "+
			"left, top, right, bottom",
			p.Name, p.Margins.LeftMM, p.Margins.TopMM, p.Margins.RightMM, p.Margins.BottomMM, p.Paper.Name)
	}
	return nil
}

// Scale is what printer and paste make of one along a page's x and y, for a page that lies so. From lengths as drawn
// to lengths on the board: pasted = drawn * scale. So a page is drawn at 1 / scale, and what comes out is true once it
// is pasted: see Correction.
func (p Printer) Scale(o Orientation) (x, y float64) {
	x, y = p.Grown(o)
	if o == Landscape {
		return x * p.FeedScale, y * p.AcrossScale
	}
	return x * p.AcrossScale, y * p.FeedScale
}

// PageMargins are the margins of a page that lies so, in mm of the page as drawn. On a landscape page they
// hold whichever way it is turned.
func (p Printer) PageMargins(o Orientation) Sides {
	m := p.Margins
	if o == Landscape {
		ends, flanks := max(m.TopMM, m.BottomMM), max(m.LeftMM, m.RightMM)
		return Sides{LeftMM: ends, TopMM: flanks, RightMM: ends, BottomMM: flanks}
	}
	return Sides(m)
}

// Live is the part of a page that the printer reaches, in mm of the page as drawn. On paper it measures its
// sides times Scale: so much of the board a sheet can hold, and about its middle the sheet may be drawn at 1
// / Scale without meeting a margin.
func (p Printer) Live(paper Paper, o Orientation) Rect {
	page, m := Backdrop{Paper: paper, Orientation: o}.Page(), p.PageMargins(o)
	return Rect{m.LeftMM, m.TopMM, page.WidthMM - m.LeftMM - m.RightMM, page.HeightMM - m.TopMM - m.BottomMM}
}
