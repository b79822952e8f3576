package main

import (
	"bytes"
	"compress/zlib"
	"context"
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"encoding/json"
	"io"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"dropsheet/tile/colour/icctest"
	"dropsheet/tile/job"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
	"dropsheet/tile/pdf/pdftest"

	"github.com/stretchr/testify/require"
)

// dropsheet runs the program with arguments and returns what it wrote.
func dropsheet(t *testing.T, args ...string) (stdout, stderr string, code int) {
	t.Helper()
	var out, errs bytes.Buffer
	code = run(context.Background(), console{out: &out, err: &errs}, args)
	return out.String(), errs.String(), code
}

// madeBefore holds what the makes of this run wrote, by their artwork, the way to it and their flags: the
// same bytes each time, as TestMakeWritesTheJobAndTheSameBytesAgain shows.
var madeBefore sync.Map

// mustMake lays out a new folder as make writes it, for a camera of few pixels unless flags say otherwise.
// What was made before in the same way is copied.
func mustMake(t *testing.T, art string, flags ...string) (folder string) {
	t.Helper()
	folder = filepath.Join(t.TempDir(), "job")
	picture, err := os.ReadFile(art)
	require.NoError(t, err)
	way, err := filepath.Rel(folder, art)
	require.NoError(t, err)
	key := strings.Join(append([]string{hashOf(picture), way}, flags...), "\n")
	if files, ok := madeBefore.Load(key); ok {
		require.NoError(t, os.Mkdir(folder, 0o755))
		for name, data := range files.(map[string][]byte) {
			require.NoError(t, os.WriteFile(filepath.Join(folder, name), data, 0o644))
		}
		return folder
	}
	_, stderr, code := dropsheet(t, append([]string{"make", art, "--out", folder, "--pixels", "120x80"}, flags...)...)
	require.Equal(t, exitDone, code, stderr)
	madeBefore.Store(key, readFolder(t, folder))
	return folder
}

func hashOf(data []byte) string {
	sum := sha256.Sum256(data)
	return hex.EncodeToString(sum[:])
}

func readFolder(t *testing.T, folder string) map[string][]byte {
	t.Helper()
	files := map[string][]byte{}
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	for _, e := range entries {
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		require.NoError(t, err)
		files[e.Name()] = data
	}
	return files
}

// Piped and on a terminal, with --json and without, make writes the same bytes; progress shows on a terminal
// only, and --json gives the job file's figures.
func TestMakeWritesTheJobAndTheSameBytesAgain(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 600, 400)
	parent := t.TempDir()
	one, two := filepath.Join(parent, "one"), filepath.Join(parent, "two")
	stdout, stderr, code := dropsheet(t, "make", art, "--pixels", "120x80", "--out", one)
	require.Equal(t, exitDone, code, stderr)
	require.Empty(t, stderr, "nothing to warn of, and no progress when piped")
	require.Contains(t, stdout, "sheets")

	var out, errs bytes.Buffer
	code = run(context.Background(), console{out: &out, err: &errs, terminal: true},
		[]string{"make", art, "--pixels", "120x80", "--out", two, "--json"})
	require.Equal(t, exitDone, code)
	require.Contains(t, errs.String(), "sheet 4 of 4")

	first, second := readFolder(t, one), readFolder(t, two)
	files := place.Files("artwork.png", false)
	require.Len(t, first, len(files))
	for _, name := range files {
		require.NotEmpty(t, first[name], name)
		require.True(t, bytes.Equal(first[name], second[name]), "%s differs from run to run", name)
	}
	entries, err := os.ReadDir(parent)
	require.NoError(t, err)
	require.Len(t, entries, 2, "no unfinished folder is left")
	require.Equal(t, string(first[place.JobFile]), out.String(), "--json gives the same figures")
	requireContract(t, first[place.JobFile])
}

