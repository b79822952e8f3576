//go:build unix

package readfile

import (
	"errors"
	"io/fs"
	"net"
	"os"
	"path/filepath"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// TestOnlyRegularFiles: whatever else has a name in a folder is refused, and nobody waits for it.
func TestOnlyRegularFiles(t *testing.T) {
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	require.NoError(t, os.WriteFile(at("file"), []byte("text"), 0o600))
	require.NoError(t, os.Mkdir(at("folder"), 0o700))
	require.NoError(t, syscall.Mkfifo(at("pipe"), 0o600))
	listening, err := net.Listen("unix", at("socket"))
	require.NoError(t, err)
	defer listening.Close()
	links := map[string]string{"to-file": "file", "to-pipe": "pipe", "to-null": os.DevNull, "to-none": "none"}
	for link, to := range links {
		require.NoError(t, os.Symlink(to, at(link)))
	}
	for name, says := range map[string]string{
		"file": "", "to-file": "", "folder": "it is a folder", "pipe": "it is a pipe", "to-pipe": "it is a pipe",
		"socket": "it is a socket", "to-null": "it is a device",
	} {
		t.Run(name, func(t *testing.T) {
			text, err := soon(t, func() ([]byte, error) { return All(at(name), 4) })
			if says == "" {
				require.NoError(t, err)
				require.Equal(t, "text", string(text))
				return
			}
			require.EqualError(t, err, says)
			require.True(t, errors.As(err, new(*NotRegularError)))
		})
	}
	_, err = All(at("to-none"), 4)
	require.ErrorIs(t, err, fs.ErrNotExist)
	_, err = All(at("file"), 3)
	require.EqualError(t, err, "it has over 3 bytes")
}

// TestNowNeverWaits: a name that has come to stand for a pipe since it was looked at.
func TestNowNeverWaits(t *testing.T) {
	pipe := filepath.Join(t.TempDir(), "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	f, err := soon(t, func() (*os.File, error) { return Now(pipe) })
	require.NoError(t, err)
	require.NoError(t, f.Close())
}

// soon fails the test where do takes its time.
func soon[T any](t *testing.T, do func() (T, error)) (result T, err error) {
	t.Helper()
	done := make(chan struct{})
	go func() {
		defer close(done)
		result, err = do()
	}()
	select {
	case <-done:
	case <-time.After(10 * time.Second):
		t.Fatal("it waits")
	}
	return result, err
}

// TestOpenIn: a regular file in a folder, and nothing that a link leads to.
func TestOpenIn(t *testing.T) {
	folder := t.TempDir()
	at := func(name string) string { return filepath.Join(folder, name) }
	require.NoError(t, os.MkdirAll(at("job/sub"), 0o700))
	require.NoError(t, os.WriteFile(at("job/file"), []byte("text"), 0o600))
	require.NoError(t, os.WriteFile(at("other"), []byte("other"), 0o600))
	require.NoError(t, syscall.Mkfifo(at("job/pipe"), 0o600))
	for link, to := range map[string]string{"job/beside": "file", "job/out": "../other", "job/whole": at("other"),
		"linked": "job"} {
		require.NoError(t, os.Symlink(to, at(link)))
	}
	f, info, err := OpenIn(at("job"), "file")
	require.NoError(t, err)
	require.EqualValues(t, 4, info.Size())
	require.NoError(t, f.Close())
	for _, c := range [][2]string{{"job", "beside"}, {"job", "out"}, {"job", "whole"}, {"job", "../other"}, {"job", "sub"},
		{"job", "pipe"}, {"job", "none"}, {"linked", "file"}, {"none", "file"}, {"other", "file"}} {
		_, err := soon(t, func() (*os.File, error) {
			f, _, err := OpenIn(at(c[0]), c[1])
			return f, err
		})
		require.Error(t, err, "%v", c)
	}
}
