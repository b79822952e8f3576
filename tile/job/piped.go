package job

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"

	"dropsheet/tile/artwork"
	"dropsheet/tile/job/place"
)

// StandardInput is the path that stands for what is piped into the program.
const StandardInput = "-"

// comesOnce tells whether an artwork can be read but once, from its beginning to its end: it is piped in.
func comesOnce(path string) bool {
	if path == StandardInput {
		return true
	}
	info, err := os.Stat(path)
	return err == nil && info.Mode()&fs.ModeNamedPipe != 0
}

// takeIn is TakeIn of the order's artwork, of which the job must then keep a copy.
func (o Order) takeIn(ctx context.Context) (path string, remove func(), err error) {
	if o.LeaveArtwork && comesOnce(o.Artwork) {
		return "", nil, o.mustKeep()
	}
	return TakeIn(ctx, o.Artwork, o.Limits)
}

// TakeIn takes an artwork that is piped in into a file of its own, which it returns with what removes it again, or any
// other artwork where it is. Over limits is refused. It returns ctx's error when ctx ends first.
func TakeIn(ctx context.Context, given string, limits artwork.Limits) (path string, remove func(), err error) {
	if !comesOnce(given) {
		return given, func() {}, nil
	}
	folder, err := os.MkdirTemp("", "dropsheet-piped-")
	if err != nil {
		return "", nil, place.Plainly(err)
	}
	path = filepath.Join(folder, "artwork")
	remove = func() { os.RemoveAll(folder) } // where that fails, the system clears its folder for such files
	done := make(chan error, 1)
	go func() { done <- takePiped(given, path, limits) }() // which waits for whoever writes
	select {
	case err = <-done:
	case <-ctx.Done():
		err = ctx.Err()
	}
	if err != nil {
		remove()
		return "", nil, OfPiped(given, path, err)
	}
	return path, remove, nil
}

// OfPiped says of an error of an artwork that is piped in what it is of: the file at which it was taken in has a name
// that nobody knows. Errors of any other artwork stay as they are.
func OfPiped(given, at string, err error) error {
	switch {
	case err == nil || !comesOnce(given):
		return err
	case given == StandardInput:
		return fmt.Errorf("the artwork that is piped in: %w", renamed{err, at, "standard input"})
	}
	return fmt.Errorf("the artwork that comes through the pipe %q: %w", given, renamed{err, at, given})
}

// renamed is an error that tells of a file by another name.
type renamed struct {
	error
	at, name string
}

func (e renamed) Error() string {
	return strings.ReplaceAll(e.error.Error(), strconv.Quote(e.at), strconv.Quote(e.name))
}

func (e renamed) Unwrap() error { return e.error }

// mustKeep is the error of an artwork that can't be read again without the job's copy.
func (o Order) mustKeep() error {
	return WrongWords(fmt.Errorf("artwork %q can't be read again by that name\n"+
		"hint: save it as a file first, or let the job keep a copy", o.Artwork))
}

// takePiped writes what comes through a pipe into a new file, no more of it than a picture may take of memory.
func takePiped(pipe, path string, limits artwork.Limits) (err error) {
	from := os.Stdin
	if pipe != StandardInput {
		if from, err = os.Open(pipe); err != nil {
			return place.Plainly(err)
		}
		defer from.Close()
	} else if info, err := from.Stat(); err != nil || info.Mode()&fs.ModeDevice != 0 || info.IsDir() {
		return errors.New("standard input is no pipe and no file\n" +
			"hint: pipe a picture in, or give its file in place of -")
	}
	to, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o600)
	if err != nil {
		return place.Plainly(err)
	}
	n, err := io.CopyN(to, from, limits.Bytes+1)
	if errors.Is(err, io.EOF) {
		err = nil
	}
	if closing := to.Close(); err == nil {
		err = closing
	}
	switch {
	case err != nil:
		return place.Plainly(err)
	case n == 0:
		return errors.New("nothing came\nhint: look for what went wrong where it comes from")
	case n > limits.Bytes:
		return fmt.Errorf("it has over %s, the memory that a picture may take\n"+
			"hint: scale it down, or allow more with --max-memory", artwork.InMB(limits.Bytes))
	}
	return nil
}