// requireContract looks for what programs that read a job file may count on.
func requireContract(t *testing.T, file []byte) {
	t.Helper()
	var j map[string]any
	require.NoError(t, json.Unmarshal(file, &j))
	for path, want := range map[string]string{
		"dropsheet": "", "drop": "body diameter_mm index focal_length_mm distance_mm camera_distance_mm reverses",
		"picture":  "fill reach_mm near_axis_reach_mm width_mm height_mm look fit",
		"backdrop": "width_mm height_mm columns rows paper orientation", "sheets": "", "seams": "",
		"artwork": "file sha256 width_px height_px",
	} {
		require.Contains(t, j, path)
		for _, key := range strings.Fields(want) {
			require.Contains(t, j[path], key)
		}
	}
	sheet := j["sheets"].([]any)[0].(map[string]any)
	for _, key := range []string{"name", "page", "row", "column", "cell_mm", "on_page_mm"} {
		require.Contains(t, sheet, key)
	}
	for _, key := range []string{"axis", "at_mm", "between"} {
		require.Contains(t, j["seams"].([]any)[0], key)
	}
}

func TestMakeNeverOverwrites(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art)
	before := readFolder(t, folder)

	_, stderr, code := dropsheet(t, "make", art, "--pixels", "120x80", "--out", folder, "--lap", "12mm")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "--force")
	require.Equal(t, before, readFolder(t, folder))

	_, stderr, code = dropsheet(t, "make", art, "--pixels", "120x80", "--out", folder, "--lap", "12mm", "--force")
	require.Equal(t, exitDone, code, stderr)
	require.NotEqual(t, before[place.JobFile], readFolder(t, folder)[place.JobFile])

	precious := filepath.Join(folder, "notes.txt")
	require.NoError(t, os.WriteFile(precious, []byte("mine"), 0o600))
	_, stderr, code = dropsheet(t, "make", art, "--pixels", "120x80", "--out", folder, "--force")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "notes.txt")
	require.FileExists(t, precious)

	file := filepath.Join(t.TempDir(), "file")
	require.NoError(t, os.WriteFile(file, nil, 0o600))
	_, stderr, code = dropsheet(t, "make", art, "--pixels", "120x80", "--out", file, "--force")
	require.Equal(t, exitFailed, code)
	require.Contains(t, stderr, "can't be used")
}

// What is read is never written over, not even with --force, and a folder that can't be put in its place is
// told before the work is done.
func TestInputsAreKept(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 60, 40)
	folder := mustMake(t, art)
	before := readFolder(t, folder)
	artBefore, err := os.ReadFile(art)
	require.NoError(t, err)
	for _, c := range []struct {
		name string
		args []string
		says string
	}{
		{"the job, by reprint", []string{"reprint", folder, "R1C1", "--out", filepath.Join(folder, place.JobFile), "--force"},
			"part of its job"},
		{"the job's sheets, by reprint", []string{"reprint", folder, "R1C1", "--out", filepath.Join(folder, "sheets.pdf"),
			"--force"}, "part of its job"},
		{"the artwork, by reprint", []string{"reprint", folder, "R1C1", "--out", art, "--force"}, "what is read here"},
		{"the artwork, by proof", []string{"proof", folder, "--out", art, "--force"}, "what is read here"},
		{"the artwork, by seams", []string{"seams", folder, "--out", art, "--force"}, "what is read here"},
		{"the artwork's own folder, by make", []string{"make", filepath.Join(folder, "proof.png"), "--out", folder,
			"--force"}, "holds the artwork itself"},
		{"the folder one stands in", []string{"make", art, "--out", "."}, "name a new folder"},
		{"a folder that is not there", []string{"proof", folder, "--out", filepath.Join(folder, "none", "p.png")},
			"make it first"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Chdir(t.TempDir())
			_, stderr, code := dropsheet(t, c.args...)
			require.Equal(t, exitFailed, code, stderr)
			require.Contains(t, stderr, c.says)
			require.Equal(t, before, readFolder(t, folder))
			now, err := os.ReadFile(art)
			require.NoError(t, err)
			require.Equal(t, artBefore, now)
		})
	}
}

