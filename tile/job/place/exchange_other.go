//go:build !linux

package place

import "errors"

// exchange would swap what two names name in one step, which is done on Linux only.
func exchange(_, _ string) error { return errors.ErrUnsupported }
