//go:build unix

package place

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// asideBench is a place with an old job and a hidden folder beside it, for what is done where two folders
// can't be swapped in one step.
func asideBench(t *testing.T) (f *Folder, final string) {
	t.Helper()
	final = filepath.Join(t.TempDir(), "job")
	require.NoError(t, os.Mkdir(final, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(final, JobFile), []byte("old"), 0o600))
	f, err := NewFolder(final, true, "art.png")
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(f.File(JobFile), []byte("new"), 0o600))
	return f, final
}

func requireJob(t *testing.T, final, want string) {
	t.Helper()
	data, err := os.ReadFile(filepath.Join(final, JobFile))
	require.NoError(t, err)
	require.Equal(t, want, string(data))
}

func TestMoveAside(t *testing.T) {
	t.Run("done", func(t *testing.T) {
		f, final := asideBench(t)
		require.NoError(t, f.moveAside(filepath.Join(f.temporary, newJobFolder)))
		requireJob(t, final, "new")
		require.NoError(t, f.clean())
		requireNoneBeside(t, final)
	})
	t.Run("a strange file came into the old one", func(t *testing.T) {
		f, final := asideBench(t)
		require.NoError(t, os.WriteFile(filepath.Join(final, "notes.txt"), []byte("mine"), 0o600))
		require.ErrorContains(t, f.moveAside(filepath.Join(f.temporary, newJobFolder)), "notes.txt")
		require.NoError(t, f.discard())
		requireJob(t, final, "old")
		require.FileExists(t, filepath.Join(final, "notes.txt"))
		requireNoneBeside(t, final)
	})
	t.Run("the new one is gone", func(t *testing.T) {
		f, final := asideBench(t)
		require.Error(t, f.moveAside(filepath.Join(f.temporary, "gone")))
		require.NoError(t, f.discard())
		requireJob(t, final, "old")
	})
}

// TestKilledWhileMovingAside lays out what a kill leaves after each step of moving aside, and looks at what
// the next run makes of it.
func TestKilledWhileMovingAside(t *testing.T) {
	for _, c := range []struct {
		name  string
		steps func(t *testing.T, final, made, old string)
		stand string
	}{
		{"before", func(*testing.T, string, string, string) {}, "old"},
		{"the old one aside", func(t *testing.T, final, _, old string) { require.NoError(t, os.Rename(final, old)) }, "old"},
		{"the new one in place", func(t *testing.T, final, made, old string) {
			require.NoError(t, os.Rename(final, old))
			require.NoError(t, os.Rename(made, final))
		}, "new"},
		{"the old one half removed", func(t *testing.T, final, made, old string) {
			require.NoError(t, os.Rename(final, old))
			require.NoError(t, os.Rename(made, final))
			require.NoError(t, os.Remove(filepath.Join(old, JobFile)))
		}, "new"},
	} {
		t.Run(c.name, func(t *testing.T) {
			f, final := asideBench(t)
			c.steps(t, final, filepath.Join(f.temporary, newJobFolder), filepath.Join(f.temporary, oldJobFolder))
			release(f.lock) // as the system does for a run that is killed

			_, err := NewFolder(final, false, "art.png")
			require.ErrorContains(t, err, "is not empty", "what was put back is not replaced unasked")
			requireJob(t, final, c.stand)
			requireNoneBeside(t, final)
		})
	}
	t.Run("and the place was taken", func(t *testing.T) {
		f, final := asideBench(t)
		old := filepath.Join(f.temporary, oldJobFolder)
		require.NoError(t, os.Rename(final, old))
		release(f.lock)
		require.NoError(t, os.Mkdir(final, 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(final, JobFile), []byte("third"), 0o600))
		for range 2 {
			_, err := NewFolder(final, true, "art.png")
			require.ErrorContains(t, err, "move one of the two away")
			requireJob(t, final, "third")
			requireJob(t, old, "old")
		}
	})
	t.Run("and a strange file is among what is left", func(t *testing.T) {
		f, final := asideBench(t)
		release(f.lock)
		notes := f.File("notes.txt")
		require.NoError(t, os.WriteFile(notes, []byte("mine"), 0o600))
		_, err := NewFolder(final, true, "art.png")
		require.ErrorContains(t, err, "notes.txt")
		require.FileExists(t, notes)
	})
}

func requireNoneBeside(t *testing.T, final string) {
	t.Helper()
	entries, err := os.ReadDir(filepath.Dir(final))
	require.NoError(t, err)
	require.Len(t, entries, 1)
}
