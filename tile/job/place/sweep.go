package place

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// sweepFolder takes away what runs that were killed left in a job's folder: hidden files of reprints and trials that
// nobody holds. In any other folder, files of such names may be someone else's.
func sweepFolder(folder string) {
	if !there(filepath.Join(folder, JobFile)) {
		return
	}
	for _, name := range hiddenIn(folder) {
		if isBeside(strings.TrimSuffix(strings.TrimPrefix(name, "."), unfinishedSuffix)) {
			sweep(filepath.Join(folder, name), func(path string, info fs.FileInfo) {
				if info.Mode().IsRegular() {
					os.Remove(path)
				}
			})
		}
	}
}

// sweepBeside takes away the hidden folders that makes which were killed left in a folder: those that nobody holds and
// that have nothing in them but what makes of a new job. One with an old job in it, which may have no other place, is
// left to the next make into that place.
func sweepBeside(parent string) {
	for _, name := range hiddenIn(parent) {
		sweep(filepath.Join(parent, name), func(path string, _ fs.FileInfo) {
			made := filepath.Join(path, newJobFolder)
			entries, err := os.ReadDir(path)
			if err != nil || len(entries) != 1 || entries[0].Name() != newJobFolder ||
				mayReplace(made, made, true) != nil {
				return
			}
			if os.RemoveAll(made) == nil {
				os.Remove(path)
			}
		})
	}
}

// sweep lets remove take away what lies at path, while it is held: nothing where another run has it, or locks can't
// tell. What can't be taken away stays, and does no harm.
func sweep(path string, remove func(path string, info fs.FileInfo)) {
	lock, err := hold(path)
	if err != nil {
		return
	}
	defer release(lock)
	if info, err := lock.Stat(); err == nil {
		remove(path, info)
	}
}

// hiddenIn are the hidden names in a folder.
func hiddenIn(folder string) (names []string) {
	entries, _ := os.ReadDir(folder) // one that can't be read is told of by whoever writes there
	for _, e := range entries {
		if IsUnfinished(e.Name()) {
			names = append(names, e.Name())
		}
	}
	return names
}