// A sheet of more pixels than reprint takes is refused before it is made: make writes no job that nothing can read.
func TestSheetOfTooManyPixels(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 600, 400)
	folder := filepath.Join(t.TempDir(), "job")
	args := []string{"make", art, "--out", folder, "--drop", "0.5mm", "--print-size", "7.5x5mm", "--paper", "A2",
		"--surround", "navy", "--surround-size", "380x380mm", "--pixels", "24x16"}
	_, stderr, code := dropsheet(t, append(args, "--ppi", "4799")...)
	require.Equal(t, exitWrongWords, code, stderr)
	require.Regexp(t, `sheet R1C1 of \d{5} x \d{5} pixels has more than 500000000`+"\n"+
		`hint: print coarser, with a lower --ppi, or on smaller paper\n$`, stderr)
	require.NoDirExists(t, folder)
	_, stderr, code = dropsheet(t, append(args, "--ppi", "100")...)
	require.Equal(t, exitDone, code, stderr)
	_, stderr, code = dropsheet(t, "reprint", folder, "all")
	require.Equal(t, exitDone, code, stderr)
}

// A make that fails leaves none of the folders that it made.
func TestFailedMakeLeavesNoFolders(t *testing.T) {
	work := t.TempDir()
	short := filepath.Join(t.TempDir(), "short.png")
	require.NoError(t, os.WriteFile(short, pngBytes(t)[:200], 0o600))
	_, stderr, code := dropsheet(t, "make", short, "--out", filepath.Join(work, "a", "b", "c"))
	require.Equal(t, exitFailed, code, stderr)
	requireEmpty(t, work)
}

// The artwork's colour profile goes into the sheets as it is; one that does not suit is left out and told of.
func TestProfileGoesIntoTheSheets(t *testing.T) {
	plain, _ := jobtest.WritePattern(t, 60, 40)
	without := readFolder(t, mustMake(t, plain))["sheets.pdf"]
	data, err := os.ReadFile(plain)
	require.NoError(t, err)
	profile := make([]byte, 132)
	binary.BigEndian.PutUint32(profile, 132)
	copy(profile[8:], []byte{2, 0x10})
	copy(profile[12:], "mntrRGB XYZ ")
	copy(profile[36:], "acsp")
	profile = append(profile[:128], 0, 0, 0, 1, 'c', 'p', 'r', 't', 0, 0, 0, 144, 0, 0, 0, 12, 't', 'e', 'x', 't', 0, 0,
		0, 0, 'o', 'w', 'n', 0)
	binary.BigEndian.PutUint32(profile, uint32(len(profile)))
	tagged := filepath.Join(t.TempDir(), "tagged.png")
	require.NoError(t, os.WriteFile(tagged, icctest.InPNG(t, data, profile), 0o600))

	sheets := readFolder(t, mustMake(t, tagged))["sheets.pdf"]
	require.True(t, bytes.Contains(inflated(sheets), profile), "the profile stands in the file")
	require.False(t, bytes.Contains(inflated(without), profile))
}

// inflated is all that zlib finds in a file's streams.
func inflated(file []byte) (all []byte) {
	for _, part := range bytes.Split(file, []byte("stream\n"))[1:] {
		if z, err := zlib.NewReader(bytes.NewReader(part)); err == nil {
			text, _ := io.ReadAll(z) // what follows the stream's end is no part of it
			all = append(all, text...)
		}
	}
	return all
}

// A stop in the middle, as Ctrl-C gives it, leaves neither a folder nor a trace of one.
func TestMakeStopped(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 600, 400)
	parent := t.TempDir()
	ctx, stop := context.WithCancel(context.Background())
	var out, errs bytes.Buffer
	// The progress line of the second sheet stops the run: a moment that every run passes.
	code := run(ctx, console{out: &out, err: writerFunc(func(p []byte) { errs.Write(p); stop() }), terminal: true},
		[]string{"make", art, "--pixels", "120x80", "--distance", "40cm", "--out", filepath.Join(parent, "job")})
	require.Equal(t, exitFailed, code)
	require.Contains(t, errs.String(), "stopped")
	require.Empty(t, out.String())
	requireEmpty(t, parent)
}

