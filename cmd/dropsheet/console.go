package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"syscall"

	"dropsheet/layout/report"
	"dropsheet/tile/hint"
	"dropsheet/tile/job"
)

// console is where a run writes.
type console struct {
	out      io.Writer // results
	err      io.Writer // progress, warnings and errors
	terminal bool      // err is a terminal, so progress can be shown
}

// complain writes an error and returns its exit code.
func complain(c console, err error) int {
	if errors.Is(err, context.Canceled) {
		fmt.Fprintln(c.err, "dropsheet: stopped; nothing was left behind")
		return exitFailed
	}
	if errors.Is(err, syscall.EPIPE) {
		return exitFailed // whoever read it has seen enough, and wants no word more
	}
	fmt.Fprintln(c.err, folded(c.err, len("hint: "), "dropsheet: "+hint.Text(err)))
	if job.IsWrongWords(err) {
		return exitWrongWords
	}
	return exitFailed
}

// tellHelp writes a help text and returns the exit code.
func (c console) tellHelp(text string) int {
	if _, err := io.WriteString(c.out, text); err != nil {
		return complain(c, err)
	}
	return exitDone
}

// warn writes warnings, a line each.
func (c console) warn(warnings ...string) {
	for _, w := range warnings {
		fmt.Fprintln(c.err, folded(c.err, len("warning: "), "warning: "+w))
	}
}

// tell writes warnings of the report.
func (c console) tell(warnings []report.Text) {
	for _, w := range warnings {
		c.warn(job.Printable(w.String()))
	}
}

// writeJSON writes a value as programs get it, lengths to the nanometre.
func writeJSON(w io.Writer, v any) error {
	text, err := json.MarshalIndent(v, "", "  ")
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(w, "%s\n", toNanometres(text))
	return err
}
