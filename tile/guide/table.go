package guide

import (
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/pdf"
)

// column is one column of a table.
type column struct {
	head    string
	number  bool // set flush right
	widthMM float64
}

// table is a list set in as many panels side by side as the page holds, read down each panel in turn.
type table struct {
	columns    []column
	rows       [][]string
	gapMM      float64 // between panels
	wide       bool    // over the whole width of the page, not only the text column
	boldColumn int     // a column's number, to set it in bold; 0 for none
}

// cellPadMM is the space on either side of what a cell holds.
const cellPadMM = 1.0

func (t table) widthMM() float64 {
	sum := 0.0
	for _, c := range t.columns {
		sum += c.widthMM + 2*cellPadMM
	}
	return sum
}

// stretched widens every column alike, so that the panels end where the page's other lines end.
func (t table) stretched(widthMM float64) table {
	more := (widthMM - t.widthMM()) / float64(len(t.columns))
	t.columns = slices.Clone(t.columns)
	for i := range t.columns {
		t.columns[i].widthMM += more
	}
	return t
}

// table sets a table, over as many pages as it takes, its heading repeated over every panel.
func (b *book) table(t table) {
	g := b.geo
	x, w := g.textX, g.textWidth
	if t.wide {
		x, w = g.left, g.fullMM()
		b.y = max(b.y, b.floor)
	}
	panels := max(1, int((w+t.gapMM)/(t.widthMM()+t.gapMM)))
	if panels > 1 {
		t = t.stretched((w - t.gapMM*float64(panels-1)) / float64(panels))
	}
	row := tableStyle.LeadMM
	rows := t.rows
	for len(rows) > 0 {
		b.need(row * float64(1+min(4, len(rows))))
		holds := max(1, int(b.room()/row)-1)
		each := min(holds, (len(rows)+panels-1)/panels)
		y := b.y
		for panel := 0; panel < panels && len(rows) > 0; panel++ {
			n := min(each, len(rows))
			b.panel(t, x+float64(panel)*(t.widthMM()+t.gapMM), y, rows[:n])
			rows = rows[n:]
		}
		b.y = y + row*float64(1+each)
		if len(rows) > 0 {
			b.newPage()
		}
	}
	b.y += paraGapMM
	b.floor = max(b.floor, b.y)
}

// panel sets one panel of a table.
func (b *book) panel(t table, x, y float64, rows [][]string) {
	row := tableStyle.LeadMM
	heads := make([]string, len(t.columns))
	for i, c := range t.columns {
		heads[i] = c.head
	}
	b.row(t, tableHead, x, y, heads)
	b.Line(x, y+row, x+t.widthMM(), y+row, mark)
	for i, cells := range rows {
		top := y + row*float64(i+1)
		if i%2 == 1 {
			b.Fill(layout.Rect{XMM: x, YMM: top, WidthMM: t.widthMM(), HeightMM: row}, tint)
		}
		b.row(t, tableStyle, x, top, cells)
	}
	end := y + row*float64(len(rows)+1)
	b.Line(x, end, x+t.widthMM(), end, thin)
}

// row sets one row of a panel.
func (b *book) row(t table, s pdf.Style, x, y float64, cells []string) {
	for i, c := range t.columns {
		set := s
		if i > 0 && i == t.boldColumn {
			set = s.Bold()
		}
		if c.number {
			b.PutRight(set, x+cellPadMM+c.widthMM, set.Base(y), cells[i])
		} else {
			b.Put(set, x+cellPadMM, set.Base(y), cells[i])
		}
		x += c.widthMM + 2*cellPadMM
	}
}
