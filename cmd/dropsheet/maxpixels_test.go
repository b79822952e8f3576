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
		{"seams", job}, {"reprint", job, "all", "--out", out + ".pdf"}, {"check", job},
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
