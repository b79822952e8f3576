package guide

import (
	"strings"

	"dropsheet/layout/report"
	"dropsheet/tile/pdf"
)

// set makes a text of the report fit to be set; what can't be printed becomes question marks.
func set(t report.Text) string {
	return t.Set(func(text string, isStrong bool) string {
		text, _ = pdf.Printed(text)
		if isStrong {
			return strong(text)
		}
		return text
	})
}

// amount sets a figure.
func amount(f report.Figure) string { return set(f.Text()) }

// told is what the report has to tell under some keys, a sentence each.
func (b *book) told(keys ...string) string {
	var facts []report.Fact
	for _, key := range keys {
		facts = append(facts, b.report.All(key)...)
	}
	return sentences(facts...)
}

// toldOf is what some facts tell under some keys.
func toldOf(facts []report.Fact, keys ...string) string {
	var some []report.Fact
	for _, key := range keys {
		for _, f := range facts {
			if f.Key == key {
				some = append(some, f)
			}
		}
	}
	return sentences(some...)
}

// sentences is facts, a sentence each.
func sentences(facts ...report.Fact) string {
	var all []string
	for _, f := range facts {
		all = append(all, set(f.Text.Sentence()))
	}
	return strings.Join(all, " ")
}

// phrase is the fact of a key for the midst of a sentence; empty where there is none.
func (b *book) phrase(key string) string {
	f, _ := b.report.Fact(key)
	return set(f.Text)
}

// toldTable sets a table of the report over the text's width.
func (b *book) toldTable(t report.Table) {
	typeset := typesetTable(t)
	for _, cells := range typeset.rows {
		for i, c := range cells {
			typeset.columns[i].widthMM = max(typeset.columns[i].widthMM, tableStyle.Width(c))
		}
	}
	b.table(typeset.stretched(b.geo.textWidth))
}

// typesetTable is a table of the report, its columns as wide as their heads; the plan's own row is marked as such.
func typesetTable(t report.Table) (typeset table) {
	for i, head := range t.Heads {
		typeset.columns = append(typeset.columns, column{head, i > 0, tableHead.Width(head)})
	}
	for _, row := range t.Rows {
		var cells []string
		for _, c := range row.Cells {
			cells = append(cells, set(c))
		}
		if row.Own {
			cells[0] += " (plan)"
		}
		typeset.rows = append(typeset.rows, cells)
	}
	return typeset
}
