package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
	"dropsheet/tile/printers"
)

// --force replaces a job, never what is read, and never what only has a job's names.
func TestForceKeeps(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1")
	data, err := os.ReadFile(filepath.Join(folder, place.JobFile))
	require.NoError(t, err)
	moved := filepath.Join(folder, "..", "kept.json")
	require.NoError(t, os.WriteFile(moved, data, 0o600))
	for _, args := range [][]string{{"reprint", moved, "R1C1"}, {"proof", moved}, {"seams", moved}} {
		_, stderr, code := dropsheet(t, append(args, "--artwork", art, "--out", moved, "--force")...)
		require.NotEqual(t, exitDone, code, args)
		require.Contains(t, stderr, "is what is read here", args)
	}
	again, err := os.ReadFile(moved)
	require.NoError(t, err)
	require.Equal(t, data, again)

	t.Run("an artwork that is a link into the folder", func(t *testing.T) {
		inside := filepath.Join(folder, "proof.png")
		link := filepath.Join(t.TempDir(), "link.png")
		require.NoError(t, os.Symlink(inside, link))
		_, stderr, code := dropsheet(t, "make", link, "--out", folder, "--force", "--pixels", "120x80")
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "holds the artwork itself")
		require.FileExists(t, inside)
	})
	t.Run("the artwork's copy", func(t *testing.T) {
		inside := filepath.Join(folder, "artwork.png")
		for _, args := range [][]string{{"proof", folder}, {"reprint", folder, "all"}, {"proof", moved, "--artwork", art}} {
			_, stderr, code := dropsheet(t, append(args, "--out", inside, "--force")...)
			require.Equal(t, exitFailed, code, args)
			require.Contains(t, stderr, "--force does not replace", args)
		}
		require.Equal(t, readFolder(t, filepath.Dir(art))["pattern.png"], readFolder(t, folder)["artwork.png"])
	})
	t.Run("an artwork that someone keeps in a job's folder", func(t *testing.T) {
		old := filepath.Join(t.TempDir(), "job")
		require.NoError(t, os.Mkdir(old, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(old, place.JobFile), asVersion3(t, data), 0o600))
		own := filepath.Join(old, "artwork.tif")
		require.NoError(t, os.WriteFile(own, []byte("mine"), 0o600))
		words := []string{"make", art, "--out", old, "--force", "--pixels", "120x80", "--max-sheets", "1"}
		_, stderr, code := dropsheet(t, words...)
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, `holds "artwork.tif", which is not dropsheet's`)
		require.FileExists(t, own)

		require.NoError(t, os.Remove(own))
		_, stderr, code = dropsheet(t, words...)
		require.Equal(t, exitDone, code, stderr)
		require.NoError(t, os.WriteFile(own, []byte("mine"), 0o600))
		_, stderr, code = dropsheet(t, words...)
		require.Equal(t, exitFailed, code, "the job's own copy is another")
		require.Contains(t, stderr, `holds "artwork.tif"`)
	})
	t.Run("a folder that is no job", func(t *testing.T) {
		own := t.TempDir()
		require.NoError(t, os.WriteFile(filepath.Join(own, "guide.pdf"), []byte("mine"), 0o600))
		_, stderr, code := dropsheet(t, "make", art, "--out", own, "--force", "--pixels", "120x80")
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "holds no job")
		require.FileExists(t, filepath.Join(own, "guide.pdf"))
	})
}

// Readings kept at the same time are all there, or refused aloud.
func TestReadingsKeptAtOnce(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	const n = 12
	codes := make(chan int, n)
	for i := range n {
		go func() {
			_, _, code := dropsheet(t, "gauge", "--save", fmt.Sprintf("p%d", i), "--read", "199.2x248.5mm", "--margins",
				"4,4,4,12mm")
			codes <- code
		}()
	}
	kept := 0
	for range n {
		if <-codes == exitDone {
			kept++
		}
	}
	path, err := printers.Path()
	require.NoError(t, err)
	printers, err := printers.Read(path)
	require.NoError(t, err)
	require.Len(t, printers, kept)
	require.Positive(t, kept)
}