type writerFunc func([]byte)

func (f writerFunc) Write(p []byte) (int, error) { f(p); return len(p), nil }

// A reprinted page draws pixel for pixel as in the original.
func TestReprint(t *testing.T) {
	art, _ := jobtest.WritePattern(t, 600, 400)
	folder := mustMake(t, art, "--distance", "40cm", "--surround", "navy", "--surround-size", "92x62cm")
	sheets, err := os.ReadFile(filepath.Join(folder, "sheets.pdf"))
	require.NoError(t, err)
	original := pdftest.Open(t, sheets)
	j, err := job.Read(folder)
	require.NoError(t, err)

	for _, c := range []struct {
		name string
		ask  []string
	}{{"one sheet", []string{"R2C3"}}, {"a row and a sheet", []string{"R1", "R3C2"}}, {"all", []string{"all"}}} {
		t.Run(c.name, func(t *testing.T) {
			out := filepath.Join(t.TempDir(), "again.pdf")
			_, stderr, code := dropsheet(t, append([]string{"reprint", folder, "--out", out}, c.ask...)...)
			require.Equal(t, exitDone, code, stderr)
			data, err := os.ReadFile(out)
			require.NoError(t, err)
			chosen, err := j.Select(c.ask)
			require.NoError(t, err)
			again := pdftest.Open(t, data)
			require.Equal(t, len(chosen), again.PageCount())
			for i, s := range chosen {
				require.Equal(t, original.Render(s.Page, 72).Pix, again.Render(i+1, 72).Pix, s.Name)
				require.Equal(t, original.PageBoxes(s.Page), again.PageBoxes(i+1))
			}
			if len(chosen) == len(j.Sheets) {
				require.Equal(t, sheets, data, "all sheets again are the file again")
			}
		})
	}

	t.Run("beside the job by itself, once", func(t *testing.T) {
		_, stderr, code := dropsheet(t, "reprint", folder, "r2c3", "C1")
		require.Equal(t, exitDone, code, stderr)
		require.FileExists(t, filepath.Join(folder, "reprint-R2C3-C1.pdf"))
		_, stderr, code = dropsheet(t, "reprint", folder, "r2c3", "C1")
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "--force")
	})
	t.Run("no such sheet", func(t *testing.T) {
		_, stderr, code := dropsheet(t, "reprint", folder, "R9C9")
		require.Equal(t, exitWrongWords, code)
		require.Contains(t, stderr, "rows R1 to R3")
	})
	t.Run("artwork that changed", func(t *testing.T) {
		other := filepath.Join(t.TempDir(), "pattern.png")
		data, err := os.ReadFile(art)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(other, append(data, 0), 0o600))
		out := filepath.Join(t.TempDir(), "again.pdf")
		_, stderr, code := dropsheet(t, "reprint", folder, "R1C1", "--artwork", other, "--out", out)
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "not the one this job was made from")
		require.NoFileExists(t, out)
	})
	t.Run("artwork that moved", func(t *testing.T) {
		moved := filepath.Join(t.TempDir(), "elsewhere.png")
		require.NoError(t, os.Rename(art, moved))
		require.NoError(t, os.Remove(filepath.Join(folder, "artwork.png")))
		require.NoError(t, os.Remove(filepath.Join(folder, "sheets.pdf")))
		out := filepath.Join(t.TempDir(), "again.pdf")
		_, stderr, code := dropsheet(t, "reprint", folder, "R1C1", "--out", out)
		require.Equal(t, exitFailed, code)
		require.Contains(t, stderr, "hint: if the artwork has moved")
		_, stderr, code = dropsheet(t, "reprint", folder, "R1C1", "--artwork", moved, "--out", out)
		require.Equal(t, exitDone, code, stderr)
	})
}
