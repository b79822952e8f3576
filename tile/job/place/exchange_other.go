//go:build !linux

package place

import "errors"

// exchange would swap what two names name in one step, which is done on Linux only.
func exchange(_, _ string) error { return errors.ErrUnsupported }

// renameNew would rename to a name that nothing has, which is made sure of in one step on Linux only.
func renameNew(_, _ string) error { return errors.ErrUnsupported }
