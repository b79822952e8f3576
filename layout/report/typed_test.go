package report

import (
	"os/exec"
	"testing"

	"github.com/stretchr/testify/require"
)

// What is typed at a shell comes out of it as the word that it was.
func TestTyped(t *testing.T) {
	for _, c := range []struct{ name, word, posix, windows string }{
		{"plain", "harbour-backdrop", "harbour-backdrop", "harbour-backdrop"},
		{"letters of any script", "../Гавань/job_2.1", "../Гавань/job_2.1", "../Гавань/job_2.1"},
		{"backslashes", `C:\prints\harbour`, `'C:\prints\harbour'`, `C:\prints\harbour`},
		{"spaces", "my harbour", "'my harbour'", `"my harbour"`},
		{"a colour, which would be a comment", "#000000", "'#000000'", `"#000000"`},
		{"inches", `16"`, `'16"'`, `"16\""`},
		{"feet", "5'", `'5'\'''`, `"5'"`},
		{"what a shell would work out", "$HOME `id` !! *", "'$HOME `id` !! *'", "\"$HOME `id` !! *\""},
		{"nothing", "", "''", `""`},
		{"margins", "4,4,4,12mm", "4,4,4,12mm", "4,4,4,12mm"},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Equal(t, c.posix, typed(c.word, false))
			require.Equal(t, c.windows, typed(c.word, true))
			if sh, err := exec.LookPath("sh"); err == nil { // there is none on Windows
				out, err := exec.Command(sh, "-c", "printf %s "+typed(c.word, false)).Output()
				require.NoError(t, err)
				require.Equal(t, c.word, string(out))
			}
		})
	}
}
