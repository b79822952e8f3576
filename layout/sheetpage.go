package layout

// SheetPage is a sheet as it lies on its page: every rectangle is in page mm, at scale 1.
type SheetPage struct {
	Cell    Rect // what stays in sight once all is pasted
	Kept    Rect // what remains when the sheet is cut: its cell and laps
	Printed Rect // what carries picture: its cell and laps, and bleed past the cuts
	Used    Rect // all that it takes up: its cell, laps and strips
	// CutLeft and so on tell which sides are cut; the others carry a lap.
	CutLeft, CutTop, CutRight, CutBottom bool
	StripMM                              float64 // what a cut side keeps clear, from the cut line

	shift Point // from board to page
}

// OnPage is a sheet of the backdrop on its page.
func (b Backdrop) OnPage(s Sheet) SheetPage {
	p := SheetPage{shift: Point{s.OnPage.XMM - s.Cell.XMM, s.OnPage.YMM - s.Cell.YMM}}
	p.Cell, p.Kept = p.FromBoard(s.Cell), p.FromBoard(b.Kept(s))
	p.Printed, p.Used = p.FromBoard(b.Printed(s)), p.FromBoard(b.Used(s))
	p.CutLeft, p.CutTop, p.CutRight, p.CutBottom = b.Cut(s)
	p.StripMM = b.stripMM()
	return p
}

// FromBoard moves a rectangle from the board to the sheet's page.
func (p SheetPage) FromBoard(r Rect) Rect {
	r.XMM += p.shift.XMM
	r.YMM += p.shift.YMM
	return r
}

// ToBoard moves a rectangle from the sheet's page to the board.
func (p SheetPage) ToBoard(r Rect) Rect {
	r.XMM -= p.shift.XMM
	r.YMM -= p.shift.YMM
	return r
}
