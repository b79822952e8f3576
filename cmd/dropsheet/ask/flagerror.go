package ask

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/tile/job"
)

// Set takes one word by the name of its flag, as a command line would. Said again it takes the place of what was said
// before, but for lamps, drops and places to avoid, of which there may be many.
func Set(flags *pflag.FlagSet, name, value string) error {
	_, err := Explain(flags.Set(name, value))
	return job.WrongWords(err)
}

// Explain says in our own words what is wrong with a flag, of an error that reading flags gave, or nil. unknown is the
// name that was written for a flag that there is not, or empty.
func Explain(err error) (unknown string, explained error) {
	var value *pflag.InvalidValueError
	var missing *pflag.ValueRequiredError
	var notThere *pflag.NotExistError
	switch {
	case errors.As(err, &value) && value.GetFlag().Value.Type() == "bool":
		return "", fmt.Errorf("--%s: %q can't be taken\nhint: give the flag alone", value.GetFlag().Name, value.GetValue())
	case errors.As(err, &value) && value.GetFlag().Value.Type() == "uint16":
		return "", fmt.Errorf("--%s: %q can't be taken\nhint: write a whole number from 0 to %d", value.GetFlag().Name,
			value.GetValue(), math.MaxUint16)
	case errors.As(err, &value): // its own words quote the value, and ours do too
		return "", fmt.Errorf("--%s: %w", value.GetFlag().Name, errors.Unwrap(value))
	case errors.As(err, &missing):
		kind, _ := pflag.UnquoteUsage(missing.GetFlag())
		return "", fmt.Errorf("--%s needs a value\nhint: write --%[1]s %s", missing.GetFlag().Name, kind)
	case errors.As(err, &notThere):
		if short := notThere.GetSpecifiedShortnames(); short != "" {
			unknown, _, _ = strings.Cut(short, "=")
			return unknown, fmt.Errorf("unknown flag: -%s, and flags begin with two dashes", unknown)
		}
		unknown = notThere.GetSpecifiedName()
		return unknown, fmt.Errorf("unknown flag: --%s", unknown)
	}
	return "", err
}

// otherNames are what people call some flags that are called otherwise here.
var otherNames = map[string]string{"fps": "frame-rate", "framerate": "frame-rate", "dpi": "ppi", "overlap": "lap",
	"stop": "aperture", "f-stop": "aperture", "focal-length": "lens", "output": "out", "rotate": "turn",
	"diameter": "drop", "exposure": "shutter", "refractive-index": "liquid", "ior": "liquid"}

// Meant guesses which flags were meant by a name that none has: one that it is another name for, those that begin so,
// or else those that are a slip or two away.
func Meant(flags *pflag.FlagSet, name string) []string {
	if f := flags.Lookup(otherNames[strings.ToLower(name)]); f != nil {
		return []string{"--" + f.Name}
	}
	const leastPrefix = 3
	var begin, near []string
	flags.VisitAll(func(f *pflag.Flag) {
		if len(name) >= leastPrefix && strings.HasPrefix(f.Name, name) {
			begin = append(begin, "--"+f.Name)
		}
		if Slip(name, f.Name) {
			near = append(near, "--"+f.Name)
		}
	})
	if len(begin) > 0 {
		return begin
	}
	return near
}

// Slip tells whether a word may be another one with a slip or two in it.
func Slip(word, other string) bool {
	const most = 2
	return slips(word, other) <= min(most, len(word)/2)
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
