// Package readfile opens the files that the program reads: regular ones and no others, without waiting for anybody.
//
// What a path names is looked at before it is opened, since merely opening a device may do something to it, and again
// once it is open, since the name may stand for something else by then.
package readfile

import (
	"fmt"
	"io"
	"io/fs"
	"os"
)

// NotRegularError tells of something that is no regular file.
type NotRegularError struct{ Mode fs.FileMode }

func (e *NotRegularError) Error() string { return "it is " + Kind(e.Mode) }

// Kind says what a thing of that mode is: a folder, a link, a pipe, a socket, a device or a regular file.
func Kind(mode fs.FileMode) string {
	switch {
	case mode.IsRegular():
		return "a regular file"
	case mode.IsDir():
		return "a folder"
	case mode&fs.ModeSymlink != 0:
		return "a link"
	case mode&fs.ModeNamedPipe != 0:
		return "a pipe"
	case mode&fs.ModeSocket != 0:
		return "a socket"
	}
	return "a device"
}

// Open opens a regular file and returns what is known of it. Anything else is a NotRegularError.
func Open(path string) (*os.File, fs.FileInfo, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, nil, err
	}
	if !info.Mode().IsRegular() {
		return nil, nil, &NotRegularError{info.Mode()}
	}
	f, err := Now(path)
	if err != nil {
		return nil, nil, err
	}
	if info, err = f.Stat(); err == nil && !info.Mode().IsRegular() {
		err = &NotRegularError{info.Mode()}
	}
	if err != nil {
		f.Close() // nothing was written to it
		return nil, nil, err
	}
	return f, info, nil
}

// Now opens whatever path names to be read, a folder too, and never waits for a pipe's writer.
func Now(path string) (*os.File, error) { return os.OpenFile(path, os.O_RDONLY|atOnce, 0) }

// All is what a regular file of at most so many bytes holds.
func All(path string, most int64) ([]byte, error) {
	f, _, err := Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	data, err := io.ReadAll(io.LimitReader(f, most+1))
	if err == nil && int64(len(data)) > most {
		err = fmt.Errorf("it has over %d bytes", most)
	}
	return data, err
}
