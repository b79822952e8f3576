//go:build unix

package main

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestSizeOfWhatIsPipedIn: size tells the same of a picture that comes through a pipe as of its file, and leaves no
// copy of it.
func TestSizeOfWhatIsPipedIn(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	picture, folder := pngBytes(t), t.TempDir()
	file, pipe := filepath.Join(folder, "picture.png"), filepath.Join(folder, "pipe")
	require.NoError(t, os.WriteFile(file, picture, 0o600))
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	size := func(text []byte) (stdout, stderr string, code int) {
		go func() { _ = os.WriteFile(pipe, text, 0) }() // read by size, or what it says tells that this failed
		return dropsheet(t, "size", pipe, "--print-size", "60cm")
	}

	want, _, code := dropsheet(t, "size", file, "--print-size", "60cm")
	require.Equal(t, exitDone, code)
	got, stderr, code := size(picture)
	require.Equal(t, exitDone, code, stderr)
	require.Equal(t, want, got)
	requireEmpty(t, os.Getenv("TMPDIR"))

	_, stderr, code = size([]byte("a harbour at dusk, in words"))
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "the artwork that comes through the pipe")
	require.NotContains(t, stderr, os.Getenv("TMPDIR"), "a name that nobody knows")
	requireEmpty(t, os.Getenv("TMPDIR"))
}
