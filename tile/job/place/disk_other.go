//go:build !(darwin || dragonfly || freebsd || illumos || linux || netbsd || openbsd)

package place

import "os"

// lock always fails with errNoLock here.
func lock(*os.File) error { return errNoLock }

// syncFolder does nothing here: a folder's names need no care of their own, or can get none.
func syncFolder(string) error { return nil }
