//go:build unix

package place

import (
	"errors"
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"
)

// A write that fails midway, or can't be put in its place, leaves what was there and nothing else.
func TestReplaceFileIsAllOrNothing(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "printers.json")
	require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
	full := errors.New("the disk is full")
	err := ReplaceFile(t.Context(), path, func(w io.Writer) error {
		_, err := io.WriteString(w, "half of the n")
		return errors.Join(err, full)
	})
	require.ErrorIs(t, err, full)
	requireOnly(t, folder, "printers.json")
	left, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, "old", string(left))

	taken := filepath.Join(folder, "taken")
	require.NoError(t, os.MkdirAll(filepath.Join(taken, "within"), 0o755))
	err = ReplaceFile(t.Context(), taken, func(w io.Writer) error { return nil })
	require.Error(t, err, "a folder is in the way")
	require.NotContains(t, err.Error(), unfinishedSuffix, "the hidden name is nobody's business")
	requireOnly(t, folder, "printers.json", "taken")

	nowhere := filepath.Join(folder, "nowhere", "printers.json")
	require.Error(t, ReplaceFile(t.Context(), nowhere, func(io.Writer) error { return nil }))
}

// Where the printers' file is a link, the file that it names is replaced, and the link stays.
func TestReplaceFileKeepsLinks(t *testing.T) {
	elsewhere, folder := t.TempDir(), t.TempDir()
	target, link := filepath.Join(elsewhere, "kept.json"), filepath.Join(folder, "printers.json")
	require.NoError(t, os.WriteFile(target, []byte("old"), 0o600))
	require.NoError(t, os.Symlink(target, link))
	require.NoError(t, ReplaceFile(t.Context(), link, func(w io.Writer) error {
		_, err := io.WriteString(w, "new")
		return err
	}))
	text, err := os.ReadFile(target)
	require.NoError(t, err)
	require.Equal(t, "new", string(text))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&os.ModeSymlink)
}

// A file that comes to the place while another is written for it is kept.
func TestFileThatCameMeanwhile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "other.pdf")
	err := WriteFile(path, false, func(io.Writer) error { return os.WriteFile(path, []byte("mine"), 0o600) })
	require.ErrorContains(t, err, "exists")
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, "mine", string(data))
	requireOnly(t, folder, "other.pdf")
}

// What is no regular file is never replaced, asked or not.
func TestOnlyFilesAreReplaced(t *testing.T) {
	whole := func(w io.Writer) error {
		_, err := io.WriteString(w, "new")
		return err
	}
	for _, c := range strange {
		path := filepath.Join(t.TempDir(), "out.png")
		t.Run(c.name, func(t *testing.T) {
			require.NoError(t, c.lay(path))
			for _, force := range []bool{false, true} {
				requireStrange(t, path, c.says, WriteFile(path, force, whole))
			}
		})
	}
}

// strange are things that are no regular files, and what is said of them.
var strange = []struct {
	name string
	lay  func(path string) error
	says string
}{
	{"a pipe", func(path string) error { return syscall.Mkfifo(path, 0o600) }, "is a pipe"},
	{"a link", func(path string) error { return os.Symlink("elsewhere", path) }, "is a link"},
	{"a folder", func(path string) error { return os.Mkdir(path, 0o700) }, "is a folder"},
}

// requireStrange checks that it stands there still, alone, and was told of.
func requireStrange(t *testing.T, path, says string, err error) {
	t.Helper()
	require.ErrorContains(t, err, says)
	require.ErrorContains(t, err, "with --out")
	requireOnly(t, filepath.Dir(path), filepath.Base(path))
	info, err := os.Lstat(path)
	require.NoError(t, err)
	require.False(t, info.Mode().IsRegular())
}

// A folder that takes the place of the one that a file is being written into does not get the file.
func TestFolderReplacedMeanwhile(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "job")
	require.NoError(t, os.Mkdir(folder, 0o755))
	err := WriteFile(filepath.Join(folder, "page.pdf"), false, func(io.Writer) error {
		return errors.Join(os.Rename(folder, folder+"-old"), os.Mkdir(folder, 0o755))
	})
	require.EqualError(t, err, `file "page.pdf" was not written: `+
		`its unfinished file was removed meanwhile, or its folder replaced`+"\nhint: run it again")
	requireOnly(t, folder)
}

// requireOnly checks that a folder holds what has these names, and nothing else.
func requireOnly(t *testing.T, folder string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	var there []string
	for _, e := range entries {
		there = append(there, e.Name())
	}
	require.ElementsMatch(t, names, there)
}
