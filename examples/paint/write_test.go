package paint

import (
	"image"
	"image/jpeg"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestWriteJPEGPutsTheFileInPlace(t *testing.T) {
	out := filepath.Join(t.TempDir(), "a.jpg")
	require.NoError(t, os.WriteFile(out, []byte("older"), 0o600))
	require.NoError(t, WriteJPEG(out, image.NewRGBA(image.Rect(0, 0, 60, 40)), 90))
	file, err := os.Open(out)
	require.NoError(t, err)
	defer file.Close()
	config, err := jpeg.DecodeConfig(file)
	require.NoError(t, err)
	require.Equal(t, [2]int{60, 40}, [2]int{config.Width, config.Height})
	left, err := os.ReadDir(filepath.Dir(out))
	require.NoError(t, err)
	require.Len(t, left, 1, "the temporary file must be gone")
}

func TestWriteJPEGRefuses(t *testing.T) {
	dir := t.TempDir()
	for _, c := range []struct{ name, out, says string }{
		{"a folder that isn't there", filepath.Join(dir, "no", "a.jpg"), "can't be written"},
		{"a folder in its place", dir, "can't be written"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.ErrorContains(t, WriteJPEG(c.out, image.NewRGBA(image.Rect(0, 0, 6, 4)), 90), c.says)
			for _, in := range []string{dir, filepath.Dir(dir)} { // a temporary file would lie beside its target
				left, err := filepath.Glob(filepath.Join(in, ".draw-*"))
				require.NoError(t, err)
				require.Empty(t, left, "nothing may be left behind")
			}
		})
	}
}
