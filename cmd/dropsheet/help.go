package main

import (
	"fmt"
	"strings"

	"github.com/spf13/pflag"

	"dropsheet/cmd/dropsheet/ask"
)

// Columns of help: as many as every screen has, and where what a flag does begins.
const (
	helpColumns  = 80
	aboutColumns = 26
)

// What the help says of the whole program.
const (
	purpose = "dropsheet prints a picture, turned and at the right size, over many sheets of\n" +
		"paper, so that it appears upright and whole inside a falling drop that is filmed\n" +
		"in front of it."
	lengthsTaken = "Lengths take a unit: 4.6mm 20cm 1.8m 11in. Each command explains its\n" +
		"flags with --help."
)

// glossary is what five words mean wherever dropsheet uses them.
var glossary = []struct{ word, means string }{
	{"artwork", "your file"}, {"picture", "the part of it that shall appear in the drop"},
	{"print", "the picture as it lies on paper"}, {"board", "what the paper is pasted on"},
	{"backdrop", "the board with the print on it"},
}

// exitCodes say what each means.
var exitCodes = []string{exitDone: "done", exitFailed: "the job failed, or check found something that differs",
	exitWrongWords: "the command line is wrong, or asks for what is impossible"}

// overview is the help for the whole program: what it is for, its commands and its exit codes.
func overview() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\nusage:\n", purpose)
	for _, k := range commands {
		fmt.Fprintf(&b, "  dropsheet %-20s %s\n", k.name+" "+k.args, k.summary)
	}
	b.WriteString("\nwords:\n")
	for _, w := range glossary {
		fmt.Fprintf(&b, "  %-9s %s\n", w.word, w.means)
	}
	fmt.Fprintf(&b, "\n%s\n\nexit codes:\n", lengthsTaken)
	for code, means := range exitCodes {
		fmt.Fprintf(&b, "  %d  %s\n", code, means)
	}
	fmt.Fprintf(&b, "\nexample:\n  %s\n", makeCommand.example)
	return b.String()
}

// help is the help for one command.
func (k command) help(flags *pflag.FlagSet) string {
	return fmt.Sprintf("usage: dropsheet %s [flags]\n\n%s\n\n%sexample:\n  %s\n",
		strings.TrimSpace(k.name+" "+k.args), k.about, flagUsages(flags), k.example)
}

// headings are what the flags of every command stand under in its help, in the order that a shot is planned
// in: the drop, how large and how far, the picture, the camera, the paper. A command shows of each heading
// the flags that it has.
var headings = []struct{ title, flags string }{
	{"drop", "body drop held drops-per-ml nozzle jet oblate liquid wall wall-of drop-at travel"},
	{"size and distance", "distance print-size max-sheets copies columns rows board-width board-height fill fit"},
	{"picture", "shape page crop centre turn round look background"},
	{"board beyond the picture", "surround surround-size"},
	{"camera", "camera camera-distance lens frame-width sensor pixel-size pixels aperture focus sharp-to sharp samples"},
	{"exposure and motion", "frame-rate iso shutter fall speed playback"},
	{"light", "lamp lamp-lux lamp-size lamp-beam lamp-aim light-from level"},
	{"paper and printer", "paper orientation printer margin lap ppi lossless spare guide-paper inches"},
	{"seams", "seams avoid more-sheets seam-at seam-width"},
	{"readings of a printer", "save read between margins pasted list forget"},
	{"files and output", "artwork keep-artwork max-pixels max-memory film out force verbose json port no-open"},
	{"a job made again", "scale without"},
}

// flagUsages is the help for the flags, under their headings.
func flagUsages(flags *pflag.FlagSet) string {
	var b strings.Builder
	for _, h := range headings {
		var under []string
		for name := range strings.FieldsSeq(h.flags) {
			if f := flags.Lookup(name); f != nil {
				under = append(under, flagUsage(f))
			}
		}
		if len(under) > 0 {
			fmt.Fprintf(&b, "%s:\n%s\n\n", h.title, strings.Join(under, "\n"))
		}
	}
	return b.String()
}

// flagUsage is the help for one flag: what it does stands beside its name, or below where that is long.
func flagUsage(f *pflag.Flag) string {
	const unbroken = "\u00a0" // keeps a default with its word
	kind, about := ask.Usage(f)
	name := strings.TrimRight(fmt.Sprintf("  --%s %s", f.Name, kind), " ")
	set := strings.Repeat(" ", aboutColumns)
	about = strings.NewReplacer("(default ", "(default"+unbroken, "(default: ", "(default:"+unbroken).Replace(about)
	lines := strings.ReplaceAll(fold(set+about, aboutColumns, helpColumns), unbroken, " ")
	if len(name)+len("  ") > aboutColumns {
		return name + "\n" + lines
	}
	return name + lines[len(name):]
}
