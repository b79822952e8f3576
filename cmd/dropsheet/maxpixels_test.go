package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// A picture over the bound is refused with the flag and the value that let it in, by every command that reads
// one, and that value does.
func TestHintForMaxPixels(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	job := mustMake(t, art, "--max-sheets", "1")
	out := filepath.Join(t.TempDir(), "out")
	for _, words := range [][]string{
		{"size", art}, {"make", art, "--out", out + "-job", "--pixels", "120x80", "--max-sheets", "1"},
		{"proof", job, "--pixels", "24x16", "--out", out + ".png"},
		{"seams", job}, {"reprint", job, "all", "--artwork", art, "--out", out + ".pdf"},
		{"check", job},
	} {
		t.Run(words[0], func(t *testing.T) {
			stdout, stderr, code := dropsheet(t, append(words, "--max-pixels", "2399")...)
			require.Equal(t, exitFailed, code)
			require.Contains(t, stdout+stderr, "60 x 40 pixels are more than the 2399 allowed")
			// check indents it
			require.Regexp(t, `(?m)^ *hint: if there is memory for it, --max-pixels 2400 lets it in$`, stdout+stderr)
			_, stderr, code = dropsheet(t, append(words, "--max-pixels", "2400")...)
			require.Equal(t, exitDone, code, stderr)
		})
	}
	t.Run("no value is enough", func(t *testing.T) {
		giant := filepath.Join(t.TempDir(), "giant.bmp")
		require.NoError(t, os.WriteFile(giant, giantHeader(), 0o600))
		_, stderr, code := dropsheet(t, "size", giant)
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "\nhint: --max-pixels goes up to 100000000000, which is not enough here\n")
	})
}

// Likewise one that would take more memory than is allowed, and the bound reads as amounts of memory are written.
func TestHintForMaxMemory(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 700, 600)
	_, stderr, code := dropsheet(t, "size", art, "--max-memory", "1MB")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "700 x 600 pixels, stored as they are here, take some 2 MB of memory, more than the 1 MB ")
	require.Contains(t, stderr, "\nhint: if there is so much, --max-memory 2MB lets it in\n")
	for _, enough := range []string{"2MB", "0.002GB", "1 GB"} {
		_, stderr, code = dropsheet(t, "size", art, "--max-memory", enough)
		require.Equal(t, exitDone, code, stderr)
	}
	for _, wrong := range []string{"3", "3mb", "0MB", "-1GB", "1e400MB", "NaNMB", "2TB", "1001GB"} {
		_, stderr, code = dropsheet(t, "size", art, "--max-memory", wrong)
		require.Equal(t, exitWrongWords, code, wrong)
		require.Contains(t, stderr, "write it in MB or GB, such as 800MB or 2GB, from 1MB to 1000GB", wrong)
	}
}
