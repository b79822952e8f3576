//go:build unix

package faults

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// TestJobThatIsNoFile: a job is a regular file; a pipe would be waited for without end.
func TestJobThatIsNoFile(t *testing.T) {
	root := t.TempDir()
	pipe := filepath.Join(root, "pipe")
	require.NoError(t, syscall.Mkfifo(pipe, 0o600))
	folder := filepath.Join(root, "job")
	require.NoError(t, os.MkdirAll(folder, 0o700))
	require.NoError(t, os.Symlink(pipe, filepath.Join(folder, place.JobFile)))
	nested := filepath.Join(root, "nested")
	require.NoError(t, os.MkdirAll(filepath.Join(nested, place.JobFile), 0o700))
	for _, path := range []string{pipe, folder, nested, "/dev/zero", "/dev/tty"} {
		for _, args := range [][]string{{"reprint", path, "all"}, {"proof", path}, {"seams", path}} {
			jobtest.Bounded(t, path, func() {
				_, stderr, code := programtest.Run(t, args...)
				require.Equal(t, programtest.Failed, code)
				require.Contains(t, stderr, "name a job.json or the folder that holds it")
			})
		}
	}
}

// TestSeamsOfAHostileJob: the seams of a job file are those that its sheets make, since looking at one
// without end would take as long.
func TestSeamsOfAHostileJob(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	p := hostileFolder{job: programtest.Make(t, art)}
	kept, err := os.ReadFile(filepath.Join(p.job, place.JobFile))
	require.NoError(t, err)
	seam := func(axis string, at, from, to float64, between ...string) map[string]any {
		return map[string]any{"axis": axis, "at_mm": at, "from_mm": from, "to_mm": to, "between": between}
	}
	for name, seams := range map[string][]any{
		"none":                       {},
		"one without end":            {seam("x", 10, 0, 1e12, "R1C1", "R1C2")},
		"one too far off to step on": {seam("x", 10, 1e18, 1e19, "R1C1", "R1C2")},
		"words that move the cursor": {seam("x", 10, 0, 100, "\x1b[2J", "R1C2")},
	} {
		t.Run(name, func(t *testing.T) {
			p.rewrite(t, seams, "seams")
			jobtest.Bounded(t, name, func() {
				_, stderr, code := programtest.Run(t, "seams", p.job)
				require.Equal(t, programtest.Failed, code)
				require.Contains(t, stderr, "seams")
				require.NotContains(t, stderr, "\x1b")
			})
			require.NoError(t, os.WriteFile(filepath.Join(p.job, place.JobFile), kept, 0o600))
		})
	}
}
