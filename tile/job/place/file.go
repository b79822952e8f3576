package place

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"syscall"
)

// WriteFile makes a file by a function that writes it. The file appears at path only when it is whole and on
// the disk. An existing file is an error unless force is set; so is another run that is writing it.
func WriteFile(path string, force bool, write func(io.Writer) error) error {
	return WriteFileIf(path, force, write, func() error { return nil })
}

// WriteFileIf is WriteFile with a last word: the whole file appears only if mayPut has nothing against it.
func WriteFileIf(path string, force bool, write func(io.Writer) error, mayPut func() error) error {
	return writeFile(path, force, buffered(write), mayPut)
}

// WriteSeekableIf is WriteFileIf for a file that is not written from its beginning to its end.
func WriteSeekableIf(path string, force bool, write func(io.WriteSeeker) error, mayPut func() error) error {
	return writeFile(path, force, func(f *os.File) error { return write(f) }, mayPut)
}

// buffered has a file written from its beginning to its end in large pieces.
func buffered(write func(io.Writer) error) func(*os.File) error {
	return func(f *os.File) error {
		w := bufio.NewWriterSize(f, 1<<20)
		if err := write(w); err != nil {
			return err
		}
		return Plainly(w.Flush())
	}
}

// writeFile is WriteFileIf by a function that is given the file itself.
func writeFile(path string, force bool, write func(*os.File) error, mayPut func() error) (err error) {
	if err := MayWrite(path, force); err != nil {
		return err
	}
	f, lock, err := claimFile(path)
	if err != nil {
		return cantWrite(path, err)
	}
	defer release(lock)
	sweepFolder(filepath.Dir(path))
	defer func() {
		if err != nil {
			err = Plainly(err)
			if errors.Is(err, syscall.ENOSPC) || errors.Is(err, syscall.EDQUOT) {
				err = fmt.Errorf("%w\nhint: free some space, or choose another disk with --out", err)
			}
			err = fmt.Errorf("file %q was not written: %w", filepath.Base(path), err)
		}
	}()
	err = fillFile(f, path, force, write, func() error {
		if err := mayPut(); err != nil {
			return err
		}
		return MayWrite(path, force) // something may have come there meanwhile
	})
	if err != nil {
		return err
	}
	return syncFolder(filepath.Dir(path))
}

// ReplaceFile holds a file against other runs, whatever its name, and makes it by a function that writes it. It waits a
// few seconds for others that hold it, unless ctx ends. If anything fails, what stood at path stands there still, and
// nothing else is left. Where path is a link, the file that it names is replaced.
func ReplaceFile(ctx context.Context, path string, write func(io.Writer) error) error {
	real, err := filepath.EvalSymlinks(path)
	switch {
	case err == nil:
		path = real
	case there(path):
		return fmt.Errorf("%q is a link to what is not there\nhint: put that back first", path)
	}
	f, lock, err := awaitFile(ctx, path)
	if err != nil {
		return Plainly(err)
	}
	defer release(lock)
	return fillFile(f, path, true, buffered(write), func() error { return nil })
}

// fillFile writes a file that was claimed for path, and gives it that name when it is whole and on the disk, in place
// of another only if replace is set. mayPut has the last word. If anything fails, the claimed file is removed.
func fillFile(f *os.File, path string, replace bool, write func(*os.File) error, mayPut func() error) (err error) {
	defer func() {
		if err != nil {
			err = errors.Join(err, discardFile(f))
		}
	}()
	if err := write(f); err != nil {
		return err
	}
	if err := f.Sync(); err != nil { // before it has its name, so that a power cut leaves no empty file under it
		return Plainly(err)
	}
	if err := f.Close(); err != nil {
		return Plainly(err)
	}
	if err := mayPut(); err != nil {
		return err
	}
	err = Plainly(put(f.Name(), path, replace))
	// such as by a make that swaps folders, finds this file in hand and swaps them back
	if errors.Is(err, fs.ErrNotExist) {
		return errors.New("its unfinished file was removed meanwhile, or its folder replaced\nhint: run it again")
	}
	return err
}

// MayWrite tells why a file can't be put at path: something is there and force is not set or it is no regular file, it
// is one of the inputs or a part of a job, or its folder is not there.
func MayWrite(path string, force bool, inputs ...string) error {
	for _, input := range inputs {
		if sameFile(path, input) {
			return fmt.Errorf("%q is what is read here, which --force does not replace either\n"+
				"hint: choose another with --out", path)
		}
	}
	info, err := os.Lstat(path)
	switch {
	case err == nil && info.IsDir():
		return fmt.Errorf("%q is a folder\nhint: name a file with --out", path)
	case err == nil && !info.Mode().IsRegular():
		return strangeError(path, info)
	case err == nil && isKept(path):
		return fmt.Errorf("%q is a part of its job, which --force does not replace either\n"+
			"hint: choose another with --out", path)
	case err == nil && !force:
		return existsError(path)
	case errors.Is(err, syscall.ENAMETOOLONG):
		return cantWrite(path, err)
	case err == nil && mounted(path):
		return fmt.Errorf("%q is where something is mounted, and can't be replaced\nhint: choose another with --out", path)
	}
	folder := filepath.Dir(path)
	if _, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("folder %q is not there\nhint: make it first or choose another with --out", folder)
	}
	if err := writable(folder); err != nil {
		return cantWrite(path, err)
	}
	return nil
}

// cantWrite is the error of a file that the system refuses.
func cantWrite(path string, err error) error {
	return fmt.Errorf("file %q can't be written: %w\nhint: choose another place with --out", path, Plainly(err))
}

// discardFile removes an unfinished file.
func discardFile(f *os.File) error {
	if err := f.Close(); err != nil && !errors.Is(err, os.ErrClosed) {
		return Plainly(err)
	}
	if err := os.Remove(f.Name()); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return Plainly(err)
	}
	return nil
}
