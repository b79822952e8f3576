package ask

import (
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/job"
)

// notOfTheJob are the flags that say where a job or a page goes and how it is told, and those that change the words of
// another.
var notOfTheJob = []string{"out", "force", "json", "verbose", "scale", "without", "artwork", "port", "no-open"}

// asked is what the flags were given, for the job to keep.
func asked(flags *pflag.FlagSet) job.Asked {
	all := job.Asked{}
	flags.Visit(func(f *pflag.Flag) {
		if slices.Contains(notOfTheJob, f.Name) {
			return
		}
		if words := wordsOf(f); f.Value.Type() != "bool" || words[0] != "false" || f.DefValue != "false" {
			all[f.Name] = words
		}
	})
	return all
}

// wordsOf is what a flag was given, of one that may be given again and again in their order.
func wordsOf(f *pflag.Flag) (words []string) {
	said := []string{f.Value.String()}
	if many, ok := f.Value.(interface{ words() []string }); ok {
		said = many.words()
	}
	for _, word := range said {
		words = append(words, strings.TrimSpace(word))
	}
	return words
}
