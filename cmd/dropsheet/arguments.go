package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"unicode"
	"unicode/utf8"

	"dropsheet/tile/job"
)

// What commands take besides flags.
const (
	anArtwork = "artwork"
	aJob      = "job"
)

// only is the one word that a command takes.
func only(command, what string, args []string) (string, error) {
	switch {
	case len(args) == 1:
		return args[0], nil
	case len(args) > 1:
		return "", job.WrongWords(fmt.Errorf("%s takes one %s, and got %q\n"+
			"hint: name one, and put quotes round a name with spaces",
			command, what, args))
	case what == aJob:
		return "", job.WrongWords(fmt.Errorf("%s takes one job, and got none\nhint: name the folder that make wrote, or the "+
			"job.json in it", command))
	}
	return "", job.WrongWords(fmt.Errorf("%s takes one artwork, and got none\n"+
		"hint: name a picture file, or the folder of a "+
		"job", command))
}

// refuseLongDashes finds flags that begin with the one long dash that word processors and web pages make of two
// hyphens.
func refuseLongDashes(args []string) error {
	for _, arg := range args {
		if arg == "--" {
			return nil
		}
		name := strings.TrimLeft(arg, "-\u2010\u2011\u2012\u2013\u2014\u2212")
		if first, _ := utf8.DecodeRuneInString(arg); first >= utf8.RuneSelf && name != arg &&
			strings.IndexFunc(name, unicode.IsLetter) == 0 {
			return job.WrongWords(fmt.Errorf("%q begins with a dash that is no hyphen, as text that was copied often does\n"+
				"hint: write --%s", arg, name))
		}
	}
	return nil
}

// namedAs refuses a name for a file that says it is of another kind.
func namedAs(path, what, extension string) error {
	if path == "-" {
		return job.WrongWords(fmt.Errorf("--out -: %s goes to a file, not to the screen\n"+
			"hint: name one that ends in %s", what,
			extension))
	}
	if got := filepath.Ext(path); got != "" && !strings.EqualFold(got, extension) {
		return job.WrongWords(fmt.Errorf("--out %q: %s is no %s\n"+
			"hint: take a name that ends in %s", path, what, got, extension))
	}
	return nil
}
