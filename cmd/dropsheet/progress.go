package main

import (
	"fmt"
	"io"

	"dropsheet/tile/job"
)

// progress shows a line that counts up on a terminal, and nothing when the output goes elsewhere.
type progress struct {
	console
	shown bool // the line stands there
}

// count shows how many of so many are done, and takes the line away after the last.
func (p *progress) count(what string, done, of int) {
	if !p.terminal {
		return
	}
	fmt.Fprintf(p.bare(), "\r%s %d of %d", what, done, of)
	p.shown = true
	if done == of {
		p.clear()
	}
}

// clear takes the line away, if there is one.
func (p *progress) clear() {
	if p.shown {
		fmt.Fprint(p.bare(), "\r\x1b[K") // ECMA-48, 8.3.41: erase to the end of the line
		p.shown = false
	}
}

// bare is the terminal itself, whose cursor the line moves.
func (p *progress) bare() io.Writer {
	if told, ok := p.err.(plain); ok {
		return told.Writer
	}
	return p.err
}

// watch shows on the console how a job goes on.
func (p *progress) watch() job.Watch {
	return job.Watch{
		Progress: p.count,
		Warn: func(warning string) {
			p.clear()
			p.warn(warning)
		},
		Note: func(note string) {
			p.clear()
			fmt.Fprintln(p.err, folded(p.err, len("note: "), "note: "+note))
		},
	}
}
