// Package ask is the words that a user asks with: flags by name, what each takes, and what they come to together.
//
// A type stands for what one command is asked for, its fields for the words. Register gives the words their places
// in a set of flags, which a command line fills at once; Set takes one word from anywhere else, by the same name and
// with the same checks.
package ask
