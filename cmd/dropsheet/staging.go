package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// jobFiles is what make writes into a job's folder, in the order that it is written; reprints come beside them.
var jobFiles = []string{"sheets.pdf", "guide.pdf", "proof.png", "seams.png", jobFile}

// besidePatterns match what other commands write there.
var besidePatterns = []string{"reprint-*.pdf", "proof-*.png", "seams-*.png"}

// staging is a folder that is filled out of sight and put in its place when it is whole.
type staging struct {
	final, temporary string
	parent           string // the uppermost folder that had to be made for it, or empty
}

// newStaging makes a hidden folder beside the final one. A final folder that has anything in it is refused, unless force is set and
// it holds nothing but what dropsheet writes; so is one that holds the artwork.
func newStaging(final string, force bool, artwork string) (*staging, error) {
	if real, err := filepath.EvalSymlinks(final); err == nil {
		final = real // a link stays, and what it names is replaced
	}
	final = filepath.Clean(final)
	if base := filepath.Base(final); base == "." || base == ".." || base == string(filepath.Separator) {
		return nil, fmt.Errorf("output folder %q can't be put in its place when it is done: name a new folder with --out", final)
	}
	if err := mayReplace(final, force); err != nil {
		return nil, err
	}
	if sameFile(final, filepath.Dir(artwork)) {
		return nil, fmt.Errorf("output folder %q holds the artwork itself, and would be replaced with it: choose another with --out", final)
	}
	parent := filepath.Dir(final)
	made := firstMissing(parent)
	if err := os.MkdirAll(parent, 0o777); err != nil {
		return nil, fmt.Errorf("folder %q can't be made: %w; choose another with --out", parent, err)
	}
	temporary, err := os.MkdirTemp(parent, "."+filepath.Base(final)+".unfinished-*")
	if err != nil {
		return nil, fmt.Errorf("folder %q can't be written: %w; choose another with --out", parent, err)
	}
	if err := os.Chmod(temporary, 0o755); err != nil { // MkdirTemp keeps others out; a finished job is like any folder
		return nil, errors.Join(err, os.RemoveAll(temporary))
	}
	return &staging{final, temporary, made}, nil
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

// mayReplace tells why a folder can't be put at path.
func mayReplace(path string, force bool) error {
	entries, err := os.ReadDir(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf("output folder %q can't be used: %w; choose another with --out", path, err)
	case len(entries) == 0:
		return nil
	case !force:
		return fmt.Errorf("output folder %q is not empty: choose another with --out, or give --force to replace the job in it", path)
	}
	for _, e := range entries {
		beside := slices.ContainsFunc(besidePatterns, func(pattern string) bool {
			match, _ := filepath.Match(pattern, e.Name()) // the patterns are well formed
			return match
		})
		if !beside && !slices.Contains(jobFiles, e.Name()) {
			return fmt.Errorf("output folder %q holds %q, which is not dropsheet's: choose another with --out", path, e.Name())
		}
	}
	return nil
}

// file is where a file of the folder is written.
func (s *staging) file(name string) string { return filepath.Join(s.temporary, name) }

// finish puts the folder in its place. What was there before is kept aside until the new one stands.
func (s *staging) finish() error {
	old := s.temporary + "-old"
	err := os.Rename(s.final, old)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("the old folder %q can't be moved aside: %w", s.final, err)
	}
	replaced := err == nil
	if err := os.Rename(s.temporary, s.final); err != nil {
		err = fmt.Errorf("the finished folder can't be put at %q: %w", s.final, err)
		if replaced {
			err = errors.Join(err, os.Rename(old, s.final))
		}
		return err
	}
	if replaced {
		return os.RemoveAll(old)
	}
	return nil
}

// discard removes what was written so far, and the folders that were made for it.
func (s *staging) discard() error {
	if s.parent != "" {
		return os.RemoveAll(s.parent)
	}
	return os.RemoveAll(s.temporary)
}
