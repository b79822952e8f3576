package job

import "errors"

// wrongWords marks an error that what was asked for is to blame for.
type wrongWords struct{ error }

func (e wrongWords) Unwrap() error { return e.error }

// WrongWords marks an error, if there is one, as the fault of what was asked for: neither a file nor the machine is
// to blame, and it comes again until it is asked otherwise.
func WrongWords(err error) error {
	if err == nil {
		return nil
	}
	return wrongWords{err}
}

// IsWrongWords tells whether an error is marked so.
func IsWrongWords(err error) bool { return errors.As(err, new(wrongWords)) }
