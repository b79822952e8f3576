package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"
)

// helpColumns is how wide help may be: a terminal's usual width.
const helpColumns = 100

// overview is the help for the whole program: what it is for, its commands and its exit codes.
func overview() string {
	var b strings.Builder
	b.WriteString("dropsheet prints a picture, turned and at the right size, over many sheets of paper, so that it\n" +
		"appears upright and whole inside a falling drop that is filmed in front of it.\n\nusage:\n")
	for _, k := range commands {
		fmt.Fprintf(&b, "  dropsheet %-20s %s\n", k.name+" "+k.args, k.summary)
	}
	fmt.Fprintf(&b, "\nLengths take a unit: 4.6mm 20cm 1.8m 11in. Each command explains its flags with --help.\n\n"+
		"exit codes:\n  %d  done\n  %d  the job failed, or check found something that differs\n  %d  the command line "+
		"asks for what can't be\n\n"+
		"example:\n  %s\n", exitDone, exitFailed, exitWrongWords, makeCommand.example)
	return b.String()
}

// help is the help for one command.
func (k command) help(flags *pflag.FlagSet) string {
	return fmt.Sprintf("usage: dropsheet %s [flags]\n\n%s\n\n%sexample:\n  %s\n",
		strings.TrimSpace(k.name+" "+k.args), k.about, flagUsages(flags), k.example)
}
