package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/printers"
)

// A file that does not hold together is told of, by every command that needs it, and left as it is.
func TestDamagedPrintersAreLeftAlone(t *testing.T) {
	const whole = `{"dropsheet_printers": 1, "printers": [{"name": "hall", ` +
		`"paper": {"name": "A4", "width_mm": 210, "height_mm": 297}, "across_scale": 1, "feed_scale": 1, ` +
		`"margins_mm": {"left": 4, "top": 4, "right": 4, "bottom": 4}}]}`
	path := filepath.Join(t.TempDir(), "printers.json")
	require.NoError(t, os.WriteFile(path, []byte(whole), 0o600))
	kept, err := printers.Read(path)
	require.NoError(t, err, "the cases below differ from what is read by one fault each")
	require.Len(t, kept, 1)
	for _, c := range []struct{ name, text, says string }{
		{"empty", "", "does not read as kept printers"},
		{"cut short", whole[:60], "does not read as kept printers"},
		{"something else", `{"dropsheet": 2}`, "is no file of kept printers"},
		{"of the future", `{"dropsheet_printers": 9}`, "of version 9 and this program reads version 1"},
		{"a slip in a word", `{"dropsheet_printers": 1, "printers": [{"nmae": "hall"}]}`, "nmae"},
		{"a scale that can't be", `{"dropsheet_printers": 1, "printers": [{"name": "hall", "paper": {"name": "A4", ` +
			`"width_mm": 210, "height_mm": 297}, "across_scale": 0.5, "feed_scale": 1}]}`,
			"a scale of 0.5 can't be"},
		{"no paper", `{"dropsheet_printers": 1, "printers": [{"name": "hall", "across_scale": 1, "feed_scale": 1}]}`,
			"a paper of 0x0mm can't be"},
		{"twice the same", whole[:len(whole)-2] + `, ` + whole[len(`{"dropsheet_printers": 1, "printers": [`):],
			"is in it twice"},
	} {
		t.Run(c.name, func(t *testing.T) {
			config, path := configFolder(t)
			require.NoError(t, os.Mkdir(filepath.Join(config, "dropsheet"), 0o755))
			require.NoError(t, os.WriteFile(path, []byte(c.text), 0o600))
			for _, args := range [][]string{saving("study", "--force"), {"gauge", "--list"}} {
				stdout, stderr, code := dropsheet(t, args...)
				require.Equal(t, exitFailed, code, args)
				require.Empty(t, stdout)
				require.Contains(t, stderr, c.says)
				require.Contains(t, stderr, path)
				left, err := os.ReadFile(path)
				require.NoError(t, err)
				require.Equal(t, c.text, string(left))
			}
		})
	}
}
