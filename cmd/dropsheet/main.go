// Command dropsheet makes pictures appear, upright and whole, inside falling drops: it works out how large a
// backdrop must be, prints it turned over many sheets with a guide to assemble them, shows beforehand what
// the camera will record, and reprints single sheets.
//
// This package holds the commands, the console, progress and exit codes; the work is done by the packages beside it.
package main

import (
	"context"
	"fmt"
	"os"
	"os/signal"
	"runtime/debug"
	"slices"
	"strings"
	"syscall"

	"golang.org/x/term"

	"dropsheet/cmd/dropsheet/ask"
	"dropsheet/layout/report"
	"dropsheet/tile/job"
)

// Exit codes.
const (
	exitDone       = 0
	exitFailed     = 1 // the job failed
	exitWrongWords = 2 // the command line asks for what can't be
)

// gcPercent keeps memory near what is in use: nearly all of it is a few large pictures, which are quickly
// looked through. Making the harbour's fifteen sheets then takes 107 MB in place of 178 MB (GOGC=100), and no
// more processor time.
const gcPercent = 5

func main() {
	if os.Getenv("GOGC") == "" {
		debug.SetGCPercent(gcPercent)
	}
	signal.Ignore(syscall.SIGPIPE) // a reader that went away is an error of the write, and nothing is left half done
	ctx, stop := signal.NotifyContext(context.Background(), endings()...)
	context.AfterFunc(ctx, stop) // a second Ctrl-C ends the program at once
	c := console{out: plain{os.Stdout, columnsOf(os.Stdout)}, err: plain{os.Stderr, columnsOf(os.Stderr)},
		terminal: term.IsTerminal(int(os.Stderr.Fd()))}
	code := exitFailed
	if err := mayOpenFiles(); err != nil {
		complain(c, err)
	} else {
		code = run(ctx, c, os.Args[1:])
	}
	stop()
	os.Exit(code)
}

// endings are the signals that stop a run in good order.
func endings() []os.Signal {
	signals := []os.Signal{os.Interrupt, syscall.SIGTERM, syscall.SIGQUIT}
	if !signal.Ignored(syscall.SIGHUP) { // as it is under nohup, which lets a run outlive its terminal
		signals = append(signals, syscall.SIGHUP)
	}
	return signals
}

// run does what the arguments ask and returns the exit code.
func run(ctx context.Context, c console, args []string) int {
	if len(args) == 0 {
		fmt.Fprint(c.err, overview())
		return exitWrongWords
	}
	if args[0] == "help" && len(args) > 1 {
		args = []string{args[1], "--help"}
	}
	if args[0] == "--help" || args[0] == "-h" || args[0] == "help" {
		return c.tellHelp(overview())
	}
	for _, command := range commands {
		if command.name == args[0] {
			return command.run(ctx, c, args[1:])
		}
	}
	if slices.Contains([]string{"--version", "-V", "-v", "version"}, args[0]) {
		return c.tellHelp(version())
	}
	return complain(c, job.WrongWords(fmt.Errorf("there is no command %q\nhint: %s", args[0], commandMeant(args[0]))))
}

// commandMeant says what to write in place of what is no command.
func commandMeant(word string) string {
	for _, k := range commands {
		if ask.Slip(word, k.name) {
			return fmt.Sprintf("did you mean dropsheet %s?", k.name)
		}
	}
	if _, err := os.Stat(word); err == nil {
		return "a command comes first, such as dropsheet make " + report.Typed(word)
	}
	return "take " + commandNames()
}

// commands lists them in the order of the help. It is filled by init, since help and commands refer to each other.
var commands []command

func init() {
	commands = []command{sizeCommand, makeCommand, rehearseCommand, proofCommand, seamsCommand, reprintCommand,
		checkCommand, gaugeCommand, jobCommand, completionCommand, manualCommand}
}

func commandNames() string {
	var names []string
	for _, k := range commands {
		names = append(names, k.name)
	}
	return strings.Join(names, ", ")
}
