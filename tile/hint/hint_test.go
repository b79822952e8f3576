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
