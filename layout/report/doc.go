// Package report turns a plan into facts: what is told of it, in words and figures, once for all who tell it.
//
// A terminal, the assembly guide, JSON and a page lay these facts out; none of them works a figure out, rounds
// it or words it anew. A figure keeps its value in the unit that its name in JSON says: millimetres, shares of
// 1, pixels of the frame. Text is lower case without a full stop, so that it can stand alone or in a sentence.
package report
