package main

import (
	"bytes"
	"cmp"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"dropsheet/layout"
	"dropsheet/tile/job/place"
)

// printersVersion is the version of the printers' file that this program writes and reads.
const printersVersion = 1

// maxPrintersBytes bounds the printers' file: a thousand printers take some 300 kB.
const maxPrintersBytes = 1 << 20

// printersFile is what the file holds.
type printersFile struct {
	Version  int              `json:"dropsheet_printers"`
	Printers []layout.Printer `json:"printers"` // by name
}

// printersPath is where measured printers are kept.
func printersPath() (string, error) {
	folder, err := os.UserConfigDir() // on Linux $XDG_CONFIG_HOME, or .config in the home folder
	if err != nil {
		return "", fmt.Errorf("there is no place to keep printers: %w", err)
	}
	return filepath.Join(folder, "dropsheet", "printers.json"), nil
}

// readPrinters reads the file, by name; none if it is not there. A file that does not hold together is an
// error, never taken for an empty one.
func readPrinters(path string) ([]layout.Printer, error) {
	f, err := os.Open(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("the kept printers can't be read: %w", err)
	}
	defer f.Close()
	text, err := io.ReadAll(io.LimitReader(f, maxPrintersBytes+1))
	if err != nil {
		return nil, fmt.Errorf("the kept printers can't be read: %w", err)
	}
	printers, err := decodePrinters(text)
	if err != nil {
		return nil, fmt.Errorf("%q %w", path, err)
	}
	return printers, nil
}

// decodePrinters reads the file's text and checks it.
func decodePrinters(text []byte) ([]layout.Printer, error) {
	const mend = "mend it, or move it away and measure the printers again"
	if len(text) > maxPrintersBytes {
		return nil, fmt.Errorf("is over %d bytes, too long for kept printers: %s", maxPrintersBytes, mend)
	}
	var version struct {
		Version *int `json:"dropsheet_printers"`
	}
	if err := json.Unmarshal(text, &version); err != nil {
		return nil, fmt.Errorf("does not read as kept printers (%w): %s", err, mend)
	}
	switch {
	case version.Version == nil:
		return nil, fmt.Errorf("is no file of kept printers: %s", mend)
	case *version.Version != printersVersion:
		return nil, fmt.Errorf("is of version %d and this program reads version %d: use the dropsheet that wrote it, or "+
			"move it away and measure the printers again",
			*version.Version, printersVersion)
	}
	var file printersFile
	decoder := json.NewDecoder(bytes.NewReader(text))
	decoder.DisallowUnknownFields() // a word with a slip would be lost when the file is next written
	if err := decoder.Decode(&file); err != nil {
		return nil, fmt.Errorf("does not read as kept printers (%w): %s", err, mend)
	}
	names := map[string]bool{}
	for _, p := range file.Printers {
		if err := p.Check(); err != nil {
			return nil, fmt.Errorf("does not hold together (%w): %s", err, mend)
		}
		if names[p.Name] {
			return nil, fmt.Errorf("does not hold together (printer %q is in it twice): %s", p.Name, mend)
		}
		names[p.Name] = true
	}
	sortPrinters(file.Printers)
	return file.Printers, nil
}

func sortPrinters(printers []layout.Printer) {
	slices.SortFunc(printers, func(a, b layout.Printer) int { return cmp.Compare(a.Name, b.Name) })
}

// keptPrinter returns the printer of that name from where they are kept.
func keptPrinter(name string) (*layout.Printer, error) {
	path, err := printersPath()
	if err != nil {
		return nil, err
	}
	p, err := findPrinter(path, name)
	if err != nil {
		return nil, err
	}
	return &p, nil
}

// findPrinter returns the kept printer of that name. A name that is not known is an error of the command line.
func findPrinter(path, name string) (layout.Printer, error) {
	printers, err := readPrinters(path)
	if err != nil {
		return layout.Printer{}, err
	}
	if len(printers) == 0 {
		return layout.Printer{}, wrongWords{fmt.Errorf("printer %q is not known: none is kept yet; dropsheet gauge makes "+
			"the page to measure it with", name)}
	}
	var known []string
	for _, p := range printers {
		if p.Name == strings.TrimSpace(name) {
			return p, nil
		}
		known = append(known, fmt.Sprintf("%q", p.Name))
	}
	return layout.Printer{}, wrongWords{fmt.Errorf("printer %q is not known: take %s, or measure it with "+
		"dropsheet gauge", name, strings.Join(known, ", "))}
}

// storePrinter keeps a printer beside the others. One of the same name is replaced only if force is set.
func storePrinter(path string, p layout.Printer, force bool) error {
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		return fmt.Errorf("the reading can't be kept: %w", err)
	}
	same := func(q layout.Printer) bool { return q.Name == p.Name }
	// What is kept is read once the file is held: readings kept at the same time must not lose each other.
	err := place.ReplaceFile(path, func(w io.Writer) error {
		printers, err := readPrinters(path)
		if err != nil {
			return err
		}
		if slices.ContainsFunc(printers, same) && !force {
			return fmt.Errorf("a printer %q is kept already: choose another name with --save, or give --force to replace it",
				p.Name)
		}
		printers = append(slices.DeleteFunc(printers, same), p)
		sortPrinters(printers)
		return writeJSON(w, printersFile{printersVersion, printers})
	})
	if err != nil {
		return fmt.Errorf("the reading was not kept, and %q is as it was: %w", path, err)
	}
	return nil
}
