//go:build unix

package job

import (
	"context"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/artwork"
)

// TestTakeIn: what comes through a pipe is taken into a file of its own, so much of it as a picture may be, and that
// file goes with the run.
func TestTakeIn(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	pipe := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	write := func(text string) {
		go func() { _ = os.WriteFile(pipe, []byte(text), 0) }() // read below, or what is read says that it failed
	}
	left := func() []os.DirEntry {
		entries, err := os.ReadDir(os.Getenv("TMPDIR"))
		require.NoError(t, err)
		return entries
	}
	o := Order{Artwork: pipe, Limits: artwork.Limits{Pixels: 1, Bytes: 7}}

	write("picture")
	path, remove, err := o.takeIn(t.Context())
	require.NoError(t, err)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, "picture", string(text))
	remove()
	require.Empty(t, left())

	for text, says := range map[string]string{"pictures": "over 1 MB", "": "nothing came"} {
		write(text)
		_, _, err = o.takeIn(t.Context())
		require.ErrorContains(t, err, says)
		require.ErrorContains(t, err, pipe)
		require.Empty(t, left())
	}

	kept := o
	kept.LeaveArtwork = true
	_, _, err = kept.takeIn(t.Context())
	require.True(t, IsWrongWords(err))
	require.ErrorContains(t, err, "let the job keep a copy")
}

// TestTakeInStops: nobody writes, and the wait ends with the run.
func TestTakeInStops(t *testing.T) {
	t.Setenv("TMPDIR", t.TempDir())
	pipe := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	ctx, stop := context.WithCancel(t.Context())
	time.AfterFunc(20*time.Millisecond, stop)
	_, _, err := Order{Artwork: pipe, Limits: artwork.Default}.takeIn(ctx)
	require.ErrorIs(t, err, context.Canceled)
}
