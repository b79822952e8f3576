package main

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// requireSameFiles compares two folders byte for byte.
func requireSameFiles(t *testing.T, want, got map[string][]byte) {
	t.Helper()
	require.Equal(t, slices.Sorted(maps.Keys(want)), slices.Sorted(maps.Keys(got)))
	for name := range want {
		require.True(t, bytes.Equal(want[name], got[name]), "%s differs", name)
	}
}

// wildWords mean something at a shell, or begin as flags do.
var wildWords = []string{"--print-size", `12"x8in`, "--surround", "#203040", "--drop", `0.2"`, "--lamp",
	"-60cm,-40cm,90cm",
	"--lamp", "60cm,-40cm,90cm", "--lamp-lux", "5000", "--level", "--frame-width", "30cm", "--seams=even"}

// A job made again from its job file in its own place, and from its own command line pasted into a shell in another, is
// the same byte for byte.
func TestJobMadeAgain(t *testing.T) {
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	work := t.TempDir()
	art := filepath.Join(work, "-it's a `harbour` #1 $HOME.png")
	require.NoError(t, os.Rename(pattern, art))
	t.Chdir(work)
	_, stderr, code := dropsheet(t, append([]string{"make", "./" + filepath.Base(art), "--out", "job", "--pixels",
		"60x40"}, wildWords...)...)
	require.Equal(t, exitDone, code, stderr)
	want := readFolder(t, "job")

	_, stderr, code = dropsheet(t, "make", "job")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "give --force to replace the job in it")
	stdout, stderr, code := dropsheet(t, "make", "job/job.json", "--force")
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "since        job: asked in the same words\n"+
		"differs      nothing that decides print or shot\n")
	requireSameFiles(t, want, readFolder(t, "job"))

	stdout, stderr, code = dropsheet(t, "job", "job")
	require.Equal(t, exitDone, code, stderr)
	require.Empty(t, stderr)
	line, figures, _ := strings.Cut(stdout, "\n")
	require.Contains(t, figures, "\nprint ")
	require.Contains(t, figures, " sheets of A4")
	if runtime.GOOS == "windows" {
		return // whose shells are others
	}
	out, err := exec.Command("sh", "-c", "printf '%s\\n' "+line).Output()
	require.NoError(t, err)
	words := strings.Split(strings.TrimSuffix(string(out), "\n"), "\n")
	stdout, _, _ = dropsheet(t, "job", "job", "--json")
	var told struct{ Command []string }
	require.NoError(t, json.Unmarshal([]byte(stdout), &told))
	require.Equal(t, told.Command, words)
	_, stderr, code = dropsheet(t, words[1:]...)
	require.Equal(t, exitDone, code, stderr)
	requireSameFiles(t, want, readFolder(t, "job-again"))
}

// What is asked otherwise differs, and is told, by size and by make; the job remembers it.
func TestJobMadeOtherwise(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--print-size", "30cm", "--aperture", "f/22", "--surround",
		"navy", "--surround-size", "40x40cm", "--frame-width", "20cm")
	stdout, _, _ := dropsheet(t, "size", folder)
	require.Contains(t, stdout, "nothing that decides print or shot", "whichever way make laid the paper")
	for _, c := range []struct {
		words string
		says  []string
	}{
		{"--aperture f/11", []string{"--aperture f/11 in place of f/22\n", "f/22 -> f/11: 2 stops lighter, "}},
		{"--without surround", []string{
			": without --surround navy, without --surround-size 40x40cm\n", "navy round the picture, to "}},
		{"--print-size 35cm --look straight", []string{": --look straight, --print-size 35cm in place of 30cm\n", "larger",
			"bulged, fit cover -> straight, fit cover"}},
		{"--frame-width 15cm", []string{"frame 200 mm wide, "}},
		{"--scale 0.9", []string{"10 % smaller"}},
		{"--drop 4mm", []string{"5 mm across -> a falling drop of water, 4 mm across\n"}},
	} {
		t.Run(c.words, func(t *testing.T) {
			stdout, stderr, code := dropsheet(t, append([]string{"size", folder}, strings.Fields(c.words)...)...)
			require.Equal(t, exitDone, code, stderr)
			for _, says := range c.says {
				require.Contains(t, stdout, says)
			}
		})
	}
	stdout, _, _ = dropsheet(t, "size", folder, "--aperture", "f/11", "--json")
	var told struct {
		Since   string
		Words   []string `json:"words_changed"`
		Differs []struct {
			Path    string
			Was, Is float64
		}
	}
	require.NoError(t, json.Unmarshal([]byte(stdout), &told))
	require.Equal(t, folder, told.Since)
	require.Equal(t, []string{"--aperture f/11 in place of f/22"}, told.Words)
	require.Len(t, told.Differs, 1)
	require.Equal(t, "camera.f_number", told.Differs[0].Path)
	require.InDelta(t, 22, told.Differs[0].Was, 0)
	require.InDelta(t, 11, told.Differs[0].Is, 0)

	other := filepath.Join(t.TempDir(), "other")
	stdout, stderr, code := dropsheet(t, "make", folder, "--aperture", "f/11", "--out", other)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, stdout, "2 stops lighter")
	stdout, _, _ = dropsheet(t, "job", other)
	require.Contains(t, stdout, " --aperture f/11 ")
	stdout, _, _ = dropsheet(t, "size", other, "--aperture", "f/22")
	require.Contains(t, stdout, "2 stops darker")
}

