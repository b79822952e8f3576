package main

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// flagError says what is wrong with a flag, and what to do, of an error that parsing flags gave.
func (k command) flagError(flags *pflag.FlagSet, err error) error {
	hint := fmt.Sprintf("dropsheet %s --help lists the flags", k.name)
	var value *pflag.InvalidValueError
	var missing *pflag.ValueRequiredError
	var unknown *pflag.NotExistError
	switch {
	case errors.As(err, &value) && value.GetFlag().Value.Type() == "bool":
		err = fmt.Errorf("--%s: %q can't be taken: give the flag alone", value.GetFlag().Name, value.GetValue())
	case errors.As(err, &value): // its own words quote the value, and ours do too
		err = fmt.Errorf("--%s: %w", value.GetFlag().Name, errors.Unwrap(value))
	case errors.As(err, &missing):
		kind, _ := pflag.UnquoteUsage(missing.GetFlag())
		err = fmt.Errorf("--%s needs a value: write --%[1]s %s", missing.GetFlag().Name, kind)
	case errors.As(err, &unknown):
		name := unknown.GetSpecifiedName()
		if short := unknown.GetSpecifiedShortnames(); short != "" {
			name, _, _ = strings.Cut(short, "=")
			err = fmt.Errorf("unknown flag: -%s; flags begin with two dashes", name)
		}
		if meant := k.meant(flags, name); meant != "" {
			hint = meant
		}
	}
	return fmt.Errorf("%w\nhint: %s", err, hint)
}

// meant guesses which flag was meant by a name that the command does not have; empty when nothing is near.
func (k command) meant(flags *pflag.FlagSet, name string) string {
	const leastPrefix, mostSlips = 3, 2
	var begin, near []string
	flags.VisitAll(func(f *pflag.Flag) {
		if len(name) >= leastPrefix && strings.HasPrefix(f.Name, name) {
			begin = append(begin, "--"+f.Name)
		}
		if slips(name, f.Name) <= min(mostSlips, len(name)/2) {
			near = append(near, "--"+f.Name)
		}
	})
	if len(begin) == 0 {
		begin = near
	}
	if len(begin) > 0 {
		return fmt.Sprintf("did you mean %s?", strings.Join(begin, " or "))
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

// slips is how many letters must be put in, left out or changed to make one word of another (the Levenshtein
// distance, row by row).
func slips(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			changed := diagonal
			if a[i] != b[j] {
				changed++
			}
			diagonal = row[j+1]
			row[j+1] = min(changed, row[j]+1, diagonal+1)
		}
	}
	return row[len(b)]
}
