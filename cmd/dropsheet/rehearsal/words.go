package rehearsal

import (
	"fmt"
	"io"
	"maps"
	"regexp"
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// Word is a flag and what it is given, as on a command line; a switch is given true.
type Word [2]string

// Flag is the flag's name, without dashes.
func (w Word) Flag() string { return w[0] }

// Value is what it is given.
func (w Word) Value() string { return w[1] }

// notFromThePage are flags that the command line alone sets: they say what the program may do, and what it reads.
var notFromThePage = []string{"max-pixels", "max-memory", "page", "artwork", "scale", "without"}

// wordsOf lists what was asked, flag by flag in the order of their names.
func wordsOf(asked job.Asked) []Word {
	words := []Word{}
	for _, flag := range slices.Sorted(maps.Keys(asked)) {
		if slices.Contains(notFromThePage, flag) {
			continue
		}
		for _, value := range asked[flag] {
			words = append(words, Word{flag, value})
		}
	}
	return words
}

// fixed are the words that the command line alone sets, as it set them.
func (s Subject) fixed() (words []Word) {
	for _, flag := range []string{"page", "max-pixels", "max-memory"} {
		for _, value := range s.Words[flag] {
			words = append(words, Word{flag, value})
		}
	}
	return words
}

// flagError is an error that a flag is to blame for.
type flagError struct {
	flag string // empty where it is not known which
	error
}

func (e flagError) Unwrap() error { return e.error }

// read reads words into what rehearse is asked for.
func read(words []Word) (*ask.Rehearse, error) {
	var asked ask.Rehearse
	flags := flagSet(&asked)
	for _, w := range words {
		if slices.Contains(notFromThePage, w.Flag()) {
			return nil, flagError{w.Flag(), fmt.Errorf("--%s is for the command line\n"+
				"hint: start rehearse anew with it", w.Flag())}
		}
		if err := ask.Set(flags, w.Flag(), w.Value()); err != nil {
			return nil, flagError{w.Flag(), err}
		}
	}
	return &asked, nil
}

func flagSet(asked *ask.Rehearse) *pflag.FlagSet {
	flags := pflag.NewFlagSet("rehearse", pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard)
	asked.Register(flags)
	return flags
}

var flagName = regexp.MustCompile(`--([a-z][a-z-]*[a-z])`)

// blamed is an error with the flag that it belongs to: the one that it is marked with, or else, of those that were
// given, the first that it names.
func blamed(err error, words []Word) flagError {
	if e, ok := err.(flagError); ok {
		return e
	}
	for _, m := range flagName.FindAllStringSubmatch(err.Error(), -1) {
		if slices.ContainsFunc(words, func(w Word) bool { return w.Flag() == m[1] }) {
			return flagError{m[1], err}
		}
	}
	return flagError{"", err}
}

// known are the words that a command takes of those given.
func known(flags *pflag.FlagSet, words []Word) (theirs []Word) {
	for _, w := range words {
		if flags.Lookup(w.Flag()) != nil {
			theirs = append(theirs, w)
		}
	}
	return theirs
}

// commandLine is a command as it is typed at a shell.
func commandLine(command, what string, flags *pflag.FlagSet, words []Word) string {
	line := []string{"dropsheet", command, report.Typed(what)}
	for _, w := range words {
		f := flags.Lookup(w.Flag())
		switch {
		case f == nil:
		case f.Value.Type() == "bool" && w.Value() == "true":
			line = append(line, "--"+w.Flag())
		case f.Value.Type() == "bool":
			line = append(line, "--"+w.Flag()+"="+report.Typed(w.Value()))
		default:
			line = append(line, "--"+w.Flag(), report.Typed(w.Value()))
		}
	}
	return strings.Join(line, " ")
}
