// Package told holds the program to telling one figure alike in all places: on the terminal, as JSON and in the guide.
package told
