package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// interrupted is a console's stderr that does something at the first word, in the middle of the run.
type interrupted struct {
	bytes.Buffer
	once sync.Once
	do   func()
}

func (w *interrupted) Write(p []byte) (int, error) {
	w.once.Do(w.do)
	return w.Buffer.Write(p)
}

// What is begun of a job that is replaced before it ends is refused, with nothing written; the same job in another
// folder, as a make of the same words puts it there, is no other.
func TestJobReplacedMeanwhile(t *testing.T) {
	keepPrinters(t)
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1", "--printer", "study inkjet")
	made := readFolder(t, folder)
	lay := func(t *testing.T) {
		require.NoError(t, os.RemoveAll(folder))
		require.NoError(t, os.Mkdir(folder, 0o755))
		for name, data := range made {
			require.NoError(t, os.WriteFile(filepath.Join(folder, name), data, 0o600))
		}
	}
	writtenOver := func(t *testing.T) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, place.JobFile), []byte("{}"), 0o600))
	}
	// The reprint warns between reading the job and holding its file; the others count on a terminal while they work.
	reprint := []string{"reprint", folder, "all", "--printer", "none"}
	counting := []string{"reprint", folder, "all"}
	proof := []string{"proof", folder, "--pixels", "24x16", "--samples", "1"}
	for _, c := range []struct {
		name      string
		words     []string
		terminal  bool
		meanwhile func(t *testing.T)
		says      string // empty when it is done
	}{
		{"a reprint, and another make", reprint, false, func(t *testing.T) {
			_, stderr, code := dropsheet(t, "make", folder, "--lap", "12mm", "--force")
			require.Equal(t, exitDone, code, stderr)
		}, "was replaced meanwhile"},
		{"a reprint, and the same job in another folder of that name", reprint, false, lay, ""},
		{"a reprint elsewhere", append(reprint, "--out", filepath.Join(t.TempDir(), "out.pdf")), false, writtenOver,
			"was replaced meanwhile"},
		{"a proof", proof, true, writtenOver, "was replaced meanwhile"},
		{"a reprint whose file is held", counting, true, writtenOver, "was replaced meanwhile"},
		{"a reprint, and a job file that goes away", counting, true, func(t *testing.T) {
			require.NoError(t, os.Remove(filepath.Join(folder, place.JobFile)))
		}, "is gone meanwhile"},
	} {
		t.Run(c.name, func(t *testing.T) {
			lay(t)
			var out bytes.Buffer
			var after map[string][]byte
			errs := &interrupted{do: func() { c.meanwhile(t); after = readFolder(t, folder) }}
			code := run(context.Background(), console{out: &out, err: errs, terminal: c.terminal}, c.words)
			if c.says == "" {
				require.Equal(t, exitDone, code, errs.String())
				return
			}
			require.Equal(t, exitFailed, code, errs.String())
			require.Empty(t, out.String())
			require.Contains(t, errs.String(), c.says)
			require.Contains(t, errs.String(), "\nhint: run it again, for the job that is there now\n")
			for name := range after {
				if strings.HasSuffix(name, ".unfinished") {
					delete(after, name) // held when it was looked at
				}
			}
			require.Equal(t, after, readFolder(t, folder), "nothing is written")
			if out := c.words[len(c.words)-1]; filepath.IsAbs(out) {
				require.NoFileExists(t, out)
			}
		})
	}
}
