package layout

// onPage is where a sheet's cell lies on its page, at scale 1.
func (b Backdrop) onPage(s Sheet) Point {
	if b.Uncut {
		return b.onPaper(Size{s.Cell.WidthMM, s.Cell.HeightMM})
	}
	used, all, middle := b.Used(s), b.copiesSize(s), b.middle()
	return Point{
		(2*middle.XMM-all.WidthMM)/2 + s.Cell.XMM - used.XMM,
		(2*middle.YMM-all.HeightMM)/2 + s.Cell.YMM - used.YMM,
	}
}

// onPaper is where on its page a print that is not cut lies, at scale 1: in the paper's middle, so that the sheet
// can be hung by its edges, and off it only as far as the printer's margins ask.
func (b Backdrop) onPaper(print Size) Point {
	page, live, about, scale := b.Page(), b.live(), b.middle(), b.Correction()
	along := func(pageMM, printMM, liveMM, aboutMM, drawn float64) float64 {
		paperMM := aboutMM + (pageMM/2-aboutMM)/drawn // the paper's middle, before the page is drawn to another scale
		from := paperMM - printMM/2
		return max(aboutMM-liveMM/2, min(from, aboutMM+liveMM/2-printMM))
	}
	return Point{along(page.WidthMM, print.WidthMM, live.WidthMM, about.XMM, scale.X),
		along(page.HeightMM, print.HeightMM, live.HeightMM, about.YMM, scale.Y)}
}

// PaperOnBoard is the paper of an uncut sheet, of which all is seen: its print and the white round it. Board
// coordinates; what a printer's scale is off shifts its edges by less than a millimetre.
func (b Backdrop) PaperOnBoard(s Sheet) Rect {
	page := b.Page()
	return Rect{s.Cell.XMM - s.OnPage.XMM, s.Cell.YMM - s.OnPage.YMM, page.WidthMM, page.HeightMM}
}

// Reached is what the printer reaches of a page, at scale 1.
func (b Backdrop) Reached() Rect {
	live, middle := b.live(), b.middle()
	return Rect{middle.XMM - live.WidthMM/2, middle.YMM - live.HeightMM/2, live.WidthMM, live.HeightMM}
}
