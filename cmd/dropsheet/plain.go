package main

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
)

// plain writes text to where a terminal may show it, and what would do something to the terminal as JSON writes it:
// names of files may hold anything.
type plain struct {
	io.Writer
	columns int // of the terminal; 0 for none
}

func (p plain) Write(text []byte) (int, error) {
	if _, err := io.WriteString(p.Writer, plainly(text)); err != nil {
		return 0, fmt.Errorf("the answer can't be written: %w\nhint: give it a place that has room", place.Plainly(err))
	}
	return len(text), nil
}

// plainly is what plain writes of a text.
func plainly(text []byte) string {
	var b strings.Builder
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		if r == utf8.RuneError && size == 1 || r != '\n' && r != '\t' && job.Unprintable(r) {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.Write(text[:size])
		}
		text = text[size:]
	}
	return b.String()
}
