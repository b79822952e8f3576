package hint

import (
	"errors"
	"fmt"
	"io/fs"
	"testing"
)

// Hints come last, whatever was wrapped round them, and none comes twice.
func TestHintsComeLast(t *testing.T) {
	first := fmt.Errorf("picture %q: %w\nhint: check the name", "a.jpg", fs.ErrNotExist)
	both := fmt.Errorf("%w\nand its copy: %w\nhint: check the name\nhint: name it with --artwork", first,
		errors.New("the file is empty\nhint: copy it again"))
	want := "picture \"a.jpg\": file does not exist\nand its copy: the file is empty\n" +
		"hint: check the name\nhint: copy it again\nhint: name it with --artwork"
	if got := Text(both); got != want {
		t.Errorf("Text = %q, want %q", got, want)
	}
}

// Without its hints an error is what it was, to those who ask for its cause.
func TestOff(t *testing.T) {
	err := Off(fmt.Errorf("job: %w\nhint: name another", fs.ErrNotExist))
	if got := fmt.Sprintf("spoilt (%v)", err); got != "spoilt (job: file does not exist)" {
		t.Errorf("got %q", got)
	}
	if !errors.Is(err, fs.ErrNotExist) {
		t.Error("the cause is lost")
	}
}

// Figures are told to the nanometre, and what users said as they said it.
func TestShortFigures(t *testing.T) {
	err := fmt.Errorf("a print of %gx%gmm is not \"%gmm\"\nhint: give %gmm or %g", 575.5, 1151.0/3, 1151.0/3, 0.1+0.2,
		1.0/3e7)
	want := "a print of 575.5x383.666667mm is not \"383.6666666666667mm\"\nhint: give 0.3mm or 3.333333e-08"
	if got := Text(err); got != want {
		t.Errorf("Text = %q, want %q", got, want)
	}
}
