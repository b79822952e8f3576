package layout

import "fmt"

// Growth is what pasting makes of the printer's paper, once it is dry: 1.003 where 100 mm on the sheet as printed come
// to 100.3 mm on the board. Paper that takes up water grows, more across its grain than along it: some 0.3 %
// (common practice, no source). The zero value is of paper that was not measured.
type Growth struct {
	Across float64 `json:"across,omitempty"`
	Feed   float64 `json:"feed,omitempty"`
}

// mostGrowth is how far from 1 a growth may be: ten times what is usual, and what a slip in the reading passes.
const mostGrowth = 0.03

// Pasted is the printer with the growth of its paper: what was measured, on the board, between two ticks of each of
// the gauge's rules once the page was pasted and dry, and the true lengths between them, both across x feed in mm.
func (p Printer) Pasted(trueMM, read Size) (Printer, error) {
	p.Growth = Growth{read.WidthMM / (trueMM.WidthMM * p.AcrossScale), read.HeightMM / (trueMM.HeightMM * p.FeedScale)}
	return p, p.Check()
}

// check refuses what no paper does.
func (g Growth) check() error {
	if g == (Growth{}) {
		return nil
	}
	for _, v := range []float64{g.Across, g.Feed} {
		if !(v >= 1-mostGrowth-slack && v <= 1+mostGrowth+slack) {
			return fmt.Errorf("paper that comes to %.4g of its length when it is pasted can't be, it must lie within %.0f %% "+
				"of 1\nhint: measure the pasted page between the same ticks as before, across first, then feed", v, 100*mostGrowth)
		}
	}
	return nil
}

// Grown is what pasting makes of one along a page's x and y, for a page that lies so; 1 of paper that was not measured.
func (p *Printer) Grown(o Orientation) (x, y float64) {
	if p == nil || p.Growth == (Growth{}) {
		return 1, 1
	}
	if o == Landscape {
		return p.Growth.Feed, p.Growth.Across
	}
	return p.Growth.Across, p.Growth.Feed
}
