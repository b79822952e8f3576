package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip/units"
	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/pdf/pdftest"
)

// The guide comes on A4, or on letter where the sheets' paper is named in inches, whatever the sheets are, or on the
// paper that is asked for. That has no part in the sheets, nor in their check code.
func TestGuidePaper(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	var codes []string
	for _, c := range []struct {
		flags  []string
		wideMM float64
		inches bool
	}{
		{[]string{"--paper", "A6"}, 210, false},
		{[]string{"--paper", "A6", "--guide-paper", "legal"}, 215.9, false},
		{[]string{"--paper", "A6", "--inches"}, 210, true},
		{[]string{"--paper", "4x6in"}, 215.9, true},
	} {
		folder := mustMake(t, art, append(c.flags, "--distance", "10cm")...)
		guide, err := os.ReadFile(filepath.Join(folder, "guide.pdf"))
		require.NoError(t, err)
		doc := pdftest.Open(t, guide)
		wide, _ := doc.PageSizePoints(1)
		require.InDelta(t, c.wideMM, units.PointsToMM(wide), 0.01, c.flags)
		const tenCM = "100 mm (3 15/16 in)"
		cover := strings.Join(strings.Fields(doc.Text(1)), " ") // Fields takes a no-break space for a space
		if c.inches {
			require.Contains(t, cover, tenCM)
		} else {
			require.NotContains(t, cover, " in)")
		}
		stdout, stderr, code := dropsheet(t, "size", folder)
		require.Equal(t, exitDone, code, stderr)
		require.Equal(t, c.inches, strings.Contains(stdout, tenCM), "%s: %s", c.flags, stdout)
		j, err := job.Read(folder)
		require.NoError(t, err)
		codes = append(codes, j.CheckCode)
	}
	_, stderr, code := dropsheet(t, "make", art, "--guide-paper", "A6", "--out", filepath.Join(t.TempDir(), "job"))
	require.Equal(t, exitWrongWords, code)
	require.Contains(t, stderr, "\nhint: take A5 or larger")
	require.Equal(t, codes[0], codes[1])
	require.Equal(t, codes[0], codes[2])
}
