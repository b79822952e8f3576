// Package printers keeps the readings of measured printers, in one file of the user's settings.
package printers

import (
	"bytes"
	"cmp"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"

	"dropsheet/layout"
	"dropsheet/tile/hint"
	"dropsheet/tile/job/place"
	"dropsheet/tile/readfile"
)

// formatVersion is the version of the printers' file that this program writes and reads.
const formatVersion = 1

// maxBytes bounds the printers' file: a thousand printers take some 300 kB.
const maxBytes = 1 << 20

// mend is what to do about a file that is not what it should be.
const mend = "mend it, or move it away and measure the printers again"

// stored is what the file holds.
type stored struct {
	Version  int              `json:"dropsheet_printers"`
	Printers []layout.Printer `json:"printers"` // by name
}

// Path is where measured printers are kept.
func Path() (string, error) {
	folder, err := os.UserConfigDir() // on Linux $XDG_CONFIG_HOME, or .config in the home folder
	if err != nil {
		return "", fmt.Errorf("there is no place to keep printers: %w", err)
	}
	return filepath.Join(folder, "dropsheet", "printers.json"), nil
}

// Read reads the printers of that file, by name; none if it is not there. A file that does not hold together is an
// error, never taken for an empty one.
func Read(path string) ([]layout.Printer, error) {
	text, err := readfile.All(path, maxBytes)
	var not *readfile.NotRegularError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil, nil
	case errors.As(err, &not):
		return nil, fmt.Errorf("%q is %s, and no file of kept printers\n"+
			"hint: move it away and measure the printers again", path,
			readfile.Kind(not.Mode))
	case err != nil:
		return nil, fmt.Errorf("the kept printers in %q can't be read: %w\nhint: %s", path, place.Plainly(err), mend)
	}
	printers, err := decode(text)
	if err != nil {
		return nil, fmt.Errorf("%q %w", path, err)
	}
	return printers, nil
}

// decode reads the file's text and checks it.
func decode(text []byte) ([]layout.Printer, error) {
	var version struct {
		Version *int `json:"dropsheet_printers"`
	}
	if err := json.Unmarshal(text, &version); err != nil {
		return nil, fmt.Errorf("does not read as kept printers (%w)\nhint: %s", hint.Off(err), mend)
	}
	switch {
	case version.Version == nil:
		return nil, fmt.Errorf("is no file of kept printers\nhint: %s", mend)
	case *version.Version != formatVersion:
		return nil, fmt.Errorf("is of version %d and this program reads version %d\n"+
			"hint: use the dropsheet that wrote it, or "+
			"move it away and measure the printers again",
			*version.Version, formatVersion)
	}
	var file stored
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields() // a word with a slip would be lost when the file is next written
	if err := decoder.Decode(&file); err != nil {
		return nil, fmt.Errorf("does not read as kept printers (%w)\nhint: %s", hint.Off(err), mend)
	}
	names := map[string]bool{}
	for _, p := range file.Printers {
		if err := p.Check(); err != nil {
			return nil, fmt.Errorf("does not hold together (%w)\nhint: %s", hint.Off(err), mend)
		}
		if names[p.Name] {
			return nil, fmt.Errorf("does not hold together (printer %q is in it twice)\nhint: %s", p.Name, mend)
		}
		names[p.Name] = true
	}
	sortByName(file.Printers)
	return file.Printers, nil
}

func sortByName(printers []layout.Printer) {
	slices.SortFunc(printers, func(a, b layout.Printer) int { return cmp.Compare(a.Name, b.Name) })
}

// Keep keeps a printer in that file, beside the others. reading makes it of the one of that name that is kept already,
// nil for none, and tells whether it takes the place of something: that is done only if force is set.
func Keep(ctx context.Context, path, name string, force bool,
	reading func(was *layout.Printer) (p layout.Printer, replaces bool, err error)) (p layout.Printer, err error) {
	with := func(kept []layout.Printer) ([]layout.Printer, error) {
		var was *layout.Printer
		if at := named(kept, name); at >= 0 {
			was = &kept[at]
		}
		var replaces bool
		if p, replaces, err = reading(was); err != nil {
			return nil, err
		}
		if replaces && !force {
			return nil, fmt.Errorf("a printer %q is kept already\nhint: choose another name with --save, or give --force to "+
				"replace what is kept of it", p.Name)
		}
		kept = append(slices.DeleteFunc(slices.Clone(kept), func(q layout.Printer) bool { return q.Name == name }), p)
		sortByName(kept)
		return kept, nil
	}
	kept, err := Read(path)
	if err == nil {
		_, err = with(kept) // what can't be leaves nothing behind, no folder either
	}
	if err != nil {
		return p, err
	}
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return p, fmt.Errorf("the reading can't be kept: %w", err)
	}
	// What is kept is read once the file is held: readings kept at the same time must not lose each other.
	if err := change(ctx, path, with); err != nil {
		return p, fmt.Errorf("the reading was not kept, and %q is as it was: %w", path, err)
	}
	return p, nil
}

// Forget leaves a printer out of that file.
func Forget(ctx context.Context, path, name string) error {
	kept, err := Read(path)
	if err != nil {
		return err
	}
	if named(kept, name) < 0 {
		return fmt.Errorf("no printer %q is kept in %q\nhint: dropsheet gauge --list tells those that are", name, path)
	}
	return change(ctx, path, func(kept []layout.Printer) ([]layout.Printer, error) {
		return slices.DeleteFunc(kept, func(q layout.Printer) bool { return q.Name == name }), nil
	})
}

// named is where the printer of a name is among those that are kept; -1 for nowhere.
func named(kept []layout.Printer, name string) int {
	return slices.IndexFunc(kept, func(p layout.Printer) bool { return p.Name == name })
}

// change writes that file anew, with what becomes of the printers that are kept in it.
func change(ctx context.Context, path string, of func(kept []layout.Printer) ([]layout.Printer, error)) error {
	return place.ReplaceFile(ctx, path, func(w io.Writer) error {
		kept, err := Read(path)
		if err != nil {
			return err
		}
		if kept, err = of(kept); err != nil {
			return err
		}
		encoder := json.NewEncoder(w)
		encoder.SetIndent("", "  ")
		return encoder.Encode(stored{formatVersion, kept})
	})
}
