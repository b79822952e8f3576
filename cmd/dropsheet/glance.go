package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// writeGlance writes a plan in a few lines, those that ask for something marked.
func writeGlance(w io.Writer, lines []report.GlanceLine) error {
	var b strings.Builder
	for _, l := range lines {
		mark := " "
		if l.Asks {
			mark = "!"
		}
		if fmt.Fprintf(&b, "%-*s", report.GlanceGroupColumns, l.Group); l.Name != "" {
			fmt.Fprintf(&b, "%-*s", report.GlanceNameColumns, mark+" "+l.Name)
		}
		b.WriteString(job.Printable(l.Text.String()) + "\n")
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// shortened keeps of a plan at a glance some groups, and the checks that ask for something.
func shortened(lines []report.GlanceLine, groups ...string) (kept []report.GlanceLine) {
	group, heads := "", map[string]bool{}
	for _, l := range lines {
		if l.Group != "" {
			group = l.Group
		}
		if !slices.Contains(groups, group) || l.Name != "" && !l.Asks {
			continue
		}
		if l.Group = ""; !heads[group] {
			l.Group, heads[group] = group, true
		}
		kept = append(kept, l)
	}
	return kept
}
