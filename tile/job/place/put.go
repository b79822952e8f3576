package place

import (
	"errors"
	"fmt"
	"io/fs"
	"os"

	"dropsheet/tile/readfile"
)

// put gives a whole file its name in place of its hidden one. What stands there is replaced only if replace is set, and
// only a regular file: it is looked at again once nobody can change it by that name, and put back if it is anything
// else.
func put(hidden, path string, replace bool) error {
	if !replace {
		switch err := renameNew(hidden, path); {
		case errors.Is(err, fs.ErrExist):
			return existsError(path)
		case !errors.Is(err, errors.ErrUnsupported):
			return err
		}
	}
	if !there(path) || exchange(hidden, path) != nil {
		return os.Rename(hidden, path)
	}
	info, err := os.Lstat(hidden)
	if err == nil && !info.Mode().IsRegular() {
		return errors.Join(strangeError(path, info), exchange(hidden, path))
	}
	if err != nil {
		return nil // another run took it for a dead one's, and away
	}
	// Held, so that a run which takes its name meanwhile loses nothing.
	old, err := hold(hidden)
	if err != nil && !errors.Is(err, errNoLock) {
		return nil // as above
	}
	defer release(old)
	return os.Remove(hidden)
}

func existsError(path string) error {
	return fmt.Errorf("file %q exists\nhint: choose another with --out, or give --force to replace it", path)
}

// strangeError refuses to put a file where what is no regular file stands.
func strangeError(path string, info fs.FileInfo) error {
	return fmt.Errorf("%q is %s, which --force does not replace either\nhint: choose another with --out", path,
		readfile.Kind(info.Mode()))
}
