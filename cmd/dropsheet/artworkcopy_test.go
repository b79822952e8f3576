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
	"dropsheet/tile/pdf/pdftest"
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

// The copy's name keeps what the artwork's own ended in.
func TestArtworkIsCopied(t *testing.T) {
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	art := filepath.Join(filepath.Dir(pattern), "art.PNG")
	require.NoError(t, os.Rename(pattern, art))
	requireCopied(t, art, mustMake(t, art, "--max-sheets", "1"), "artwork.PNG")
}

// requireCopied requires that a job's folder has the artwork's bytes, under that name, and that the job file says so.
func requireCopied(t *testing.T, art, folder, name string) {
	t.Helper()
	data, err := os.ReadFile(art)
	require.NoError(t, err)
	files := readFolder(t, folder)
	require.Len(t, files, len(place.Files(name, false)))
	require.True(t, bytes.Equal(data, files[name]))
	var j struct {
		Artwork struct{ Copy, SHA256 string }
		Files   map[string]string
	}
	require.NoError(t, json.Unmarshal(files[place.JobFile], &j))
	require.Equal(t, name, j.Artwork.Copy)
	require.Equal(t, hashOf(data), j.Artwork.SHA256)
	require.Equal(t, hashOf(data), j.Files[name])
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

// An artwork that is left where it is is found there by the way from the job's folder, by the way from anywhere, and
// beside the job, wherever either goes; when it is gone it can be named.
func TestArtworkLeftWhereItIs(t *testing.T) {
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	picture, err := os.ReadFile(pattern)
	require.NoError(t, err)
	parent := filepath.Join(t.TempDir(), "parent")
	art, made := filepath.Join(parent, "pictures", "art.png"), map[string][]byte(nil)
	for _, c := range []struct {
		name  string
		move  func(t *testing.T, art, parent string)
		found bool
	}{
		{"as it was", func(*testing.T, string, string) {}, true},
		{"the job moved", func(t *testing.T, _, parent string) {
			require.NoError(t, os.Mkdir(filepath.Join(parent, "deep"), 0o755))
			require.NoError(t, os.Rename(filepath.Join(parent, "job"), filepath.Join(parent, "deep", "job")))
		}, true},
		{"both moved", func(t *testing.T, art, parent string) {
			require.NoError(t, os.Rename(filepath.Dir(art), filepath.Join(parent, "deep")))
			require.NoError(t, os.Rename(filepath.Join(parent, "job"), filepath.Join(parent, "deep", "job")))
		}, true},
		{"moved into the job's folder", func(t *testing.T, art, parent string) {
			require.NoError(t, os.Rename(art, filepath.Join(parent, "job", filepath.Base(art))))
		}, true},
		{"another name", func(t *testing.T, art, _ string) { require.NoError(t, os.Rename(art, art+"2")) }, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.NoError(t, os.RemoveAll(parent))
			require.NoError(t, os.MkdirAll(filepath.Dir(art), 0o755))
			require.NoError(t, os.WriteFile(art, picture, 0o644))
			folder := filepath.Join(parent, "job")
			if made == nil { // once, and laid out again for the others, at the same place
				_, stderr, code := dropsheet(t, "make", art, "--out", folder, "--keep-artwork=false", "--max-sheets", "1",
					"--pixels", "24x16")
				require.Equal(t, exitDone, code, stderr)
				made = readFolder(t, folder)
				require.Len(t, made, len(place.Files("", false)))
			} else {
				require.NoError(t, os.Mkdir(folder, 0o755))
				for name, data := range made {
					require.NoError(t, os.WriteFile(filepath.Join(folder, name), data, 0o644))
				}
			}
			c.move(t, art, parent)
			if _, err := os.Stat(folder); err != nil {
				folder = filepath.Join(parent, "deep", "job")
			}
			stdout, stderr, code := dropsheet(t, "check", folder)
			if !c.found {
				require.Equal(t, exitFailed, code)
				_, stderr, code = dropsheet(t, "seams", folder)
				require.Equal(t, exitFailed, code)
				require.Contains(t, stderr, "hint: if the artwork has moved, name it with --artwork")
				_, stderr, code = dropsheet(t, "seams", folder, "--artwork", art+"2")
			}
			require.Equal(t, exitDone, code, stdout+stderr)
		})
	}
}

