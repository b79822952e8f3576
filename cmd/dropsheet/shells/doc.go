// Package shells writes what shells and man need to know of the program: completion for bash, zsh and fish, and a page
// of the manual. All of it comes from the commands' own flags; there is no second list.
package shells

import (
	"slices"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
)

// Command is a command as they are told of it.
type Command struct {
	Name    string
	Args    string // what it takes besides flags, such as "JOB SHEET..."
	Summary string // in a few words
	About   string // at length
	Example string
	Flags   *pflag.FlagSet // fresh ones: values are tried on them
	// Words are what it takes besides flags where that is no file.
	Words []string
}

// flag is a flag as a shell needs it.
type flag struct {
	name  string
	kind  string // of its value; empty for one that stands alone
	about string
	words []string // that its value can be, as far as they can be listed
	files bool     // its value names a file or a folder
	many  bool     // it may be given again and again
}

// flagsOf lists a command's flags in their order.
func flagsOf(c Command) (all []flag) {
	c.Flags.SortFlags = false
	c.Flags.VisitAll(func(f *pflag.Flag) {
		kind, usage := pflag.UnquoteUsage(f)
		shown := flag{name: f.Name, kind: kind, about: usage, many: ask.IsList(f),
			files: slices.Contains([]string{"file", "folder"}, kind)}
		if f.NoOptDefVal != "" {
			shown.kind = ""
		} else {
			shown.words = taken(f, kind)
		}
		all = append(all, shown)
	})
	return all
}

// taken are those of the kinds of a value, such as "number|auto", that are words which the flag takes.
func taken(f *pflag.Flag, kind string) (words []string) {
	kinds := strings.Split(kind, "|")
	if len(kinds) < 2 {
		return nil
	}
	for _, word := range kinds {
		if f.Value.Set(word) == nil {
			words = append(words, word)
		}
	}
	return words
}

// brief is the beginning of a text, which lists have room for.
func brief(about string) string {
	const least, most = 15, 70
	for _, end := range []string{";", ":", " (", ", such as", ", in place of", ". "} {
		if first, _, found := strings.Cut(about, end); found && len(first) >= least {
			about = first
		}
	}
	if len(about) <= most {
		return about
	}
	about = about[:most]
	return about[:max(strings.LastIndex(about, " "), 1)] + " ..."
}

// names are the commands' own.
func names(commands []Command) (all []string) {
	for _, c := range commands {
		all = append(all, c.Name)
	}
	return all
}
