package place

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"dropsheet/tile/readfile"
)

// mayReplace tells why a folder can't be put in place of the one at path, which is called name.
func mayReplace(path, name string, force bool) error {
	entries, err := os.ReadDir(path)
	switch {
	case errors.Is(err, fs.ErrNotExist) && there(path):
		return fmt.Errorf("output folder %q is a link to what is not there\nhint: choose another with --out", name)
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("output folder %q can't be used: %w\nhint: choose another with --out", name, Plainly(err))
	case len(entries) == 0:
		return nil
	case !force:
		return fmt.Errorf("output folder %q is not empty\nhint: choose another with --out, or give --force to replace the "+
			"job in it", name)
	}
	copied := copyIn(path)
	for _, e := range entries {
		switch {
		case e.IsDir() || !isOurs(e.Name()) && !copied(e.Name()):
			return fmt.Errorf("output folder %q holds %q, which is not dropsheet's\n"+
				"hint: choose another with --out", name, e.Name())
		case IsUnfinished(e.Name()):
			lock, err := hold(filepath.Join(path, e.Name()))
			if errors.Is(err, errBusy) {
				return fmt.Errorf("output folder %q: a file in it is being written\nhint: wait until that is done", name)
			}
			release(lock)
		}
	}
	return nil
}

// copyIn tells which file of a folder is the artwork's copy: the one that its job names, so that no artwork
// that someone keeps there is taken for it. In a folder that has no job yet it is any that may be called so.
func copyIn(folder string) func(name string) bool {
	path := filepath.Join(folder, JobFile)
	none := func(string) bool { return false }
	info, err := os.Lstat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return IsCopyName
	case err != nil || !info.Mode().IsRegular():
		return none
	}
	var job struct{ Artwork struct{ Copy string } }
	text, err := readfile.All(path, MostJobBytes)
	if err != nil || json.Unmarshal(text, &job) != nil {
		return none
	}
	return func(name string) bool { return IsCopyName(name) && name == job.Artwork.Copy }
}

// holdsJob refuses a folder that has something in it and no job: it was not made here, whatever its files are called.
func holdsJob(path, name string) error {
	entries, err := os.ReadDir(path)
	if err != nil || len(entries) == 0 {
		return nil // nothing there, or told of by mayReplace
	}
	for _, e := range entries {
		if e.Name() == JobFile && e.Type().IsRegular() {
			return nil
		}
	}
	return fmt.Errorf("output folder %q is not empty and holds no job (%s) to replace\n"+
		"hint: choose another with --out", name,
		JobFile)
}
