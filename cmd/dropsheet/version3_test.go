package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf/pdftest"
)

// asVersion3 is a job file as the format before had it.
func asVersion3(t *testing.T, file []byte) []byte {
	t.Helper()
	var tree map[string]any
	require.NoError(t, json.Unmarshal(file, &tree))
	tree["dropsheet"] = 3
	delete(tree, "asked")
	delete(tree, "shot")
	delete(tree, "landing_ticks_mm")
	delete(tree["artwork"].(map[string]any), "copy")
	delete(tree["files"].(map[string]any), place.CloseUpFile)
	text, err := json.Marshal(tree)
	require.NoError(t, err)
	return text
}

// A job that an older dropsheet made prints as it was: the same sheets as this one makes of the same words, with the
// code that stands on those that were printed then. Only their marks are of the new kind, and that is said. What
// is said of the shot changes neither.
func TestJobOfVersion3(t *testing.T) {
	artwork, err := filepath.Abs("../../testdata/harbour.jpg")
	require.NoError(t, err)
	old := filepath.Join(t.TempDir(), "job")
	require.NoError(t, os.Mkdir(old, 0o755))
	file, err := os.ReadFile("../../testdata/version3/" + place.JobFile)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(filepath.Join(old, place.JobFile), file, 0o600))

	for _, words := range [][]string{
		{"reprint", old, "all"},
		{"proof", old, "--pixels", "24x16", "--samples", "1", "--iso", "400", "--shutter", "1/1000s"},
		{"seams", old, "--out", filepath.Join(old, "seams-trial.png")},
	} {
		_, stderr, code := dropsheet(t, append(words, "--artwork", artwork)...)
		require.Equal(t, exitDone, code, stderr)
	}
	_, stderr, code := dropsheet(t, "reprint", old, "R1C1", "--artwork", artwork, "--out", filepath.Join(old, "one.pdf"))
	require.Equal(t, exitDone, code)
	require.Contains(t, stderr, "short ticks there, 2mm past it", "its sheets have a line where these have ticks")
	_, stderr, code = dropsheet(t, "reprint", old, "all", "--force")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "no such file or directory")
	require.Contains(t, stderr, "\nhint: if the artwork has moved")
	require.NotContains(t, stderr, "copy", "there is none")

	made := filepath.Join(t.TempDir(), "job")
	_, stderr, code = dropsheet(t, "make", artwork, "--distance", "20cm", "--pixels", "120x80", "--lamp",
		"-40cm,-40cm,30cm",
		"--level", "--out", made, "--sensor", "36x24mm", "--iso", "400", "--shutter", "1/2000s", "--fall", "20cm",
		"--lamp-lux", "5000", "--lamp-size", "5cm")
	require.Equal(t, exitDone, code, stderr)
	was, err := job.Read(old)
	require.NoError(t, err)
	is, err := job.Read(made)
	require.NoError(t, err)
	// The command line that is made up for it comes to what its own words did.
	stdout, _, code := dropsheet(t, "job", old, "--json")
	require.Equal(t, exitDone, code)
	var told struct {
		Command []string `json:"command"`
	}
	require.NoError(t, json.Unmarshal([]byte(stdout), &told))
	stdout, stderr, code = dropsheet(t, append([]string{"size", artwork}, told.Command[3:len(told.Command)-2]...)...)
	require.Equal(t, exitDone, code, stderr)
	asMade, _, code := dropsheet(t, "size", made)
	require.Equal(t, exitDone, code)
	for _, line := range []string{"PRINT", "PLACE", "SEE", "TRUST"} {
		require.Contains(t, stdout, lineOf(asMade, line))
	}

	_, stderr, code = dropsheet(t, "reprint", made, "R1C1")
	require.Equal(t, exitDone, code)
	require.NotContains(t, stderr, "short ticks")
	require.NotZero(t, is.Shot.NeededLux)
	// Its code is of the last digits, and goes on standing on its sheets. The code that its figures get today is that of
	// the job that is made today, and with it they are the same, but for a rounding to the nanometre.
	require.NotEqual(t, is.CheckCode, was.CheckCode)
	file = bytes.Replace(file, []byte(was.CheckCode), []byte(is.CheckCode), 1)
	require.NoError(t, os.WriteFile(filepath.Join(old, place.JobFile), file, 0o600))
	_, stderr, code = dropsheet(t, "reprint", old, "all", "--force", "--artwork", artwork)
	require.Equal(t, exitDone, code, stderr)
	again, err := os.ReadFile(filepath.Join(old, "reprint-ALL.pdf"))
	require.NoError(t, err)
	sheets, err := os.ReadFile(filepath.Join(made, "sheets.pdf"))
	require.NoError(t, err)
	asThen, asNow := pdftest.Open(t, again), pdftest.Open(t, sheets)
	require.Equal(t, asThen.PageCount(), asNow.PageCount())
	for page := range asThen.PageCount() {
		require.True(t, bytes.Equal(asThen.Render(page+1, 72).Pix, asNow.Render(page+1, 72).Pix))
	}
}
