package main

import (
	"fmt"
	"io"
	"strings"

	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// factColumns are those before a fact's words: its name, and a mark where something should be done about it.
const factColumns = 13

// writeFacts writes what is told of a plan, a line each.
func writeFacts(w io.Writer, facts ...report.Fact) error {
	var b strings.Builder
	for _, f := range facts {
		mark := " "
		if f.Asks {
			mark = "!"
		}
		line := fmt.Sprintf("%-*s%s %s", factColumns-2, f.Name, mark, job.Printable(f.Text.String()))
		b.WriteString(folded(w, factColumns, line) + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// writeFact writes what is told under a name, in one line.
func writeFact(w io.Writer, name string, text any) error {
	_, err := fmt.Fprintln(w, folded(w, factColumns, fmt.Sprintf("%-*s%v", factColumns, name, text)))
	return err
}

// writeTable writes a table of the report under a heading, the plan's own row marked.
func writeTable(w io.Writer, heading string, t report.Table) error {
	var b strings.Builder
	const narrowest = 9
	wide := make([]int, len(t.Heads))
	for i := range wide {
		wide[i] = narrowest
		for _, r := range t.Rows {
			wide[i] = max(wide[i], len(r.Cells[i].String()))
		}
	}
	row := func(mark string, cells []string) {
		fmt.Fprintf(&b, "%s %-7s", mark, cells[0])
		for i, c := range cells[1:] {
			fmt.Fprintf(&b, " %*s", wide[i+1], c)
		}
		b.WriteString("\n")
	}
	fmt.Fprintf(&b, "\n%s\n", folded(w, 0, heading))
	row(" ", t.Heads)
	for _, r := range t.Rows {
		var cells []string
		for _, c := range r.Cells {
			cells = append(cells, c.String())
		}
		mark := " "
		if r.Own {
			mark = ">"
		}
		row(mark, cells)
	}
	_, err := io.WriteString(w, b.String())
	return err
}
