package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// The artwork moves away or becomes another file: what reads the job goes by its own copy, with the sheets as they
// were. Someone who changed it is told, since they may look for the change.
func TestCopyStandsInForTheArtwork(t *testing.T) {
	other, _ := jobtest.WritePattern(t, 90, 40)
	theirs, err := os.ReadFile(other)
	require.NoError(t, err)
	const warning = "warning: the artwork is not what it was when the job was made, whose copy of it is used"
	for _, c := range []struct {
		name   string
		change func(t *testing.T, art string)
		warns  bool
	}{
		{"as it was", func(*testing.T, string) {}, false},
		{"moved", func(t *testing.T, art string) { require.NoError(t, os.Rename(art, art+".moved")) }, false},
		{"its folder gone", func(t *testing.T, art string) { require.NoError(t, os.RemoveAll(filepath.Dir(art))) }, false},
		{"another picture", func(t *testing.T, art string) { require.NoError(t, os.WriteFile(art, theirs, 0o600)) }, true},
		{"no picture", func(t *testing.T, art string) { require.NoError(t, os.WriteFile(art, []byte("x"), 0o600)) }, true},
		{"cut short", func(t *testing.T, art string) { require.NoError(t, os.Truncate(art, 60)) }, true},
		{"a folder", func(t *testing.T, art string) {
			require.NoError(t, os.Remove(art))
			require.NoError(t, os.Mkdir(art, 0o755))
		}, true},
	} {
		t.Run(c.name, func(t *testing.T) {
			art, _ := jobtest.WritePattern(t, 60, 40)
			folder := mustMake(t, art, "--max-sheets", "2")
			sheets := readFolder(t, folder)["sheets.pdf"]
			c.change(t, art)
			for _, words := range [][]string{
				{"reprint", folder, "all"},
				{"proof", folder, "--pixels", "24x16", "--samples", "1"},
				{"seams", folder},
			} {
				_, stderr, code := dropsheet(t, words...)
				require.Equal(t, exitDone, code, stderr)
				if c.warns {
					require.Contains(t, stderr, warning, words[0])
				} else {
					require.NotContains(t, stderr, warning, words[0])
				}
			}
			require.True(t, bytes.Equal(sheets, readFolder(t, folder)["reprint-ALL.pdf"]))
		})
	}
}

// The folder has the artwork's bytes, under a name that keeps what its own ended in, and the job file says which.
func TestArtworkIsCopied(t *testing.T) {
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	data, err := os.ReadFile(pattern)
	require.NoError(t, err)
	for name, want := range map[string]string{"art.PNG": "artwork.PNG", "art": "artwork"} {
		t.Run(name, func(t *testing.T) {
			art := filepath.Join(t.TempDir(), name)
			require.NoError(t, os.WriteFile(art, data, 0o600))
			folder := mustMake(t, art, "--max-sheets", "1")
			files := readFolder(t, folder)
			require.Len(t, files, len(place.Files(want)))
			require.True(t, bytes.Equal(data, files[want]))
			var j struct {
				Artwork struct{ Copy, SHA256 string }
				Files   map[string]string
			}
			require.NoError(t, json.Unmarshal(files[place.JobFile], &j))
			require.Equal(t, want, j.Artwork.Copy)
			require.Equal(t, hashOf(data), j.Artwork.SHA256)
			require.Equal(t, hashOf(data), j.Files[want])
		})
	}
}

// The job keeps the words that it was asked for with, those of lists in their order, and none that say only where it
// goes and how it is told.
func TestWordsAreKept(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := filepath.Join(t.TempDir(), "job")
	_, stderr, code := dropsheet(t, "make", art, "--max-sheets", "1", "--out", folder, "--json", "--force",
		"--pixels=120x80",
		"--lamp", "60cm,-40cm,90cm", "--lamp", "-60cm,-40cm,90cm", "--lamp-lux", "5000", "--round", "--look", "bulged",
		"--look", "straight", "--distance", " 40cm ", "--avoid", "0.5,0.5,0.1", "--avoid", "0.1,0.1,0.1")
	require.Equal(t, exitDone, code, stderr)
	var j struct{ Asked map[string][]string }
	require.NoError(t, json.Unmarshal(readFolder(t, folder)[place.JobFile], &j))
	require.Equal(t, map[string][]string{
		"max-sheets": {"1"}, "pixels": {"120x80"}, "lamp": {"60cm,-40cm,90cm", "-60cm,-40cm,90cm"}, "lamp-lux": {"5000"},
		"round": {"true"}, "look": {"straight"}, "distance": {"40cm"}, "avoid": {"0.5,0.5,0.1", "0.1,0.1,0.1"},
	}, j.Asked)

	plain := mustMake(t, art)
	require.Contains(t, string(readFolder(t, plain)[place.JobFile]),
		"\"asked\": {\n    \"pixels\": [\n      \"120x80\"\n    ]\n  }")
}
