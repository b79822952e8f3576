//go:build unix

package readfile

import "syscall"

// atOnce keeps an open from waiting for a pipe's writer, and from making a terminal this run's own.
const atOnce = syscall.O_NONBLOCK | syscall.O_NOCTTY
