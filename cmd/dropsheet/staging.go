package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// staging is a folder that is filled out of sight and put in its place when it is whole. It lies in a hidden
// folder beside that place, which the run holds.
type staging struct {
	final     string
	force     bool
	temporary string   // the hidden folder
	held      bool     // nobody else may touch it
	lock      *os.File // what holds it, or nil where there are no locks
	onlyOld   bool     // it has the only copy of the old job, which could not be put back
	parent    string   // the uppermost folder that had to be made for it, or empty
}

// What lies in the hidden folder. The old job is there only where two folders can't be swapped in one step;
// while the new one is there too, the old one has no other place.
const (
	newJobFolder = "new"
	oldJobFolder = "old"
)

// newStaging makes a hidden folder beside the final one, and puts right what a killed run left there. A final
// folder that has anything in it is refused, unless force is set and it holds nothing but what dropsheet
// writes; so is one that holds the artwork, and one that another run is at work on.
func newStaging(final string, force bool, artwork string) (*staging, error) {
	if real, err := filepath.EvalSymlinks(final); err == nil {
		final = real // a link stays, and what it names is replaced
	}
	final = filepath.Clean(final)
	if base := filepath.Base(final); base == "." || base == ".." || base == string(filepath.Separator) {
		return nil, fmt.Errorf("output folder %q can't be put in its place when it is done: name a new folder with --out",
			final)
	}
	if holds(final, artwork) {
		return nil, fmt.Errorf("output folder %q holds the artwork itself, and would be replaced with it: choose another "+
			"with --out", final)
	}
	s := &staging{final: final, force: force, parent: firstMissing(filepath.Dir(final))}
	if err := s.claim(); err != nil {
		return nil, errors.Join(err, s.discardParents())
	}
	if err := s.begin(); err != nil {
		return nil, errors.Join(err, s.discard())
	}
	return s, nil
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

// claim makes the hidden folder, and those above it.
func (s *staging) claim() (err error) {
	parent := filepath.Dir(s.final)
	for range claimTries {
		if err := os.MkdirAll(parent, 0o777); err != nil {
			return fmt.Errorf("folder %q can't be made: %w; choose another with --out", parent, plainly(err))
		}
		s.temporary, s.lock, err = claimFolder(s.final)
		if !errors.Is(err, fs.ErrNotExist) {
			break // else another run that failed has taken away the folder above
		}
	}
	switch {
	case errors.Is(err, errBusy):
		return fmt.Errorf("output folder %q: %w, or choose another with --out", s.final, err)
	case err != nil:
		return fmt.Errorf("folder %q can't be written: %w; choose another with --out", parent, plainly(err))
	}
	s.held = true
	return nil
}

// begin takes away what a killed run left, puts an old job back that it had moved aside, and makes the folder to fill.
func (s *staging) begin() error {
	made, old := filepath.Join(s.temporary, newJobFolder), filepath.Join(s.temporary, oldJobFolder)
	if there(made) && there(old) {
		if err := s.putBack(old); err != nil {
			return err
		}
	}
	if err := s.clear(); err != nil {
		return err
	}
	if err := mayReplace(s.final, s.final, s.force); err != nil {
		return err
	}
	if err := holdsJob(s.final, s.final); err != nil {
		return err
	}
	if err := os.Mkdir(made, 0o777); err != nil {
		return fmt.Errorf("folder %q can't be written: %w; choose another with --out", filepath.Dir(s.final), plainly(err))
	}
	return nil
}

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

// sameFile tells whether two paths name one file or folder that is there.
func sameFile(a, b string) bool {
	infoA, errA := os.Stat(a)
	infoB, errB := os.Stat(b)
	return errA == nil && errB == nil && os.SameFile(infoA, infoB)
}

// file is where a file of the folder is written.
func (s *staging) file(name string) string { return filepath.Join(s.temporary, newJobFolder, name) }

// clear empties the hidden folder. A job folder in it that came to hold anything else stays, with an error.
func (s *staging) clear() error {
	for _, name := range []string{newJobFolder, oldJobFolder} {
		path := filepath.Join(s.temporary, name)
		if err := mayReplace(path, path, true); err != nil {
			return err
		}
		if err := os.RemoveAll(path); err != nil {
			return err
		}
	}
	return nil
}

// clean removes the hidden folder and lets go of it; it does nothing a second time.
func (s *staging) clean() error {
	if !s.held {
		return nil
	}
	s.held = false
	defer release(s.lock)
	if s.onlyOld {
		return errors.New("it has the old job")
	}
	if err := s.clear(); err != nil {
		return err
	}
	return os.Remove(s.temporary)
}

// discard removes what was written so far, and the folders that were made for it.
func (s *staging) discard() error { return errors.Join(s.clean(), s.discardParents()) }

// discardParents removes the folders that were made above the final one, but for those that something has come into.
func (s *staging) discardParents() error {
	if s.parent == "" {
		return nil
	}
	for path := filepath.Dir(s.final); ; path = filepath.Dir(path) {
		if err := os.Remove(path); err != nil || path == s.parent {
			return nil // others use it by now, or it was never made
		}
	}
}
