package place

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
)

// Finish puts the folder in its place. A run that is killed on the way leaves the old one or the new one
// there, whole; where the two can't be swapped in one step it may leave neither, and the next run into that
// place puts the old one back.
func (f *Folder) Finish() error {
	made := filepath.Join(f.temporary, newJobFolder)
	err := syncFolder(made)
	if err == nil {
		err = f.putInPlace(made)
	}
	if err != nil {
		return fmt.Errorf("the finished folder can't be put at %q: %w\nhint: choose another with --out", f.final, err)
	}
	if err := errors.Join(syncFolder(filepath.Dir(f.final)), f.clean()); err != nil {
		return fmt.Errorf("the new job stands at %q, but what was there before is not all removed: %w", f.final, err)
	}
	return nil
}

// putInPlace gives the folder its final name. What was there is looked at again once nobody can add to it by
// that name, and is put back if it may not be replaced.
func (f *Folder) putInPlace(made string) error {
	if !there(f.final) {
		return Plainly(os.Rename(made, f.final)) // which fails if a folder with anything in it came there just now
	}
	if exchange(made, f.final) != nil {
		return f.moveAside(made)
	}
	if err := f.mayReplaceJob(made); err != nil {
		return errors.Join(err, exchange(made, f.final))
	}
	return nil
}

// mayReplaceJob tells why what stood in the final place, and stands at path now, may not be replaced.
func (f *Folder) mayReplaceJob(path string) error {
	if err := mayReplace(path, f.final, f.force); err != nil {
		return err
	}
	return holdsJob(path, f.final)
}

// moveAside is putInPlace where two folders can't be swapped in one step.
func (f *Folder) moveAside(made string) error {
	old := filepath.Join(f.temporary, oldJobFolder)
	if err := os.Rename(f.final, old); err != nil {
		return Plainly(err)
	}
	err := f.mayReplaceJob(old)
	if err == nil {
		err = Plainly(os.Rename(made, f.final))
	}
	if err != nil {
		return errors.Join(err, f.putBack(old))
	}
	return nil
}

// putBack moves the old job to its place again.
func (f *Folder) putBack(old string) error {
	if err := os.Rename(old, f.final); err != nil {
		f.onlyOld = true
		return fmt.Errorf("the old job, which was moved aside to %q, can't be put back to %q: %w\n"+
			"hint: move one of the two away",
			old, f.final, Plainly(err))
	}
	return nil
}
