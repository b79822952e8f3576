// Package hint parts what an error says is wrong from what to do about it.
//
// An error tells the latter on lines of its own that begin with "hint: ", below what was given and what is wrong, so
// that whoever wraps it puts words before it and none behind.
package hint

import (
	"math"
	"regexp"
	"strconv"
	"strings"
)

// lead begins a line that says what to do.
const lead = "hint: "

// Cut parts an error's lines: what is wrong, and what to do about it, a hint each and each but once.
func Cut(err error) (wrong string, hints []string) {
	var lines []string
	told := map[string]bool{}
	for line := range strings.SplitSeq(short(err.Error()), "\n") {
		todo, is := strings.CutPrefix(line, lead)
		switch {
		case !is:
			lines = append(lines, line)
		case !told[todo]:
			told[todo] = true
			hints = append(hints, todo)
		}
	}
	return strings.Join(lines, "\n"), hints
}

// long finds what users said, which stays as they wrote it, and figures that go on and on.
var long = regexp.MustCompile(`"[^"\n]*"|\d+\.\d{7,}`)

// short rounds the figures in a text to six places behind the point, which of millimetres are nanometres: what binary
// fractions add beyond that is of no use to anyone.
func short(text string) string {
	return long.ReplaceAllStringFunc(text, func(found string) string {
		figure, err := strconv.ParseFloat(found, 64)
		if err != nil {
			return found
		}
		return strconv.FormatFloat(math.Round(figure*1e6)/1e6, 'f', -1, 64)
	})
}

// Text is an error as people get it: what is wrong first, then the hints, a line each.
func Text(err error) string {
	wrong, hints := Cut(err)
	for _, h := range hints {
		wrong += "\n" + lead + h
	}
	return wrong
}

// Off is the error without its hints, for those who know better what to do, or where the words go on behind it.
func Off(err error) error { return withoutHints{err} }

type withoutHints struct{ error }

func (e withoutHints) Error() string {
	wrong, _ := Cut(e.error)
	return wrong
}

func (e withoutHints) Unwrap() error { return e.error }