// The only copy of an artwork is not replaced by a job that keeps none.
func TestOnlyCopyStays(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1")
	require.NoError(t, os.Remove(art))
	_, stderr, code := dropsheet(t, "make", folder, "--force", "--keep-artwork=false")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "holds the artwork itself")
	require.FileExists(t, filepath.Join(folder, "artwork.png"))
}

// A folder that is reached through a link records the way to its artwork, reached through another, from where both
// really are: the job finds it by either path, and is the same job byte for byte.
func TestFolderThroughALink(t *testing.T) {
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	parent := t.TempDir()
	real, link := filepath.Join(parent, "a", "deep", "real"), filepath.Join(parent, "link")
	require.NoError(t, os.MkdirAll(real, 0o755))
	require.NoError(t, os.Symlink(real, link))
	art := filepath.Join(parent, "art.png")
	require.NoError(t, os.Rename(pattern, art))
	words := []string{"--keep-artwork=false", "--max-sheets", "1", "--pixels", "24x16", "--force"}
	make := func(art, out string) map[string][]byte {
		_, stderr, code := dropsheet(t, append([]string{"make", art, "--out", out}, words...)...)
		require.Equal(t, exitDone, code, stderr)
		return readFolder(t, out)
	}
	require.NoError(t, os.Symlink(parent, filepath.Join(parent, "pictures")))
	plain := make(art, filepath.Join(real, "job"))
	require.Contains(t, string(plain[place.JobFile]), `"file": "../../../../art.png"`)
	requireSameFiles(t, plain, make(filepath.Join(parent, "pictures", "art.png"), filepath.Join(link, "job")))
	for _, folder := range []string{filepath.Join(link, "job"), filepath.Join(real, "job")} {
		stdout, stderr, code := dropsheet(t, "check", folder)
		require.Equal(t, exitDone, code, stderr)
		require.Contains(t, stdout, "art.png where it was")
	}
}

// Without any artwork sheets come from sheets.pdf as they were, page by page, as long as that is as it was made;
// another printer needs the artwork, and is told which pages the sheets are.
func TestReprintWithoutArtwork(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 300, 200)
	folder := mustMake(t, art, "--print-size", "40cm", "--keep-artwork=false")
	require.NoError(t, os.Remove(art))
	stdout, stderr, code := dropsheet(t, "reprint", folder, "R1C2", "R1C1", "--spare", "1")
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stderr, "warning: the artwork is not to be had: the sheets are taken from sheets.pdf, exactly")
	require.Contains(t, stdout, "2 of 3 sheets")
	files := readFolder(t, folder)
	was, is := pdftest.Open(t, files["sheets.pdf"]), pdftest.Open(t, files["reprint-R1C2-R1C1.pdf"])
	require.Equal(t, 4, is.PageCount())
	for i, page := range []int{1, 1, 2, 2} { // in pasting order
		require.Contains(t, is.Text(i+1), []string{"R1C1", "R1C2"}[page-1])
		require.Equal(t, was.Render(page, 40).Pix, is.Render(i+1, 40).Pix)
	}

	_, stderr, code = dropsheet(t, "reprint", folder, "all")
	require.Equal(t, exitDone, code, stderr)
	require.True(t, bytes.Equal(files["sheets.pdf"], readFolder(t, folder)["reprint-ALL.pdf"]))

	_, stderr, code = dropsheet(t, "reprint", folder, "R1C2", "--paper", "A3", "--out", filepath.Join(folder, "x.pdf"))
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "for those that the job was made for R1C2 is page 2 of sheets.pdf")

	require.NoError(t, os.WriteFile(filepath.Join(folder, "sheets.pdf"), append(files["sheets.pdf"], '\n'), 0o600))
	_, stderr, code = dropsheet(t, "reprint", folder, "R1C2", "--out", filepath.Join(folder, "x.pdf"))
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "name it with --artwork")
	require.NoFileExists(t, filepath.Join(folder, "x.pdf"))
}
