package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"dropsheet/layout/report"
)

// On a terminal no line runs past its edge, but for a word that is longer by itself; elsewhere lines stay whole.
func TestFolded(t *testing.T) {
	long := "differs      print 560 x 373.3 mm -> print 560 x 560 mm, \u00b1 what the paper grows, and 12 sheets of A4"
	for _, columns := range []int{40, 60, 80} {
		text := folded(plain{columns: columns}, 13, long+"\nshort")
		lines := strings.Split(text, "\n")
		for i, line := range lines {
			require.LessOrEqual(t, utf8.RuneCountInString(line), columns, line)
			if 0 < i && i < len(lines)-1 {
				require.Equal(t, strings.Repeat(" ", 13), line[:13])
			}
		}
		require.Equal(t, strings.Join(strings.Fields(long+" short"), " "), strings.Join(strings.Fields(text), " "))
	}
	require.Equal(t, long, folded(plain{}, 13, long), "no terminal")
	require.Equal(t, long, folded(&bytes.Buffer{}, 13, long))
	word := "hint: " + strings.Repeat("x", 90)
	require.Equal(t, word, folded(plain{columns: 80}, 6, word))
}

// Facts, warnings and errors come so, each hung in under its words.
func TestFoldedOnTheScreen(t *testing.T) {
	var out, errs bytes.Buffer
	c := console{out: plain{&out, 60}, err: plain{&errs, 60}}
	text := strings.Repeat("words that go on ", 6)
	require.NoError(t, writeFacts(c.out, report.Fact{Name: "name", Text: report.Words(text), Asks: true}))
	c.warn(text)
	require.Regexp(t, `^name       ! words that .*\n {13}words|^name       ! words[^\n]*\n {13}\w`, out.String())
	require.Regexp(t, `^warning: words[^\n]*\n {9}\w`, errs.String())
}
