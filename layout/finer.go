package layout

import (
	"cmp"
	"fmt"
	"slices"

	"dropsheet/flip"
)

// WithCells is the plan with its backdrop cut into that many columns and rows, even, which must be able to show it.
func (p Plan) WithCells(columns, rows int) (Plan, error) {
	b := p.Backdrop
	l := b.lie()
	b.Uncut = columns == 1 && rows == 1 && l.holdsUncut(Size{b.WidthMM, b.HeightMM})
	if least, most := l.across.sheets(b.WidthMM), l.down.sheets(b.HeightMM); !b.Uncut && (columns < least || rows < most) {
		return Plan{}, fmt.Errorf("%d columns and %d rows do not show a backdrop of %.0fx%.0fmm\n"+
			"hint: take at least %d and %d",
			columns, rows, b.WidthMM, b.HeightMM, least, most)
	}
	if narrowest := min(b.WidthMM/float64(columns), b.HeightMM/float64(rows)); narrowest < minCellMM {
		return Plan{}, fmt.Errorf("%d columns and %d rows leave cells of %.1fmm, under the %gmm that can be cut and pasted\n"+
			"hint: take fewer", columns, rows, narrowest, minCellMM)
	}
	b.Columns, b.Rows = columns, rows
	p.Backdrop, p.Sheets = b.cutEven(p.region(Size{b.WidthMM, b.HeightMM}))
	p.Seams = p.Backdrop.seams(p.Sheets)
	return p, nil
}

// Finer are the plans of the same backdrop that take more sheets, up to that many more, those with the fewest first.
func (p Plan) Finer(more int) (finer []Plan) {
	b := p.Backdrop
	const mostMore = 12 // columns or rows more than that are slivers
	for columns := b.Columns; columns <= b.Columns+mostMore; columns++ {
		for rows := b.Rows; rows <= b.Rows+mostMore; rows++ {
			q, err := p.WithCells(columns, rows)
			if err == nil && len(q.Sheets) > len(p.Sheets) && len(q.Sheets) <= len(p.Sheets)+more {
				finer = append(finer, q)
			}
		}
	}
	slices.SortStableFunc(finer, func(a, b Plan) int { return cmp.Compare(len(a.Sheets), len(b.Sheets)) })
	return finer
}

// middleFill is the fill within which the drop shows the middle of the picture, largest and least bent (common
// practice, no source).
const middleFill = 0.1

// Middle is what the drop shows of the board in its middle, as a circle.
func (p Plan) Middle() (c Circle, ok bool) {
	radiusMM, ok := p.Sight().ReachMM(middleFill)
	return Circle{Point{p.Backdrop.WidthMM / 2, p.Backdrop.HeightMM / 2}, radiusMM}, ok && radiusMM > 0
}

// Clear tells whether no seam of a plan crosses a circle, or could be put so that none does.
func (p Plan) Clear(c Circle) (is, canBe bool) {
	if p.crosses(c) {
		placed, err := p.WithSeams(NoSeamCosts(p.Backdrop), []Circle{c})
		return false, err == nil && !placed.Plan.crosses(c)
	}
	return true, true
}

// hardlyCrossedMM is a length of seam in a place to be avoided that no one finds.
const hardlyCrossedMM = 0.1

func (p Plan) crosses(c Circle) bool { return p.CrossingMM(c) >= hardlyCrossedMM }

// ClearedBy is the plan with the fewest more sheets, up to so many, whose seams can keep clear of a circle. ok is false
// where there is none.
func (p Plan) ClearedBy(c Circle, more int) (cleared Plan, ok bool) {
	for _, finer := range p.Finer(more) {
		if _, ok := finer.Clear(c); ok {
			return finer, true
		}
	}
	return Plan{}, false
}

// ClearedByTurning is how the paper lies the other way, if on as many sheets seams can then keep clear of a circle.
// ok is false where they can't.
func (p Plan) ClearedByTurning(c Circle) (other Orientation, ok bool) {
	other = Portrait
	if p.Backdrop.Orientation == Portrait {
		other = Landscape
	}
	n := len(p.Sheets)
	p.Backdrop.Orientation = other
	for columns := 1; columns <= n; columns++ {
		if n%columns != 0 {
			continue
		}
		if turned, err := p.WithCells(columns, n/columns); err == nil && len(turned.Sheets) == n {
			if _, ok := turned.Clear(c); ok {
				return other, true
			}
		}
	}
	return other, false
}

// Choice is how wide the picture may be printed on so many sheets.
type Choice struct {
	Sheets      int         `json:"sheets"`
	WidthMM     float64     `json:"width_mm"`
	Orientation Orientation `json:"orientation"`
}

// mostChosenSheets bounds the plans whose choices are looked for: beyond, one sheet more or less is nothing.
const mostChosenSheets = 400

// Choices are the largest prints that some numbers of sheets near the plan's own hold: its own or the next above it,
// one below and two above. The paper may lie either way. There are none where not the picture alone takes the sheets.
func (p Plan) Choices() (near []Choice) {
	b, n := p.Backdrop, len(p.Sheets)
	if !p.Picture.Plain() || p.Sight().Drop.Oblate() || p.Drop.Body != flip.Ball || n > mostChosenSheets ||
		b.Board() != p.PictureOnBoard() {
		return nil
	}
	proportions := p.Picture.WidthMM / p.Picture.HeightMM
	var all []Choice
	own := 0 // the first that is no smaller than the plan's own
	for sheets := 1; len(all) < own+3 && sheets <= 2*n+6; sheets++ {
		best := Choice{Sheets: sheets}
		for _, o := range []Orientation{Portrait, Landscape} {
			b.Orientation = o
			if w := b.lie().largest(proportions, sheets) * proportions; w > best.WidthMM+slack {
				best.WidthMM, best.Orientation = w, o
			}
		}
		if len(all) > 0 && best.WidthMM <= all[len(all)-1].WidthMM+slack {
			continue // more sheets, and no larger print
		}
		if all = append(all, best); best.WidthMM < p.Picture.WidthMM-slack {
			own = len(all)
		}
	}
	from := min(max(0, own-1), max(0, len(all)-1))
	return all[from:]
}
