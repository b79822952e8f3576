//go:build !unix

package main

// mayOpenFiles has nothing to say here: there is no such bound.
func mayOpenFiles() error { return nil }
