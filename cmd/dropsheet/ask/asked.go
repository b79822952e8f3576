package ask

import (
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/job"
)

// notOfTheJob are the flags that say where a job goes and how it is told, and nothing of what it is.
var notOfTheJob = []string{"out", "force", "json"}

// asked is what the flags were given, for the job to keep.
func asked(flags *pflag.FlagSet) job.Asked {
	all := job.Asked{}
	flags.Visit(func(f *pflag.Flag) {
		if slices.Contains(notOfTheJob, f.Name) {
			return
		}
		words := []string{f.Value.String()}
		if many, ok := f.Value.(interface{ words() []string }); ok {
			words = many.words()
		}
		for _, word := range words {
			all[f.Name] = append(all[f.Name], strings.TrimSpace(word))
		}
	})
	return all
}
