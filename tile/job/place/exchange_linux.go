package place

import "golang.org/x/sys/unix"

// exchange swaps what two names name, in one step. Not every file system can.
func exchange(a, b string) error {
	return unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
}
