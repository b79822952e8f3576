package place

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A copy's name keeps what the artwork's ends in, and is one that it would get again.
func TestCopyName(t *testing.T) {
	for name, want := range map[string]string{
		"art.png": "artwork.png", "/some/where/art.PNG": "artwork.PNG", "a.b.jpeg": "artwork.jpeg", "art.jp2": "artwork.jp2",
		"art": "artwork", "art.": "artwork", "": "artwork", ".png": "artwork.png", "art.what ever": "artwork",
		"art.png\n": "artwork", "art.\x1b[2J": "artwork", "art.käse": "artwork", "art.ninechars": "artwork",
		"folder.png/art": "artwork",
	} {
		require.Equal(t, want, CopyName(name), "%q", name)
		require.True(t, IsCopyName(want))
	}
	for _, name := range []string{"", "art.png", "artwork.", "artwork.a b", "../artwork.png", "x/artwork.png",
		"sheets.pdf"} {
		require.False(t, IsCopyName(name), "%q", name)
	}
}

// Which file of a folder is the artwork's copy is said by its job; before there is one, by the name alone.
func TestCopyIn(t *testing.T) {
	for _, c := range []struct {
		name, job string
		is, isNot []string
	}{
		{"no job yet", "", []string{"artwork.png", "artwork.tif", "artwork"}, []string{"art.png"}},
		{"a job with its copy", `{"artwork": {"copy": "artwork.png"}}`, []string{"artwork.png"},
			[]string{"artwork.tif", "artwork"}},
		{"a job without one", `{"artwork": {"file": "artwork.png"}}`, nil, []string{"artwork.png", ""}},
		{"a job that names what is none", `{"artwork": {"copy": "notes.txt"}}`, nil, []string{"notes.txt", "artwork.txt"}},
		{"a job that can't be read", `{"artwork": {"copy": "artwork.png"`, nil, []string{"artwork.png"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			if c.job != "" {
				require.NoError(t, os.WriteFile(filepath.Join(folder, JobFile), []byte(c.job), 0o600))
			}
			for _, name := range c.is {
				require.True(t, copyIn(folder)(name), name)
			}
			for _, name := range c.isNot {
				require.False(t, copyIn(folder)(name), name)
			}
		})
	}
	t.Run("a job file that is a link", func(t *testing.T) {
		folder := t.TempDir()
		require.NoError(t, os.Symlink("/dev/zero", filepath.Join(folder, JobFile)))
		require.False(t, copyIn(folder)("artwork.png"))
	})
}

// An artwork of that name that lies by itself is nobody's copy, and --force replaces it.
func TestCopyIsKeptBesideItsJob(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "artwork.png")
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o600))
	require.NoError(t, MayWrite(path, true))
	require.NoError(t, os.WriteFile(filepath.Join(folder, JobFile), []byte("{}"), 0o600))
	require.ErrorContains(t, MayWrite(path, true), "is a part of its job")
}

// TestNamesTooLong: a name that no file can have is refused before anything is made for it.
func TestNamesTooLong(t *testing.T) {
	err := MayWrite(filepath.Join(t.TempDir(), strings.Repeat("n", 256)+".png"), true) // Linux, limits.h: NAME_MAX is 255
	require.ErrorContains(t, err, "file name too long\nhint: choose another place with --out")
}
