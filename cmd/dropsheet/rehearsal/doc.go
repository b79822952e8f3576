// Package rehearsal serves the bench in the browser: the frame as the camera will record it, the bench and the board,
// answered anew whenever a word changes. It talks to the loopback alone.
//
// The page asks with words as the command line takes them, flag by flag, and gets a stream of records: the plan, the
// frame in ever finer drafts, figures, verdicts of the seams, or the error with the flag that it belongs to. Everything
// that it shows is worked out here, by the rooms that make and proof use.
package rehearsal