// A job whose artwork has moved away is made again from its copy, in its own folder too, and keeps its name and the
// place that the artwork had; another artwork takes the same words. size needs neither.
func TestJobMadeAgainFromItsCopy(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1")
	want := readFolder(t, folder)
	require.NoError(t, os.Remove(art))
	_, stderr, code := dropsheet(t, "make", folder, "--force")
	require.Equal(t, exitDone, code, stderr)
	requireSameFiles(t, want, readFolder(t, folder))

	pattern, _ := jobtest.WritePattern(t, 90, 40)
	other, out := strings.TrimSuffix(pattern, ".png"), filepath.Join(t.TempDir(), "job")
	require.NoError(t, os.Rename(pattern, other))
	_, stderr, code = dropsheet(t, "make", folder, "--artwork", other, "--out", out)
	require.Equal(t, exitDone, code, stderr)
	require.Contains(t, string(readFolder(t, out)[place.JobFile]), `"width_px": 90`)
	requireCopied(t, other, out, "artwork")

	_, stderr, code = dropsheet(t, "job", folder)
	require.Equal(t, exitDone, code)
	require.Contains(t, stderr, "takes the job's copy of it")

	require.NoError(t, os.Remove(filepath.Join(folder, "artwork.png")))
	_, stderr, code = dropsheet(t, "size", folder)
	require.Equal(t, exitDone, code, stderr)
	_, stderr, code = dropsheet(t, "make", folder, "--out", out+"2")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "nor in the job's folder\nhint: name it, or another, with --artwork")
}

// A job takes its printer as it was read when the job was made; a job that kept no words can't be asked again.
func TestJobMadeAgainForItsPrinter(t *testing.T) {
	keepPrinters(t)
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art, "--max-sheets", "1", "--printer", "study inkjet")
	want := readFolder(t, folder)
	t.Setenv("XDG_CONFIG_HOME", t.TempDir()) // where none is kept
	_, stderr, code := dropsheet(t, "make", folder, "--force")
	require.Equal(t, exitDone, code, stderr)
	requireSameFiles(t, want, readFolder(t, folder))
	stdout, stderr, _ := dropsheet(t, "job", folder)
	require.Contains(t, stderr, `printer "study inkjet" is not kept here as it was read when the job was made`)
	require.Contains(t, stdout, "--printer 'study inkjet'")

	file := filepath.Join(folder, place.JobFile)
	require.NoError(t, os.WriteFile(file, asVersion3(t, want[place.JobFile]), 0o600))
	_, stderr, code = dropsheet(t, "size", folder)
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "is of format 3, which kept no words")
	require.Contains(t, stderr, "hint: dropsheet job ")
	stdout, stderr, code = dropsheet(t, "job", folder)
	require.Equal(t, exitDone, code)
	require.Contains(t, stderr, "made up from its plan: print, board and number of sheets come out as they were")
	require.Contains(t, stdout, " --printer 'study inkjet' ")
	require.Contains(t, stdout, "\nsheets ")
}
