package main

import (
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// columns of a terminal, at least and at most: on a wider one long lines are hard to read.
const (
	leastColumns = 40
	mostColumns  = 100
)

// columnsOf is how wide the text of a file may be; 0 where it goes to no terminal, and lines are as long as they are.
func columnsOf(f *os.File) int {
	wide, _, err := term.GetSize(int(f.Fd()))
	if err != nil || wide < leastColumns {
		return 0
	}
	return min(wide, mostColumns)
}

// folded is a text whose lines are broken at blanks where they are too long for the terminal that w is, the rest hung
// in by so many columns.
func folded(w io.Writer, hang int, text string) string {
	to, ok := w.(plain)
	if !ok || to.columns == 0 {
		return text
	}
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = fold(line, hang, to.columns)
	}
	return strings.Join(lines, "\n")
}

// fold breaks one line.
func fold(line string, hang, columns int) string {
	var b strings.Builder
	for utf8.RuneCountInString(line) > columns {
		runes := []rune(line)
		at := strings.LastIndex(string(runes[:columns+1]), " ")
		if at <= hang {
			break // one long word
		}
		b.WriteString(strings.TrimRight(line[:at], " ") + "\n")
		line = strings.Repeat(" ", hang) + line[at+1:]
	}
	return b.String() + line
}
