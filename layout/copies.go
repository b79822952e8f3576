package layout

import (
	"fmt"
	"math"
)

// mostCopies bounds the copies of a print on its sheet: more are slips of paper.
const mostCopies = 100

// holdsCopies is how many copies of a print one sheet holds, side by side and one above the other, each with the strips
// that it is cut by.
func (l paperLie) holdsCopies(print Size) (across, down int) {
	holds := func(liveMM, printMM float64) int {
		return int(min(mostCopies, math.Floor((liveMM+slack)/(printMM+2*StripMM))))
	}
	return holds(l.across.liveMM, print.WidthMM), holds(l.down.liveMM, print.HeightMM)
}

// checkCopies refuses a number of copies that can't be.
func (s Setup) checkCopies() error {
	if s.Copies < 0 || s.Copies > mostCopies {
		return fmt.Errorf("%d copies on a sheet can't be\nhint: take 1 to %d", s.Copies, mostCopies)
	}
	return nil
}

// copies is what a backdrop keeps of them: nothing of the print alone.
func (s Setup) copies() int {
	if s.Copies == 1 {
		return 0
	}
	return s.Copies
}

// tooManyCopies is the error of a print of which no sheet holds so many.
func (s Setup) tooManyCopies(board Size) error {
	most := 0
	lies, err := s.lies()
	if err != nil {
		return err
	}
	for _, l := range lies {
		across, down := l.holdsCopies(board)
		most = max(most, across*down)
	}
	holds := fmt.Sprintf("a sheet of %s holds %d", s.Paper.Name, most)
	if most == 0 {
		holds = "it does not go on one sheet of " + s.Paper.Name
	}
	return fmt.Errorf("%d copies of a backdrop of %.0fx%.0fmm were asked for on one sheet, and %s\n"+
		"hint: ask for fewer, a smaller print or larger paper, or with --max-sheets 1 for the largest print of which so "+
		"many go on it", s.Copies,
		board.WidthMM, board.HeightMM, holds)
}

// OnSheet are a sheet's copies, each where it lies on the page: the sheet itself where it carries no others.
func (b Backdrop) OnSheet(s Sheet) []Sheet {
	if b.Copies <= 1 {
		return []Sheet{s}
	}
	used, columns := b.Used(s), b.copyColumns(s)
	copies := make([]Sheet, b.Copies)
	for i := range copies {
		copies[i] = s
		copies[i].OnPage.XMM += float64(i%columns) * used.WidthMM
		copies[i].OnPage.YMM += float64(i/columns) * used.HeightMM
	}
	return copies
}

// copyColumns is how many copies lie side by side: as few as let the page hold all.
func (b Backdrop) copyColumns(s Sheet) int {
	down := max(1, int((b.live().HeightMM+slack)/b.Used(s).HeightMM))
	return (b.Copies + down - 1) / down
}

// copiesSize is what all of a sheet's copies take up on its page.
func (b Backdrop) copiesSize(s Sheet) Size {
	used := b.Used(s)
	if b.Copies <= 1 {
		return Size{used.WidthMM, used.HeightMM}
	}
	columns := b.copyColumns(s)
	rows := (b.Copies + columns - 1) / columns
	return Size{float64(columns) * used.WidthMM, float64(rows) * used.HeightMM}
}
