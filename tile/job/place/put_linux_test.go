package place

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// What comes to the place at the last moment, after all that was looked at, stays: a file unless force is set, anything
// else whatever is set.
func TestPutAtTheLastMoment(t *testing.T) {
	for _, c := range strange {
		t.Run(c.name, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "out.png")
			hidden := unfinished(path)
			require.NoError(t, c.lay(path))
			require.NoError(t, os.WriteFile(hidden, []byte("new"), 0o600))
			err := put(hidden, path, true)
			text, errNew := os.ReadFile(hidden)
			require.NoError(t, errNew)
			require.Equal(t, "new", string(text))
			require.NoError(t, os.Remove(hidden))
			requireStrange(t, path, c.says, err)
		})
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "out.png")
	hidden := unfinished(path)
	for _, force := range []bool{false, true} {
		require.NoError(t, os.WriteFile(path, []byte("old"), 0o600))
		require.NoError(t, os.WriteFile(hidden, []byte("new"), 0o600))
		err, want := put(hidden, path, force), "new"
		if !force {
			require.ErrorContains(t, err, "exists")
			require.NoError(t, os.Remove(hidden))
			want = "old"
		} else {
			require.NoError(t, err)
		}
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, want, string(text))
		requireOnly(t, folder, "out.png")
	}
}
