//go:build unix

package main

import (
	"errors"
	"os"
	"syscall"
)

// mostOpen is how many files a run holds open, at most, besides those that it is started with: make holds ten.
const mostOpen = 12

// mayOpenFiles tells beforehand that there are too few to be had: midway, whatever opens the next one fails, and the Go
// runtime itself where it is the first.
func mayOpenFiles() error {
	var open []int
	defer func() {
		for _, fd := range open {
			syscall.Close(fd)
		}
	}()
	for range mostOpen {
		fd, err := syscall.Open(os.DevNull, syscall.O_RDONLY|syscall.O_CLOEXEC, 0)
		if errors.Is(err, syscall.EMFILE) || errors.Is(err, syscall.ENFILE) {
			return errors.New("too few files may be open at once here\nhint: allow 64 (in a shell, ulimit -n 64), or end " +
				"other programs")
		}
		if err == nil { // else there is no such device, and nothing to count by
			open = append(open, fd)
		}
	}
	return nil
}
