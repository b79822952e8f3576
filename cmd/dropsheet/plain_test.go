package main

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// TestPlainly: a name that would turn the line round, break it or clear the screen is written out, and in JSON it stays
// the name that it was.
func TestPlainly(t *testing.T) {
	for text, want := range map[string]string{
		"harbour\tat dusk\n":          "harbour\tat dusk\n",
		"Hafen für Öl, 港, 🛥":          "Hafen für Öl, 港, 🛥",
		"gnp.\u202egpj":               `gnp.\u202egpj`,
		"two\u2028lines\u2029more":    `two\u2028lines\u2029more`,
		"\x1b[2J\r\u009b2J\x7f\u2066": `\u001b[2J\u000d\u009b2J\u007f\u2066`,
		"\ufeffa\u200bb\u00adc":       `\ufeffa\u200bb\u00adc`,
		"half\xe6\xb8":                `half\ufffd\ufffd`,
	} {
		require.Equal(t, want, plainly([]byte(text)))
	}
	name := "a\u202eb\u2028c"
	quoted, err := json.Marshal(name)
	require.NoError(t, err)
	var again string
	require.NoError(t, json.Unmarshal([]byte(plainly(quoted)), &again))
	require.Equal(t, name, again)

	var b strings.Builder
	n, err := plain{Writer: &b}.Write([]byte("a\u202eb"))
	require.NoError(t, err)
	require.Equal(t, len("a\u202eb"), n, "what was taken, not what was written")
}
