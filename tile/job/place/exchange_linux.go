package place

import (
	"errors"

	"golang.org/x/sys/unix"
)

// exchange swaps what two names name, in one step. Not every file system can.
func exchange(a, b string) error {
	return unix.Renameat2(unix.AT_FDCWD, a, unix.AT_FDCWD, b, unix.RENAME_EXCHANGE)
}

// renameNew is os.Rename to a name that nothing has: an error where something has it, and errors.ErrUnsupported where
// the file system can't tell.
func renameNew(from, to string) error {
	err := unix.Renameat2(unix.AT_FDCWD, from, unix.AT_FDCWD, to, unix.RENAME_NOREPLACE)
	if errors.Is(err, unix.EINVAL) { // renameat2(2): the file system doesn't know that flag
		return errors.ErrUnsupported
	}
	return err
}
