package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
)

// flagError says what is wrong with a flag, and what to do, of an error that parsing flags gave.
func (k command) flagError(flags *pflag.FlagSet, err error) error {
	unknown, err := ask.Explain(err)
	hint := ""
	if unknown != "" {
		hint = k.meant(flags, unknown)
	}
	if hint == "" {
		hint = fmt.Sprintf("dropsheet %s --help lists the flags", k.name)
	}
	return fmt.Errorf("%w\nhint: %s", err, hint)
}

// meant guesses which flag was meant by a name that the command does not have; empty when nothing is near.
func (k command) meant(flags *pflag.FlagSet, name string) string {
	if meant := ask.Meant(flags, name); len(meant) > 0 {
		return fmt.Sprintf("did you mean %s?", strings.Join(meant, " or "))
	}
	var others []string
	for _, other := range commands {
		theirs := pflag.NewFlagSet(other.name, pflag.ContinueOnError)
		if other.prepare(theirs); theirs.Lookup(name) != nil {
			others = append(others, other.name)
		}
	}
	if len(others) > 0 {
		return fmt.Sprintf("--%s is a flag of %s", name, strings.Join(others, " and "))
	}
	return ""
}
