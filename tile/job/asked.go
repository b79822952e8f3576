package job

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"unicode"
)

// Asked is the words that a job was asked for with, by their flags; of a flag that was given more than once, in their
// order. Whoever asks the same again gets the same job.
type Asked map[string][]string

// Bounds of what a job keeps: far more than anyone types, and little to whoever reads a hostile job.
const (
	mostAskedBytes = 64 << 10
	longestFlag    = 40
)

// check refuses what no command line would come to.
func (a Asked) check() error {
	bytes := 0
	for _, flag := range slices.Sorted(maps.Keys(a)) {
		if flag == "" || len(flag) > longestFlag || strings.Trim(flag, "abcdefghijklmnopqrstuvwxyz-") != "" {
			return fmt.Errorf("%.*q is not the name of a flag", longestFlag, flag)
		}
		if len(a[flag]) == 0 {
			return fmt.Errorf("--%s was asked for without a word", flag)
		}
		for _, word := range a[flag] {
			if strings.ContainsFunc(word, unicode.IsControl) {
				return fmt.Errorf("--%s: %q has characters that can't be printed\nhint: type it anew", flag, word)
			}
			bytes += len(flag) + len(word)
		}
	}
	if bytes > mostAskedBytes {
		return fmt.Errorf("%d bytes of words are too many for one job\nhint: take at most %d", bytes, mostAskedBytes)
	}
	return nil
}
