package main

import (
	"context"
	"fmt"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout/report"
	"dropsheet/tile/hint"
	"dropsheet/tile/job"
)

var jobCommand = command{
	name: "job", args: "JOB",
	summary: "a job's words as one command line, and figures",
	about: `Shows with which words JOB (a job.json or its folder) was made, as one command
line that can be pasted into a shell and makes it again, into another folder;
and its main figures. For a job of an older format, which kept no words, the
line is made up from its plan.`,
	example: "dropsheet job harbour-backdrop",
	prepare: func(flags *pflag.FlagSet) action {
		asJSON := flags.Bool("json", false, "tell the command line and the figures as JSON")
		return func(_ context.Context, c console, args []string) error { return tellJob(c, *asJSON, args) }
	},
}

// mainFacts are what is told of a job in short.
var mainFacts = []string{"drop.what", "place.distance", "place.camera", "place.fill", "look.bend", "print.size",
	"print.sheets", "print.paper", "print.printer", "coverage.surround", "frame.size", "sharp.verdict"}

// jobTold is a job as programs get it.
type jobTold struct {
	Name    string   `json:"name"`
	Code    string   `json:"check_code"`
	Command []string `json:"command"` // word by word
	// MadeUp tells that the job kept no words, and that these are made up from its plan.
	MadeUp bool `json:"command_made_up,omitempty"`
	report.Figures
}

// tellJob tells a job's words and figures.
func tellJob(c console, asJSON bool, args []string) error {
	path, err := only("job", aJob, args)
	if err != nil {
		return err
	}
	j, err := job.Read(path)
	if err != nil {
		return err
	}
	c.warn(j.ChangedWarning()...)
	words := makesAgain(c, j)
	r := report.Of(j.Plan)
	if asJSON {
		return writeJSON(c.out, jobTold{j.Name, j.CheckCode, words, j.Asked == nil, r.Figures(j.Version)})
	}
	typed := make([]string, len(words))
	for i, word := range words {
		typed[i] = report.Typed(word)
	}
	line := strings.Join(typed, " ")
	if _, err := fmt.Fprintf(c.out, "%s\n\n%-12s %s, check code %s\n", line, "job", j.Name, j.CheckCode); err != nil {
		return err
	}
	var facts []report.Fact
	for _, key := range mainFacts {
		if f, ok := r.Fact(key); ok {
			facts = append(facts, f)
		}
	}
	return writeFacts(c.out, facts...)
}

// makesAgain is the command line that makes a job again, word by word. It warns where the line can't know all that the
// job did.
func makesAgain(c console, j job.Job) []string {
	words := ask.MakeWords(j.Asked)
	if j.Asked == nil {
		var same bool
		words, same = ask.FromPlan(j)
		comes := "print, board and number of sheets come out as they were"
		if !same {
			comes = "it comes near, and not to the same print, board or sheets: look at its figures before you print"
		}
		c.warn(fmt.Sprintf("a job of format %d kept no words, and the command line is made up from its plan: %s", j.Version,
			comes), "the plan does not know all words: --ppi and the seams' places may differ, so its sheets do not fit those "+
			"of the old job")
	}
	artwork, err := j.FindArtwork()
	switch {
	case err != nil:
		c.warn(hint.Text(err))
		artwork = j.ArtworkPath("")
	case artwork != j.ArtworkPath(""):
		c.warn("the artwork is not where it was, or not what it was: the command line takes the job's copy of it, and the " +
			"sheets are then named for that")
	}
	c.warn(ask.OtherPrinter(j)...)
	if strings.HasPrefix(artwork, "-") {
		artwork = "." + string(filepath.Separator) + artwork // no flag
	}
	return append(append([]string{"dropsheet", "make", artwork}, words...), "--out",
		filepath.Clean(j.Folder())+"-again")
}
