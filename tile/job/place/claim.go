package place

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"time"

	"dropsheet/tile/readfile"
)

var (
	errBusy   = errors.New("another run of dropsheet is at work on it\nhint: wait until that one ends")
	errNoLock = errors.New("locks are not to be had here")
	errMoved  = errors.New("it was removed meanwhile")
)

// hold opens and locks the file or folder at path. It fails with errBusy when another run has it, errNoLock
// where the system has no locks, and errMoved when it is not at path any more.
func hold(path string) (*os.File, error) {
	before, err := os.Lstat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errMoved
	}
	if err != nil {
		return nil, err
	}
	if !before.Mode().IsRegular() && !before.IsDir() {
		return nil, fmt.Errorf("%q is in the way\nhint: remove it", path)
	}
	f, err := readfile.Now(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, errMoved
	}
	if err != nil {
		return nil, err
	}
	if err := lock(f); err != nil {
		return nil, errors.Join(err, f.Close())
	}
	// Whoever held it before may have removed it while the lock was waited for.
	opened, errOpened := f.Stat()
	now, errNow := os.Lstat(path)
	if errOpened != nil || errNow != nil || !os.SameFile(opened, now) {
		return nil, errors.Join(errMoved, f.Close())
	}
	return f, nil
}

// claimTries bounds how often a claim is begun again because a run that ended, or that took it for a dead one's, took
// it away; from the second time on after claimPause.
const (
	claimTries = 100
	claimPause = time.Millisecond
)

// claimFolder makes the hidden folder of what becomes final, or takes over one that a killed run left, with
// what is in it. The lock is nil where there are none.
func claimFolder(final string) (path string, lock *os.File, err error) {
	path = unfinished(final)
	for range claimTries {
		err := os.Mkdir(path, 0o700)
		made := err == nil
		if err != nil && !errors.Is(err, fs.ErrExist) {
			return "", nil, err
		}
		lock, err := hold(path)
		switch {
		case err == nil:
			return path, lock, nil
		case errors.Is(err, errNoLock) && made:
			return path, nil, nil
		case errors.Is(err, errMoved), errors.Is(err, errBusy) && made:
			time.Sleep(claimPause)
			continue
		case made:
			os.Remove(path) // such as where no more files may be open, which the error says
		}
		return "", nil, claimError(path, err)
	}
	return "", nil, errBusy
}

// claimFile makes the hidden file of what becomes final, in place of one that a killed run left. The lock is
// nil where there are none.
func claimFile(final string) (f, lock *os.File, err error) {
	path := unfinished(final)
	for range claimTries {
		f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
		made := err == nil
		if err != nil && !errors.Is(err, fs.ErrExist) {
			return nil, nil, err
		}
		lock, err := hold(path)
		if made && (err == nil && sameOpen(f, lock) || errors.Is(err, errNoLock)) {
			return f, lock, nil
		}
		if made {
			f.Close() // nothing was written to it
		}
		switch {
		case errors.Is(err, errMoved), errors.Is(err, errBusy) && made:
			time.Sleep(claimPause)
			continue
		case err != nil:
			if made {
				os.Remove(path) // as of a folder
			}
			return nil, nil, claimError(path, err)
		}
		if info, err := lock.Stat(); err == nil && info.IsDir() {
			return nil, nil, errors.Join(fmt.Errorf("%q is in the way\nhint: remove it", path), lock.Close())
		}
		if err := errors.Join(os.Remove(path), lock.Close()); err != nil {
			return nil, nil, err
		}
	}
	return nil, nil, errBusy
}

// awaitFile is claimFile that waits for others who have the file, for holdWait at most.
func awaitFile(ctx context.Context, final string) (f, lock *os.File, err error) {
	const holdWait, pause = 10 * time.Second, 5 * time.Millisecond
	for deadline := time.Now().Add(holdWait); ; {
		f, lock, err := claimFile(final)
		if !errors.Is(err, errBusy) || !time.Now().Before(deadline) {
			return f, lock, err
		}
		select {
		case <-ctx.Done():
			return nil, nil, ctx.Err()
		case <-time.After(pause):
		}
	}
}

// claimError says what to do where locks can't tell a living run from a dead one.
func claimError(path string, err error) error {
	if errors.Is(err, errNoLock) {
		return fmt.Errorf("%q is there, of another run that is at work or was killed\nhint: wait until it ends, or else "+
			"remove it", path)
	}
	return err
}

// sameOpen tells whether two open files are one.
func sameOpen(a, b *os.File) bool {
	infoA, errA := a.Stat()
	infoB, errB := b.Stat()
	return errA == nil && errB == nil && os.SameFile(infoA, infoB)
}

// release lets go of a lock, if there is one.
func release(lock *os.File) {
	if lock != nil {
		lock.Close() // nothing was written through it
	}
}
