package guide

import (
	"slices"
	"strings"

	"dropsheet/layout/report"
	"dropsheet/tile/pdf"
)

// set makes a text of the report fit to be set: figures keep their units on their line, apostrophes and signs of
// multiplication are those of type, and what can't be printed is a question mark.
func set(t report.Text) string {
	var all strings.Builder
	for i, p := range t {
		text, _ := pdf.Printed(strings.ReplaceAll(p.Words, "'", "\u2019"))
		switch {
		case p.Figure != nil:
			text = amount(*p.Figure)
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

// amount sets a figure: number and unit on one line.
func amount(f report.Figure) string {
	text := strings.ReplaceAll(f.String(), " ", noBreak)
	if after, negative := strings.CutPrefix(text, "-"); negative {
		return "\u2013" + after
	}
	return text
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
		all = append(all, sentence(f.Text))
	}
	return strings.Join(all, " ")
}

// phrase is the fact of a key for the midst of a sentence; empty where there is none.
func (b *book) phrase(key string) string {
	f, _ := b.report.Fact(key)
	return set(f.Text)
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
