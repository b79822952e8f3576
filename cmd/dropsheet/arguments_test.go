package main

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
)

// A picture can't be written under a document's name, nor a document under a picture's: the programs that
// open them go by it.
func TestOutOfAnotherKind(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1")
	t.Chdir(t.TempDir())
	for _, c := range []struct {
		words []string
		says  string
	}{
		{[]string{"proof", folder, "--pixels", "24x16", "--samples", "1", "--out", "x.jpg"},
			`--out "x.jpg": a proof is no .jpg` + "\nhint: take a name that ends in .png"},
		{[]string{"seams", folder, "--out", "x.pdf"}, `--out "x.pdf": a seam map is no .pdf` +
			"\nhint: take a name that ends in .png"},
		{[]string{"reprint", folder, "all", "--out", "x.png"},
			`--out "x.png": a reprint is no .png` + "\nhint: take a name that ends in .pdf"},
		{[]string{"gauge", "--out", "x.png"}, `--out "x.png": a gauge page is no .png` +
			"\nhint: take a name that ends in .pdf"},
	} {
		stdout, stderr, code := dropsheet(t, c.words...)
		require.Equal(t, exitWrongWords, code, stderr)
		require.Empty(t, stdout)
		require.Contains(t, stderr, c.says)
		out := c.words[len(c.words)-1]
		require.NoFileExists(t, out)
		// the extension wanted ends the message; capitals and none will do
		for _, good := range []string{"NAME" + filepath.Ext(c.says), "plain-" + c.words[0]} {
			c.words[len(c.words)-1] = good
			_, stderr, code := dropsheet(t, append(c.words, "--force")...)
			require.Equal(t, exitDone, code, stderr)
			require.FileExists(t, good)
		}
	}
}

// Standard output is the user's screen, and a file called "-" is a trap.
func TestOutOfADash(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1")
	t.Chdir(t.TempDir())
	_, stderr, code := dropsheet(t, "reprint", folder, "all", "--out", "-")
	require.Equal(t, exitWrongWords, code)
	require.Contains(t, stderr, "--out -: a reprint goes to a file, not to the screen\nhint: name one that ends in .pdf")
	require.NoFileExists(t, "-")
}
