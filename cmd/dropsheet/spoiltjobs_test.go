package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// TestSpoiltJobsRun runs spoilt jobs with their artwork there: an error or a result, within memory and time.
func TestSpoiltJobsRun(t *testing.T) {
	const seed, runs, mostBytes = 13, 24, 1_000_000_000
	t.Logf("seed %d", seed)
	s := jobtest.NewSpoiler(seed)
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art)
	path := filepath.Join(folder, place.JobFile)
	whole, err := os.ReadFile(path)
	require.NoError(t, err)
	done, most := 0, 0
	for i := 0; done < runs; i++ {
		require.NoError(t, os.WriteFile(path, s.Spoil(t, whole), 0o600))
		if j, err := job.Read(path); err != nil || j.Artwork.File == "" {
			continue
		}
		for _, args := range [][]string{
			{"reprint", folder, "R1C1", "--force"}, {"proof", folder, "--pixels", "24x16", "--samples", "1", "--force"},
			{"seams", folder},
		} {
			what := fmt.Sprintf("try %d, %s", i, args[0])
			var stdout, stderr string
			var code int
			took := jobtest.Bounded(t, what, func() { stdout, stderr, code = dropsheet(t, args...) })
			most = max(most, took)
			require.Less(t, took, mostBytes, what)
			require.Contains(t, []int{exitDone, exitFailed, exitWrongWords}, code, what)
			require.NotContains(t, stdout+stderr, "\x1b", what)
			if args[0] == "seams" && code == exitDone { // the others repeat the job's name and check code
				require.NotContains(t, stdout, "NaN", what)
				require.NotContains(t, stdout, "Inf", what)
			}
		}
		done++
	}
	t.Logf("%d jobs; most memory %.1f MB", done, float64(most)/1e6)
}
