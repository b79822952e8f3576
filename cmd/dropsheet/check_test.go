package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// What check says of a job as it was made, and of each thing that can have gone wrong since.
func TestCheck(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	made := mustMake(t, art)
	files := readFolder(t, made)
	short, _, _ := reprinted(t, made, "R1")
	artBytes, err := os.ReadFile(art)
	require.NoError(t, err)
	edit := func(old, new string) func(t *testing.T, folder, art string) {
		return func(t *testing.T, folder, art string) {
			changed := bytes.Replace(files[place.JobFile], []byte(old), []byte(new), 1)
			require.NotEqual(t, files[place.JobFile], changed)
			require.NoError(t, os.WriteFile(filepath.Join(folder, place.JobFile), changed, 0o600))
		}
	}
	for _, c := range []struct {
		name    string
		spoil   func(t *testing.T, folder, art string)
		args    []string
		differs []string // the lines that do
		says    string
	}{
		{"as it was made", nil, nil, nil, "version 4, which this program writes"},
		{"of the format before", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.WriteFile(filepath.Join(folder, place.JobFile), asVersion3(t, files[place.JobFile]), 0o600))
			require.NoError(t, os.Remove(filepath.Join(folder, "artwork.png")))
			require.NoError(t, os.Remove(filepath.Join(folder, place.CloseUpFile)))
		}, nil, nil, "version 3, which this program reads; it writes version 4"},
		{"a file missing", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Remove(filepath.Join(folder, "guide.pdf")))
		}, nil, []string{"folder"}, "guide.pdf missing"},
		{"the close-up missing", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Remove(filepath.Join(folder, place.CloseUpFile)))
		}, nil, []string{"folder"}, "closeup.png missing"},
		{"the close-up replaced", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.WriteFile(filepath.Join(folder, place.CloseUpFile), []byte("x"), 0o600))
		}, nil, []string{"files"}, "closeup.png not as this job made them"},
		{"a file emptied", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Truncate(filepath.Join(folder, "proof.png"), 0))
		}, nil, []string{"folder"}, "proof.png missing or empty"},
		{"pages missing", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.WriteFile(filepath.Join(folder, "sheets.pdf"), short, 0o600))
		}, nil, []string{"files", "pages"}, "sheets.pdf has 2 pages, and the job 4 sheets\n             hint: make it again"},
		{"a byte of the sheets changed", func(t *testing.T, folder, _ string) {
			data := bytes.Clone(files["sheets.pdf"])
			data[bytes.Index(data, []byte{0xFF, 0xD8, 0xFF})+200] ^= 1 // in a sheet's JPEG: the file's structure stands
			require.NoError(t, os.WriteFile(filepath.Join(folder, "sheets.pdf"), data, 0o600))
		}, nil, []string{"files"}, "sheets.pdf not as this job made them"},
		{"sheets cut short", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Truncate(filepath.Join(folder, "sheets.pdf"), int64(len(files["sheets.pdf"])/2)))
		}, nil, []string{"files", "pages"}, "ends early"},
		{"the artwork changed", func(t *testing.T, _, art string) {
			require.NoError(t, os.WriteFile(art, append(bytes.Clone(artBytes), 0), 0o600))
		}, nil, nil, "artwork.png in the job's folder, 60 x 40 pixels, of the job's SHA-256; pattern.png, of which it is a " +
			"copy, is not what it was"},
		{"the artwork gone", func(t *testing.T, _, art string) { require.NoError(t, os.Remove(art)) }, nil, nil,
			"artwork.png in the job's folder, 60 x 40 pixels, of the job's SHA-256; pattern.png, of which it is a copy, is " +
				"not where it was"},
		{"the copy gone", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Remove(filepath.Join(folder, "artwork.png")))
		}, nil, []string{"folder"}, "pattern.png where it was, 60 x 40 pixels, of the job's SHA-256"},
		{"the copy changed", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.WriteFile(filepath.Join(folder, "artwork.png"), []byte("x"), 0o600))
		}, nil, []string{"files"}, "artwork.png not as this job made them"},
		{"the artwork and its copy gone", func(t *testing.T, folder, art string) {
			require.NoError(t, os.Remove(art))
			require.NoError(t, os.Remove(filepath.Join(folder, "artwork.png")))
		}, nil, []string{"folder", "artwork"}, "hint: if the artwork has moved, name it with --artwork"},
		{"the artwork and its copy changed", func(t *testing.T, folder, art string) {
			for _, path := range []string{art, filepath.Join(folder, "artwork.png")} {
				require.NoError(t, os.WriteFile(path, append(bytes.Clone(artBytes), 0), 0o600))
			}
		}, nil, []string{"files", "artwork"}, "not the one this job was made from"},
		{"the artwork moved, and named",
			func(t *testing.T, _, art string) { require.NoError(t, os.Rename(art, art+".moved")) },
			[]string{"--artwork", "ART.moved"}, nil, "pattern.png.moved"},
		{"a figure changed", edit(`"fill": 0.85`, `"fill": 0.84`), nil, []string{"check code"}, "job.json was changed"},
		{"the code changed", edit(`"check_code": "`, `"check_code": "X`), nil, []string{"check code"}, "it says X"},
		{"sheets that do not hold together", edit(`"row": 1`, `"row": 2`), nil, []string{"job"}, "does not hold together"},
		{"an older format", edit(`"dropsheet": 4`, `"dropsheet": 2`), nil, []string{"job"},
			"version 2 and this program reads versions 3 and 4\n" +
				"             hint: use the dropsheet that made it, or make the job again"},
		{"a newer format", edit(`"dropsheet": 4`, `"dropsheet": 5`), nil, []string{"job"},
			"version 5 and this program reads versions 3 and 4"},
		{"the job file gone", func(t *testing.T, folder, _ string) {
			require.NoError(t, os.Remove(filepath.Join(folder, place.JobFile)))
		}, nil, []string{"folder", "job"},
			"nothing can be reprinted without job.json\n             hint: restore it, or make the job again"},
		{"two things at once", func(t *testing.T, folder, art string) {
			require.NoError(t, os.Remove(filepath.Join(folder, "artwork.png")))
			require.NoError(t, os.Remove(art))
			require.NoError(t, os.Remove(filepath.Join(folder, "sheets.pdf")))
		}, nil, []string{"folder", "pages", "artwork"}, "sheets.pdf, artwork.png missing"},
	} {
		t.Run(c.name, func(t *testing.T) {
			j, err := job.Read(made)
			require.NoError(t, err)
			folder := filepath.Join(t.TempDir(), "beside", "job")
			require.NoError(t, os.MkdirAll(folder, 0o755))
			// Lay the artwork so that the job finds it.
			art := filepath.Join(folder, filepath.FromSlash(j.Artwork.File))
			require.NoError(t, os.MkdirAll(filepath.Dir(art), 0o755))
			require.NoError(t, os.WriteFile(art, artBytes, 0o600))
			for name, data := range files {
				require.NoError(t, os.WriteFile(filepath.Join(folder, name), data, 0o600))
			}
			if c.spoil != nil {
				c.spoil(t, folder, art)
			}
			args := []string{"check", folder}
			for _, a := range c.args {
				args = append(args, strings.ReplaceAll(a, "ART", art))
			}
			stdout, stderr, code := dropsheet(t, args...)
			var differs []string
			for _, line := range strings.Split(stdout, "\n") {
				if strings.Contains(line, "DIFFERS") {
					differs = append(differs, strings.TrimSpace(line[:12]))
				}
			}
			require.Equal(t, c.differs, differs, stdout)
			require.Contains(t, stdout, c.says)
			if len(c.differs) == 0 {
				require.Equal(t, exitDone, code)
				require.Empty(t, stderr)
				return
			}
			require.Equal(t, exitFailed, code)
			require.Contains(t, stderr, "is not as it was made")
		})
	}

	// A job file may be named itself, and what is no job at all is told at once.
	_, stderr, code := dropsheet(t, "check", filepath.Join(made, place.JobFile))
	require.Equal(t, exitDone, code, stderr)
	_, stderr, code = dropsheet(t, "check", "nowhere")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "name a job.json")
	_, _, code = dropsheet(t, "check")
	require.Equal(t, exitWrongWords, code)
}
