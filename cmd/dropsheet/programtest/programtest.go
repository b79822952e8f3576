// Package programtest lets tests run the built program in processes of its own, as its users do.
//
// Only tests may import it. The TestMain of a package that does must be Main.
package programtest

import (
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

// folder is where the program was built, "" until then.
var folder string

// Main runs a package's tests, takes the built program away and exits.
func Main(m *testing.M) {
	os.Setenv("GOGC", "100") // the program's own choice takes time to save memory, and small jobs have none to save
	code := m.Run()
	if folder != "" {
		os.RemoveAll(folder)
	}
	os.Exit(code)
}

// Path is the built program. The first call of a test binary builds it.
func Path(t testing.TB) string {
	t.Helper()
	path, err := built()
	require.NoError(t, err)
	return path
}

var built = sync.OnceValues(func() (string, error) {
	var err error
	if folder, err = os.MkdirTemp("", "dropsheet-built-*"); err != nil {
		return "", err
	}
	if err := os.Chmod(folder, 0o755); err != nil { // another user runs it in one of the tests
		return "", err
	}
	path := filepath.Join(folder, "dropsheet")
	// Without the tables of a debugger it is linked in half the time.
	build := exec.Command("go", "build", "-ldflags", "-s -w", "-o", path, "dropsheet/cmd/dropsheet")
	if out, err := build.CombinedOutput(); err != nil {
		return "", errors.New(string(out))
	}
	return path, nil
})
