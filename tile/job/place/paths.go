package place

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// there tells whether anything has that name.
func there(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// firstMissing is the uppermost folder of a path that is not there, or empty when all are.
func firstMissing(path string) (missing string) {
	for {
		if _, err := os.Lstat(path); err == nil {
			return missing
		}
		missing = path
		up := filepath.Dir(path)
		if up == path {
			return missing
		}
		path = up
	}
}

// Real is a path by which it can be found whatever the links on the way to it become: those of what is there of it are
// followed.
func Real(path string) string {
	if real, err := filepath.EvalSymlinks(path); err == nil {
		return real
	}
	if up := filepath.Dir(path); up != path && filepath.Base(path) != ".." {
		return filepath.Join(Real(up), filepath.Base(path))
	}
	return path
}

// sameFile tells whether two paths name one file or folder that is there.
func sameFile(a, b string) bool {
	infoA, errA := os.Stat(a)
	infoB, errB := os.Stat(b)
	return errA == nil && errB == nil && os.SameFile(infoA, infoB)
}

// holds tells whether a folder holds a file, under whatever name or link.
func holds(folder, file string) bool {
	if sameFile(folder, filepath.Dir(file)) {
		return true
	}
	entries, _ := os.ReadDir(folder) // one that can't be read is told of later
	return slices.ContainsFunc(entries,
		func(e fs.DirEntry) bool { return sameFile(filepath.Join(folder, e.Name()), file) })
}
