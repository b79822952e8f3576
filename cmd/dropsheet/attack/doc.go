// Package attack holds tests that ask the built program for what nobody has thought of: flag sets drawn at random from
// the flags' own table, for every command and for those that read what it made. Whatever is asked, the program ends
// soon, in little memory and with an exit code that its help tells, says what to do where it refuses, and never tells a
// figure that is none.
//
// A few sets are drawn in each run, the same each time; go test ./cmd/dropsheet/attack -args -sets 5000 -seed 7 draws
// more and others.
package attack
