package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/tile/hint"
	"dropsheet/tile/job"
)

// command is one thing that the program does.
type command struct {
	name, args, summary string
	about               string // what --help says between the usage line and the flags
	example             string // a command line that works
	// prepare registers the flags and returns what to do once they are read.
	prepare func(*pflag.FlagSet) action
}

// action does a command's work with what is left on the command line after the flags.
type action func(ctx context.Context, c console, args []string) error

// run does what its own arguments ask and returns the exit code.
func (k command) run(ctx context.Context, c console, args []string) int {
	flags := pflag.NewFlagSet(k.name, pflag.ContinueOnError)
	flags.SortFlags = false
	flags.SetOutput(io.Discard) // errors are written by complain, once
	act := k.prepare(flags)
	if err := refuseLongDashes(args); err != nil {
		return complain(c, err)
	}
	switch err := flags.Parse(args); {
	case errors.Is(err, pflag.ErrHelp):
		return c.tellHelp(k.help(flags))
	case err != nil:
		return complain(c, job.WrongWords(k.flagError(flags, err)))
	}
	if err := act(ctx, c, flags.Args()); err != nil {
		return complain(c, err)
	}
	return exitDone
}

// flagError says what is wrong with a flag, and what to do, of an error that parsing flags gave.
func (k command) flagError(flags *pflag.FlagSet, err error) error {
	unknown, err := ask.Explain(err)
	if _, hints := hint.Cut(err); len(hints) > 0 {
		return err // it knows better
	}
	if unknown == "version" {
		return fmt.Errorf("%w\nhint: dropsheet --version tells which this is", err)
	}
	if unknown != "" {
		if meant := k.meant(flags, unknown); meant != "" {
			return fmt.Errorf("%w\nhint: %s", err, meant)
		}
	}
	return fmt.Errorf("%w\nhint: dropsheet %s --help lists the flags", err, k.name)
}

// listed names all, with a word before the last.
func listed(all []string, before string) string {
	last := len(all) - 1
	if last < 1 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:last], ", ") + " " + before + " " + all[last]
}

// meant guesses which flag was meant by a name that the command does not have; empty when nothing is near.
func (k command) meant(flags *pflag.FlagSet, name string) string {
	var others []string
	for _, other := range commands {
		if flags.Lookup(name) != nil {
			break // it is one of this command's, with one dash
		}
		theirs := pflag.NewFlagSet(other.name, pflag.ContinueOnError)
		if other.prepare(theirs); theirs.Lookup(name) != nil {
			others = append(others, other.name)
		}
	}
	if len(others) > 0 {
		return fmt.Sprintf("--%s is a flag of %s", name, listed(others, "and"))
	}
	if meant := ask.Meant(flags, name); len(meant) > 0 {
		return fmt.Sprintf("did you mean %s?", strings.Join(meant, " or "))
	}
	return ""
}
