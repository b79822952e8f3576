package job

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzReadFilmWords: whatever lies in a folder as the words of a film, an error or words.
func FuzzReadFilmWords(f *testing.F) {
	for _, text := range []string{`{"dropsheet_film":1,"job":"harbour","frames":6,"made_of":"00"}`, `{}`, `{"frames":-1}`,
		`[]`, `null`, ``, `{"dropsheet_film":1} {"dropsheet_film":1}`} {
		f.Add([]byte(text))
	}
	folder := f.TempDir()
	f.Fuzz(func(t *testing.T, text []byte) {
		require.NoError(t, os.WriteFile(filepath.Join(folder, wordsFile), text, 0o600))
		words, err := readFilmWords(folder)
		if err != nil {
			require.Contains(t, err.Error(), "--film")
			require.Zero(t, words)
			return
		}
		require.NotZero(t, words.Version)
	})
}
