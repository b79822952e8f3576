package place

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestFolderThatNobodyMayChange is found out before the work, by root too. Where the file system, or who runs this,
// can't make a folder so, nothing is told.
func TestFolderThatNobodyMayChange(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "job")
	require.NoError(t, os.Mkdir(folder, 0o700))
	require.NoError(t, writable(folder))
	if err := exec.Command("chattr", "+i", folder).Run(); err != nil {
		t.Logf("NOT RUN: chattr +i: %v", err)
		return
	}
	defer func() { require.NoError(t, exec.Command("chattr", "-i", folder).Run()) }()
	require.Error(t, os.WriteFile(filepath.Join(folder, "a"), nil, 0o600))
	require.Error(t, writable(folder))
}
