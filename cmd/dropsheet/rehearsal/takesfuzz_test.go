package rehearsal

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
)

// FuzzReadTakes: whatever lies where takes are kept, an error or takes that the page can show.
func FuzzReadTakes(f *testing.F) {
	for _, text := range []string{
		`{"dropsheet_takes":1,"artwork":"a.png","takes":[{"name":"low","words":[["fill","0.9"]]}]}`,
		`{"dropsheet_takes":1}`, `{"dropsheet_takes":1,"takes":[{}]}`, `{}`, `[]`, `null`, ``,
	} {
		f.Add([]byte(text))
	}
	subject := Subject{Folder: filepath.Join(f.TempDir(), "harbour-backdrop")}
	f.Fuzz(func(t *testing.T, text []byte) {
		require.NoError(t, os.WriteFile(takesPath(subject), text, 0o600))
		takes, err := readTakes(subject)
		require.NotNil(t, takes)
		if err != nil {
			require.Contains(t, err.Error(), "takes")
			require.Empty(t, takes)
			return
		}
		require.LessOrEqual(t, len(takes), mostTakes)
		for _, one := range takes {
			require.Equal(t, job.Printable(one.Name), one.Name)
		}
	})
}
