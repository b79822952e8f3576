package report

import (
	"runtime"
	"strings"
	"unicode"
)

// Typed is a word as it is typed at a shell: as it is where it has nothing that means something there, else in quotes.
// They are single ones, within which a POSIX shell leaves everything alone (POSIX.1-2017, Shell and Utilities, 2.2.2);
// Windows' shells know double ones.
func Typed(word string) string { return typed(word, runtime.GOOS == "windows") }

func typed(word string, windows bool) string {
	plain := func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("./:-_,+@%=", r) || windows && r == '\\'
	}
	switch {
	case word != "" && !strings.ContainsFunc(word, func(r rune) bool { return !plain(r) }):
		return word
	case windows:
		return `"` + strings.ReplaceAll(word, `"`, `\"`) + `"`
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}
