package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// finish puts the folder in its place. A run that is killed on the way leaves the old one or the new one
// there, whole; where the two can't be swapped in one step it may leave neither, and the next run into that
// place puts the old one back.
func (s *staging) finish() error {
	made := filepath.Join(s.temporary, newJobFolder)
	err := syncFolder(made)
	if err == nil {
		err = s.putInPlace(made)
	}
	if err != nil {
		return fmt.Errorf("the finished folder can't be put at %q: %w", s.final, err)
	}
	if err := errors.Join(syncFolder(filepath.Dir(s.final)), s.clean()); err != nil {
		return fmt.Errorf("the new job stands at %q, but what was there before is not all removed: %w", s.final, err)
	}
	return nil
}

// putInPlace gives the folder its final name. What was there is looked at again once nobody can add to it by
// that name, and is put back if it may not be replaced.
func (s *staging) putInPlace(made string) error {
	if !there(s.final) {
		return plainly(os.Rename(made, s.final)) // which fails if a folder with anything in it came there just now
	}
	if exchange(made, s.final) != nil {
		return s.moveAside(made)
	}
	if err := mayReplace(made, s.final, s.force); err != nil {
		return errors.Join(err, exchange(made, s.final))
	}
	return nil
}

// moveAside is putInPlace where two folders can't be swapped in one step.
func (s *staging) moveAside(made string) error {
	old := filepath.Join(s.temporary, oldJobFolder)
	if err := os.Rename(s.final, old); err != nil {
		return plainly(err)
	}
	err := mayReplace(old, s.final, s.force)
	if err == nil {
		err = plainly(os.Rename(made, s.final))
	}
	if err != nil {
		return errors.Join(err, s.putBack(old))
	}
	return nil
}

// putBack moves the old job to its place again.
func (s *staging) putBack(old string) error {
	if err := os.Rename(old, s.final); err != nil {
		s.onlyOld = true
		return fmt.Errorf("the old job, which was moved aside to %q, can't be put back to %q: %w; move one of the two away",
			old, s.final, plainly(err))
	}
	return nil
}
