package guide

import (
	"slices"
	"strings"

	"dropsheet/layout/report"
)

// set makes a text of the report fit to be set: figures keep their units on their line, and apostrophes and
// signs of multiplication are those of type.
func set(t report.Text) string {
	var all strings.Builder
	for i, p := range t {
		text := strings.ReplaceAll(p.Words, "'", "\u2019")
		switch {
		case p.Figure != nil:
			text = strings.ReplaceAll(p.Figure.String(), " ", noBreak)
			if after, negative := strings.CutPrefix(text, "-"); negative {
				text = "\u2013" + after
			}
		case p.Words == " x " && i > 0 && t[i-1].Figure != nil:
			text = noBreak + "\u00d7" + noBreak
		}
		if p.Strong {
			text = strong(text)
		}
		all.WriteString(text)
	}
	return all.String()
}

// sentence is a text as a sentence of its own.
func sentence(t report.Text) string {
	if len(t) > 0 && t[0].Figure == nil && !strings.HasPrefix(t[0].Words, "f/") { // a stop is written small
		t = slices.Clone(t)
		t[0].Words = title(t[0].Words)
	}
	return set(t) + "."
}

// told is what the report has to tell under some keys, a sentence each.
func (b *book) told(keys ...string) string {
	var sentences []string
	for _, key := range keys {
		if f, ok := b.report.Fact(key); ok {
			sentences = append(sentences, sentence(f.Text))
		}
	}
	return strings.Join(sentences, " ")
}

// toldTable sets a table of the report over the text's width, the plan's own row marked as such.
func (b *book) toldTable(t report.Table) {
	var typeset table
	for i, head := range t.Heads {
		typeset.columns = append(typeset.columns, column{head, i > 0, b.geo.textWidth/float64(len(t.Heads)) - 2*cellPadMM})
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
	b.table(typeset)
}
