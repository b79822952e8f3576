package main

import (
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
)

// A reading can be added to: what pasting makes of the paper, other margins; a printer with margins alone is kept as
// true; one that is not wanted is forgotten. What is kept is only replaced by force.
func TestReadingsGrow(t *testing.T) {
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	t.Setenv("HOME", t.TempDir())
	for _, c := range []struct {
		args []string
		code int
		says string
	}{
		{[]string{"--save", "hall", "--pasted", "199.4x249.2mm"}, exitWrongWords, `no printer "hall" is kept`},
		{saving("hall")[1:], exitDone, "across 0.4 % short"},
		// 199.2 and 248.5 mm as printed, 199.4 and 249.2 mm once pasted: 1.0010 and 1.0028 times as long.
		{[]string{"--save", "hall", "--pasted", "199.4x249.2mm"}, exitDone,
			"pasted, its paper comes 0.1 % long across and 0.28 % long along the feed"},
		{[]string{"--save", "hall", "--pasted", "199.3x249.1mm"}, exitFailed, "give --force"},
		{[]string{"--save", "hall", "--pasted", "199.4x249.2mm", "--force"}, exitDone, "0.28 % long along the feed"},
		{[]string{"--save", "hall", "--pasted", "249.2x199.4mm", "--force"}, exitWrongWords, "across first, then feed"},
		{[]string{"--save", "hall", "--margins", "3,3,3,5mm"}, exitFailed, "give --force"},
		{[]string{"--save", "hall", "--margins", "3,3,3,5mm", "--force"}, exitDone, "margins left 3, top 3, right 3, " +
			"bottom 5 mm"},
		{[]string{"--save", "loft", "--margins", "0,0,0,12mm"}, exitDone, "across true, feed true"},
		{[]string{"--forget", "loft"}, exitDone, "forgotten"},
		{[]string{"--forget", "loft"}, exitFailed, "--list tells those that are"},
		{[]string{"--forget", "hall", "--list"}, exitWrongWords, "alone"},
		{[]string{"--list"}, exitDone, "0.1 % long across"},
	} {
		stdout, stderr, code := dropsheet(t, append([]string{"gauge"}, c.args...)...)
		require.Equal(t, c.code, code, "%v: %s", c.args, stderr)
		require.Contains(t, stdout+stderr, c.says, c.args)
	}

	// Sheets are drawn smaller by what printer and paste add, each way: 1 / (0.996 * 1.001004) across.
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--distance", "10cm", "--printer", "hall")
	j, err := job.Read(folder)
	require.NoError(t, err)
	c := j.Backdrop.Correction()
	across, feed := c.X, c.Y
	if j.Backdrop.Orientation == "landscape" {
		across, feed = feed, across
	}
	const rounded = 1e-8 // job files are rounded to a nanometre
	require.InDelta(t, 200/199.4, across, rounded)
	require.InDelta(t, 250/249.2, feed, rounded)
}
