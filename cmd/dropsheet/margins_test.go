package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
)

// --margin takes one length or four, in make and in reprint. A printer that reaches less prints narrower strips and
// laps before it is refused, and the refusal says how the job is made for it.
func TestFourMargins(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--print-size", "540mm", "--orientation", "portrait", "--seams", "even",
		"--margin", "4,4,4,12mm")
	j, err := job.Read(folder)
	require.NoError(t, err)
	require.Equal(t, &layout.Margins{LeftMM: 4, TopMM: 4, RightMM: 4, BottomMM: 12}, j.Backdrop.Margins)
	require.NoError(t, j.Changed())

	stdout, stderr, code := dropsheet(t, "reprint", folder, "R1C1")
	require.Equal(t, exitDone, code, stderr)
	require.NotContains(t, stderr, "room")
	require.Contains(t, stdout, "1 of 6 sheets")

	// Cells of 180 mm with a strip of 6 and a lap of 10 need 196 mm, and there are 210 less 15, and less 17.
	for margin, says := range map[string]string{
		"7.5,6,7.5,14mm": "this printer lacks the room for the sheets as they were: they have strips of 5mm, and fit all " +
			"the same",
		"8.5,6,8.5,14mm": "they have strips of 4.5mm and laps of 8.5mm in place of 10mm, and fit all the same",
	} {
		_, stderr, code = dropsheet(t, "reprint", folder, "R1C1", "--margin", margin, "--force")
		require.Equal(t, exitDone, code, stderr)
		require.Contains(t, stderr, says)
	}
	_, stderr, code = dropsheet(t, "reprint", folder, "R1C1", "--margin", "25mm", "--force")
	require.Equal(t, exitWrongWords, code)
	require.Contains(t, stderr, "dropsheet make JOB --paper A4 --margin 25,25,25,25mm")
	_, stderr, code = dropsheet(t, "reprint", folder, "R1C1", "--margin", "5mm", "--printer", "hall")
	require.Equal(t, exitWrongWords, code)
	require.Contains(t, stderr, "give one of them")

	for _, c := range []struct{ margin, says string }{
		{"4,4,12mm", "is not four margins"}, {"4,4,-1,12mm", "0mm or more"}, {"-1mm", "0mm or more"}, {"4,4,4,12",
			"has no unit"},
	} {
		_, stderr, code := dropsheet(t, "size", "--margin", c.margin)
		require.Equal(t, exitWrongWords, code, c.margin)
		require.Contains(t, stderr, c.says)
	}
}
