//go:build !unix

package readfile

// atOnce is nothing here: no pipe stands in a folder.
const atOnce = 0
