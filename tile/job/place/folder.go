package place

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
)

// Folder is a job's folder that is filled out of sight and put in its place when it is whole. Until then it lies in
// a hidden folder beside that place, which the run holds.
type Folder struct {
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

// NewFolder makes a hidden folder beside the final one, and puts right what a killed run left there. A final
// folder that has anything in it is refused, unless force is set and it holds nothing but what dropsheet
// writes; so is one that holds the artwork, unless that is empty, and one that another run is at work on.
func NewFolder(final string, force bool, artwork string) (*Folder, error) {
	final = filepath.Clean(Real(final)) // a link stays, and what it names is replaced
	if base := filepath.Base(final); base == "." || base == ".." || base == string(filepath.Separator) {
		return nil, fmt.Errorf("output folder %q can't be put in its place when it is done\n"+
			"hint: name a new folder with --out",
			final)
	}
	if artwork != "" && holds(final, artwork) {
		return nil, fmt.Errorf("output folder %q holds the artwork itself, and would be replaced with it\n"+
			"hint: choose another "+
			"with --out", final)
	}
	if mounted(final) {
		return nil, fmt.Errorf("output folder %q is where something is mounted, and can't be replaced\n"+
			"hint: name a new folder in "+
			"it with --out", final)
	}
	f := &Folder{final: final, force: force, parent: firstMissing(filepath.Dir(final))}
	if err := f.claim(); err != nil {
		return nil, errors.Join(err, f.discardParents())
	}
	sweepBeside(filepath.Dir(f.final))
	if err := f.begin(); err != nil {
		if left := f.discard(); left != nil && left.Error() != err.Error() {
			err = errors.Join(err, left)
		}
		return nil, err
	}
	return f, nil
}

// claim makes the hidden folder, and those above it.
func (f *Folder) claim() (err error) {
	parent := filepath.Dir(f.final)
	for range claimTries {
		if err := os.MkdirAll(parent, 0o777); err != nil {
			return fmt.Errorf("folder %q can't be made: %w\nhint: choose another with --out", parent, Plainly(err))
		}
		f.temporary, f.lock, err = claimFolder(f.final)
		if !errors.Is(err, fs.ErrNotExist) {
			break // else another run that failed has taken away the folder above
		}
	}
	switch {
	case errors.Is(err, errBusy):
		return fmt.Errorf("output folder %q: %w\nhint: choose another with --out", f.final, err)
	case err != nil:
		return fmt.Errorf("folder %q can't be written: %w\nhint: choose another with --out", parent, Plainly(err))
	}
	f.held = true
	return nil
}

// begin takes away what a killed run left, puts an old job back that it had moved aside, and makes the folder to fill.
func (f *Folder) begin() error {
	made, old := filepath.Join(f.temporary, newJobFolder), filepath.Join(f.temporary, oldJobFolder)
	if there(made) && there(old) {
		if err := f.putBack(old); err != nil {
			return err
		}
	}
	if err := f.clear(); err != nil {
		return err
	}
	if err := f.mayReplaceJob(f.final); err != nil {
		return err
	}
	if there(f.final) {
		if err := writable(f.final); err != nil {
			return fmt.Errorf("output folder %q can't be replaced: %w\nhint: choose another with --out", f.final, Plainly(err))
		}
	}
	if err := os.Mkdir(made, 0o777); err != nil {
		return fmt.Errorf("folder %q can't be written: %w\n"+
			"hint: choose another with --out", filepath.Dir(f.final), Plainly(err))
	}
	return nil
}

// Final is where the folder comes to stand; where a link names it, where that leads.
func (f *Folder) Final() string { return f.final }

// Gone tells that the unfinished folder was removed by someone else.
func (f *Folder) Gone() error {
	if made := filepath.Join(f.temporary, newJobFolder); !there(made) {
		return fmt.Errorf("the hidden folder %q, in which the job was being made, was removed meanwhile\nhint: run it again",
			f.temporary)
	}
	return nil
}

// File is where a file of the folder is written.
func (f *Folder) File(name string) string { return filepath.Join(f.temporary, newJobFolder, name) }

// clear empties the hidden folder. A job folder in it that came to hold anything else stays, with an error.
func (f *Folder) clear() error {
	for _, name := range []string{newJobFolder, oldJobFolder} {
		path := filepath.Join(f.temporary, name)
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
func (f *Folder) clean() error {
	if !f.held {
		return nil
	}
	f.held = false
	defer release(f.lock)
	if f.onlyOld {
		return errors.New("it has the old job")
	}
	if err := f.clear(); err != nil {
		return err
	}
	if err := os.Remove(f.temporary); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	return nil
}

// Discard removes what was written so far, and the folders that were made for it, of a folder that was not finished.
func (f *Folder) Discard() error {
	if err := f.discard(); err != nil {
		return fmt.Errorf("an unfinished folder is left at %q: %w", f.temporary, err)
	}
	return nil
}

// discard is Discard in the system's own words.
func (f *Folder) discard() error { return errors.Join(f.clean(), f.discardParents()) }

// discardParents removes the folders that were made above the final one, but for those that something has come into.
func (f *Folder) discardParents() error {
	if f.parent == "" {
		return nil
	}
	for path := filepath.Dir(f.final); ; path = filepath.Dir(path) {
		if err := os.Remove(path); err != nil || path == f.parent {
			return nil // others use it by now, or it was never made
		}
	}
}
