package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// A job file whose figures were changed by hand still holds together, but its sheets would not fit those that
// are printed: reprint refuses it, and what only looks at it warns.
func TestJobChangedByHand(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "2")
	path := filepath.Join(folder, place.JobFile)
	made, err := os.ReadFile(path)
	require.NoError(t, err)
	changed := strings.Replace(string(made), `"lap_mm": 10`, `"lap_mm": 12`, 1)
	require.NotEqual(t, string(made), changed)
	require.NoError(t, os.WriteFile(path, []byte(changed), 0o600))

	_, stderr, code := dropsheet(t, "reprint", folder, "R1C1")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "job.json was changed since it was made, and what it prints won't fit the sheets "+
		"that say ")
	require.NoFileExists(t, filepath.Join(folder, "reprint-R1C1.pdf"))
	for _, words := range [][]string{{"proof", folder, "--pixels", "24x16", "--samples", "1"}, {"seams", folder}} {
		_, stderr, code := dropsheet(t, words...)
		require.Equal(t, exitDone, code, stderr)
		require.Contains(t, stderr, "warning: job.json was changed since it was made: this goes by what it says now")
	}

	require.NoError(t, os.WriteFile(path, made, 0o600))
	_, stderr, code = dropsheet(t, "reprint", folder, "R1C1")
	require.Equal(t, exitDone, code, stderr)
}
