package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/pdf/pdftest"
)

// A job carries the artwork's name on its sheets and in its guide, in whatever alphabet; of letters that no
// font has, make and reprint warn once.
func TestNamesInAnyAlphabet(t *testing.T) {
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	picture, err := os.ReadFile(pattern)
	require.NoError(t, err)
	for _, c := range []struct{ name, shows, warns string }{
		// the last as some file systems decompose it
		{"Häuser – “am” Kai, Λιμάνι, Гавань, pr\u030ci\u0301stav",
			"Häuser – “am” Kai, Λιμάνι, Гавань, přístav", ""},
		{"港", "?", `the name "港" can't be printed in full: sheets and guide show it as "?", and the check code `},
		{"Порт 港", "Порт ?",
			`the name "Порт 港" can't be printed in full: sheets and guide show it as "Порт ?", and the check code `},
	} {
		t.Run(c.name, func(t *testing.T) {
			folder := t.TempDir()
			art, out := filepath.Join(folder, c.name+".png"), filepath.Join(folder, "job")
			require.NoError(t, os.WriteFile(art, picture, 0o644))
			_, stderr, code := dropsheet(t, "make", art, "--out", out, "--pixels", "120x80", "--distance", "10cm")
			require.Equal(t, exitDone, code, stderr)
			again := filepath.Join(folder, "again.pdf")
			_, reprinting, code := dropsheet(t, "reprint", out, "R1C1", "--out", again)
			require.Equal(t, exitDone, code, reprinting)
			for _, said := range []string{stderr, reprinting} {
				if c.warns == "" {
					require.NotContains(t, said, "can't be printed")
					continue
				}
				require.Equal(t, 1, strings.Count(said, "warning: "+c.warns), said)
			}
			for _, file := range []string{filepath.Join(out, "sheets.pdf"), filepath.Join(out, "guide.pdf"), again} {
				data, err := os.ReadFile(file)
				require.NoError(t, err)
				require.Contains(t, pdftest.Open(t, data).Text(1), c.shows, file)
			}
			j, err := job.Read(out)
			require.NoError(t, err)
			require.Equal(t, c.name, j.Name, "the job file keeps the name itself")
		})
	}
}

// The names of printers are printed in guides.
func TestGaugeWarnsOfNames(t *testing.T) {
	configFolder(t)
	for _, c := range []struct{ name, warns string }{
		{"Студия", ""},
		{"工房", `warning: the name "工房" can't be printed in full: guides show it as "??"`},
	} {
		_, stderr, code := dropsheet(t, saving(c.name)...)
		require.Equal(t, exitDone, code, stderr)
		if c.warns == "" {
			require.Empty(t, stderr, c.name)
			continue
		}
		require.Contains(t, stderr, c.warns)
	}
}
