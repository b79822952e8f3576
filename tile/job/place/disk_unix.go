//go:build darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd

package place

import (
	"errors"
	"os"
	"syscall"
)

// lock takes the lock of an open file or folder, or fails at once with errBusy or errNoLock. Closing the file
// gives it back.
func lock(f *os.File) error {
	for {
		switch err := syscall.Flock(int(f.Fd()), syscall.LOCK_EX|syscall.LOCK_NB); err {
		case nil:
			return nil
		case syscall.EINTR:
		case syscall.EWOULDBLOCK:
			return errBusy
		default:
			return errNoLock // such as a network share without locks
		}
	}
}

// syncFolder waits until a folder's names are on the disk.
func syncFolder(path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	err = f.Sync()
	if errors.Is(err, errors.ErrUnsupported) || errors.Is(err, syscall.EINVAL) {
		err = nil // not every file system can for a folder
	}
	return errors.Join(err, f.Close())
}
