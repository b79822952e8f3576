package main

import "fmt"

// progress shows a line that counts up on a terminal, and nothing when the output goes elsewhere.
type progress struct {
	console
	what string
	of   int
}

// done shows that n are done.
func (p progress) done(n int) {
	if p.terminal {
		fmt.Fprintf(p.err, "\r%s %d of %d", p.what, n, p.of)
	}
}

// clear takes the line away.
func (p progress) clear() {
	if p.terminal {
		fmt.Fprint(p.err, "\r\x1b[K") // ECMA-48, 8.3.41: erase to the end of the line
	}
}
