package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// helpColumns is how wide help may be: a terminal's usual width.
const helpColumns = 100

// overview is the help for the whole program.
func overview() string {
	var b strings.Builder
	b.WriteString("dropsheet prints a picture, turned and at the right size, over many sheets of paper, so that it appears\n" +
		"upright and whole inside a falling drop that is filmed in front of it.\n\nusage:\n")
	for _, k := range commands {
		fmt.Fprintf(&b, "  dropsheet %-20s %s\n", k.name+" "+k.args, k.summary)
	}
	b.WriteString("\nLengths take a unit: 4.6mm 20cm 1.8m 11in. Each command explains its flags with --help.\n" +
		"Exit code 0: done; 1: the job failed; 2: the command line asks for what can't be.\n\nexample:\n  " + makeCommand.example + "\n")
	return b.String()
}

// help is the help for one command.
func (k command) help(flags *pflag.FlagSet) string {
	return fmt.Sprintf("usage: dropsheet %s [flags]\n\n%s\n\n%sexample:\n  %s\n",
		strings.TrimSpace(k.name+" "+k.args), k.about, flagUsages(flags), k.example)
}
