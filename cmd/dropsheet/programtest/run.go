package programtest

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Exit codes.
const (
	Done   = 0
	Failed = 1 // the job failed
)

// Run runs the program and returns what it wrote and its exit code: -1 when it was killed.
func Run(t testing.TB, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, errs bytes.Buffer
	run := exec.Command(Path(t), args...)
	run.Stdout, run.Stderr = &out, &errs
	if err := run.Run(); err != nil && !errors.As(err, new(*exec.ExitError)) {
		require.NoError(t, err)
	}
	return out.String(), errs.String(), run.ProcessState.ExitCode()
}

// Do runs the program, which must do what it is asked to.
func Do(t testing.TB, args ...string) {
	t.Helper()
	_, stderr, code := Run(t, args...)
	require.Equal(t, Done, code, "dropsheet %s: %s", strings.Join(args, " "), stderr)
}

// Make makes a job in a folder of its own, for a camera of few pixels unless flags say otherwise, to be quick.
func Make(t testing.TB, artwork string, flags ...string) (folder string) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), "job")
	Do(t, append([]string{"make", artwork, "--out", folder, "--pixels", "120x80"}, flags...)...)
	return folder
}

// Files are the files of a folder, by name.
func Files(t testing.TB, folder string) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		require.NoError(t, err)
		files[e.Name()] = data
	}
	return files
}

// Hash is the SHA-256 of a file, as job.json has it.
func Hash(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}
