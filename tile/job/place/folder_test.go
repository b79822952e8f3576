package place

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestFailedRunKeepsOthersFolders: a run that fails takes away the folders that it made, but not with what
// others have put into them.
func TestFailedRunKeepsOthersFolders(t *testing.T) {
	parent := filepath.Join(t.TempDir(), "made")
	f, err := NewFolder(filepath.Join(parent, "deep", "job"), false, "art.png")
	require.NoError(t, err)
	notes := filepath.Join(parent, "notes.txt")
	require.NoError(t, os.WriteFile(notes, []byte("mine"), 0o600))
	require.NoError(t, f.Discard())
	require.FileExists(t, notes)
	require.NoDirExists(t, filepath.Join(parent, "deep"))
}
