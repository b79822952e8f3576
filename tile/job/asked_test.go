package job

import (
	"bytes"
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
)

// What a job file says that it was asked for with is bounded, and can be shown.
func TestAskedOfAHostileJob(t *testing.T) {
	var whole bytes.Buffer
	require.NoError(t, jobOf(t, func(*layout.Setup) {}).Encode(&whole))
	many := make([]string, 70_000)
	for i := range many {
		many[i] = "1"
	}
	for _, c := range []struct {
		name, says string
		asked      any
	}{
		{"none", "", Asked{}},
		{"nothing", "", nil},
		{"as long as it may be", "", Asked{"crop": {strings.Repeat("x", mostAskedBytes-len("crop"))}}},
		{"too long a word", "bytes of words are too many", Asked{"crop": {strings.Repeat("x", mostAskedBytes)}}},
		{"too many words", "bytes of words are too many", Asked{"lamp": many}},
		{"a word that moves the cursor", "has characters that can't be printed", Asked{"crop": {"\x1b[2J"}}},
		{"a word of two lines", "has characters that can't be printed", Asked{"crop": {"1\n2"}}},
		{"a flag without a word", "--crop was asked for without a word", Asked{"crop": {}}},
		{"a flag without a name", `"" is not the name of a flag`, Asked{"": {"1"}}},
		{"a flag that moves the cursor", "is not the name of a flag", Asked{"\x1b[2J": {"1"}}},
		{"a flag of two", "is not the name of a flag", Asked{"crop --out": {"1"}}},
		{"a flag without end", "is not the name of a flag", Asked{strings.Repeat("a", 1_000_000): {"1"}}},
		{"a word by itself", "does not read as a job", map[string]string{"crop": "1"}},
		{"a number", "does not read as a job", 5},
	} {
		t.Run(c.name, func(t *testing.T) {
			var tree map[string]any
			require.NoError(t, json.Unmarshal(whole.Bytes(), &tree))
			tree["asked"] = c.asked
			text, err := json.Marshal(tree)
			require.NoError(t, err)
			_, err = decode(text)
			if c.says == "" {
				require.NoError(t, err)
				return
			}
			require.ErrorContains(t, err, c.says)
			require.Less(t, len(err.Error()), 400)
			require.NotContains(t, err.Error(), "\x1b")
		})
	}
}

// Make keeps no words that could not be read again.
func TestMakeRefusesWordsThatCantBeKept(t *testing.T) {
	o := order(t, func(*layout.Setup) {})
	for says, asked := range map[string]Asked{
		"--distance: \"40\\tcm\" has characters that can't be printed\nhint: type it anew": {"distance": {"40\tcm"}},
		"bytes of words are too many for one job\nhint: take at " +
			"most 65536": {"avoid": {strings.Repeat("1", 70_000)}},
	} {
		o.Asked = asked
		_, err := Make(t.Context(), o, Watch{})
		require.ErrorContains(t, err, says)
		require.True(t, IsWrongWords(err))
		require.NoDirExists(t, o.Folder)
	}
}

// A copy's name leads nowhere but into the job's folder.
func TestCopyOfAHostileJob(t *testing.T) {
	j := jobOf(t, func(*layout.Setup) {})
	for _, name := range []string{"../secret.txt", "/etc/hostname", "artwork.png/../../x", "sheets.pdf", "artwork.\x1b[2J",
		"artwork.png\x00", "Artwork.png", "artwork.toolongend", ".."} {
		j.Artwork.Copy = name
		require.ErrorContains(t, j.holdsTogether(), "is not what an artwork's copy is called", name)
	}
	for _, name := range []string{"", "artwork", "artwork.png", "artwork.JPEG"} {
		j.Artwork.Copy = name
		require.NoError(t, j.holdsTogether(), name)
	}
}

// A job of the format before knows neither words nor copy nor shot, whatever it says.
func TestOlderFormatHasNoWords(t *testing.T) {
	j := jobOf(t, func(s *layout.Setup) { s.Shooting.ISO = 400 })
	j.Version = oldestVersion
	var text bytes.Buffer
	require.NoError(t, j.Encode(&text))
	read, err := decode(text.Bytes())
	require.NoError(t, err)
	require.Empty(t, read.Asked)
	require.Empty(t, read.Artwork.Copy)
	require.Zero(t, read.Shooting)
	require.Equal(t, j.Sheets, read.Sheets)
}
