package readfile

import (
	"io/fs"
	"os"
)

// OpenIn opens a regular file that lies in a folder itself: neither the folder nor the file may be a link, whoever puts
// one there in between.
func OpenIn(folder, name string) (*os.File, fs.FileInfo, error) {
	named, err := os.Lstat(folder)
	if err != nil {
		return nil, nil, err
	}
	if !named.IsDir() {
		return nil, nil, &NotRegularError{named.Mode()}
	}
	root, err := os.OpenRoot(folder)
	if err != nil {
		return nil, nil, err
	}
	defer root.Close() // it is only read
	if opened, err := root.Stat("."); err != nil || !os.SameFile(named, opened) {
		return nil, nil, &NotRegularError{fs.ModeSymlink}
	}
	info, err := root.Lstat(name)
	if err != nil {
		return nil, nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, nil, &NotRegularError{info.Mode()}
	}
	f, err := root.OpenFile(name, os.O_RDONLY|atOnce, 0)
	if err != nil {
		return nil, nil, err
	}
	if opened, err := f.Stat(); err != nil || !os.SameFile(info, opened) {
		f.Close() // nothing was written to it
		return nil, nil, &NotRegularError{fs.ModeSymlink}
	}
	return f, info, nil
}
