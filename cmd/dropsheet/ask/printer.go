package ask

import (
	"fmt"
	"reflect"
	"strings"

	"dropsheet/layout"
	"dropsheet/tile/job"
	"dropsheet/tile/printers"
)

// keptPrinter returns the printer of that name from where they are kept.
func keptPrinter(name string) (*layout.Printer, error) {
	path, err := printers.Path()
	if err != nil {
		return nil, err
	}
	kept, err := printers.Read(path)
	if err != nil {
		return nil, err
	}
	return findPrinter(kept, name)
}

// findPrinter returns the kept printer of that name.
func findPrinter(kept []layout.Printer, name string) (*layout.Printer, error) {
	if len(kept) == 0 {
		return nil, job.WrongWords(fmt.Errorf("printer %q is not known: none is kept yet\nhint: dropsheet gauge makes "+
			"the page to measure it with", name))
	}
	var known []string
	for _, p := range kept {
		if p.Name == strings.TrimSpace(name) {
			return &p, nil
		}
		known = append(known, fmt.Sprintf("%q", p.Name))
	}
	return nil, job.WrongWords(fmt.Errorf("printer %q is not known\nhint: take %s, or measure it with "+
		"dropsheet gauge", name, strings.Join(known, ", ")))
}

// OtherPrinter warns where the printer that a job was made for is not kept here as it was read then.
func OtherPrinter(j job.Job) []string {
	then := j.Backdrop.Printer
	if then == nil {
		return nil
	}
	if now, err := keptPrinter(then.Name); err == nil && reflect.DeepEqual(now, then) {
		return nil
	}
	return []string{fmt.Sprintf("printer %q is not kept here as it was read when the job was made: dropsheet make JOB "+
		"takes the reading from the job itself", job.Printable(then.Name))}
}
