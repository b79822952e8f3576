package ask

import (
	"maps"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// MakeWords is the words of a job as make takes them, flags and values each by itself.
func MakeWords(words job.Asked) (all []string) {
	flags := makeFlags()
	for _, flag := range slices.Sorted(maps.Keys(words)) {
		all = append(all, spelt(flags, flag, words[flag])...)
	}
	return all
}

// makeFlags are the flags that a job may have been asked for with.
func makeFlags() *pflag.FlagSet {
	flags := pflag.NewFlagSet("make", pflag.ContinueOnError)
	new(Make).Register(flags)
	return flags
}

// spelt is a flag with its words, each by itself. A flag without a value stands alone.
func spelt(flags *pflag.FlagSet, flag string, words []string) (all []string) {
	for _, word := range words {
		switch f := flags.Lookup(flag); {
		case f == nil || f.NoOptDefVal == "":
			all = append(all, "--"+flag, word)
		case word == f.NoOptDefVal:
			all = append(all, "--"+flag)
		default:
			all = append(all, "--"+flag+"="+word)
		}
	}
	return all
}

// typed is the same as it is typed at a shell; empty where there are no words.
func typed(flags *pflag.FlagSet, flag string, words []string) string {
	all := spelt(flags, flag, words)
	for i, word := range all {
		all[i] = report.Typed(word)
	}
	return strings.Join(all, " ")
}
