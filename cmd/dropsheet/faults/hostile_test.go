//go:build unix

package faults

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// hostileFolder is a folder with a job, its artwork, and what a hostile job file might reach for.
type hostileFolder struct {
	root, job, art string
}

// newHostileFolder lays out root/job, root/art.png, root/secret.txt, root/other.png, root/pipe and links to
// what is no file.
func newHostileFolder(t *testing.T) hostileFolder {
	t.Helper()
	root := t.TempDir()
	p := hostileFolder{root, filepath.Join(root, "job"), filepath.Join(root, "art.png")}
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	data, err := os.ReadFile(pattern)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(p.art, data, 0o600))
	other, _ := jobtest.WritePattern(t, 61, 40)
	require.NoError(t, os.Rename(other, filepath.Join(root, "other.png")))
	require.NoError(t, os.WriteFile(filepath.Join(root, "secret.txt"), []byte("a secret of this machine"), 0o600))
	require.NoError(t, syscall.Mkfifo(filepath.Join(root, "pipe"), 0o600))
	require.NoError(t, os.Symlink("/dev/zero", filepath.Join(root, "zero-link")))
	require.NoError(t, os.Symlink("pipe", filepath.Join(root, "pipe-link")))
	if madeOnce == nil {
		_, stderr, code := programtest.Run(t, "make", p.art, "--out", p.job, "--pixels", "120x80", "--max-sheets", "1")
		require.Equal(t, programtest.Done, code, stderr)
		madeOnce = programtest.Files(t, p.job)
		return p
	}
	require.NoError(t, os.Mkdir(p.job, 0o700))
	for name, data := range madeOnce {
		require.NoError(t, os.WriteFile(filepath.Join(p.job, name), data, 0o600))
	}
	return p
}

// madeOnce is the files of the job: the same for every test, and made by the first.
var madeOnce map[string][]byte

// rewrite changes the job file: a value by the keys that lead to it.
func (p hostileFolder) rewrite(t *testing.T, value any, keys ...string) {
	t.Helper()
	path := filepath.Join(p.job, place.JobFile)
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	var tree map[string]any
	require.NoError(t, json.Unmarshal(text, &tree))
	at := tree
	for _, key := range keys[:len(keys)-1] {
		at = at[key].(map[string]any)
	}
	require.Contains(t, at, keys[len(keys)-1])
	at[keys[len(keys)-1]] = value
	text, err = json.Marshal(tree)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, text, 0o600))
}

// listing is all that lies in the folder, with what regular files hold.
func (p hostileFolder) listing(t *testing.T) map[string]string {
	t.Helper()
	found := map[string]string{}
	require.NoError(t, filepath.WalkDir(p.root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		name, err := filepath.Rel(p.root, path)
		if err != nil {
			return err
		}
		found[name] = d.Type().String()
		if d.Type().IsRegular() {
			data, err := os.ReadFile(path)
			if err != nil {
				return err
			}
			found[name] = string(data)
		}
		return nil
	}))
	return found
}

// trials are what the readers write into the job's folder.
var trials = []string{"reprint-ALL.pdf", "proof-trial.png", "seams-trial.png"}

// readers are the commands that read a job.
func (p hostileFolder) readers() [][]string {
	return [][]string{
		{"reprint", p.job, "all"},
		{"proof", p.job, "--pixels", "24x16", "--samples", "1"},
		{"seams", p.job, "--out", filepath.Join(p.job, "seams-trial.png")},
	}
}

// TestArtworkOfAHostileJob: a job file that names something else for its artwork. Nothing but a whole picture
// file with the job's own hash is taken; a device or a pipe is not even opened, and nothing is written or
// told of what a file holds.
func TestArtworkOfAHostileJob(t *testing.T) {
	p := newHostileFolder(t)
	p.rewrite(t, "", "artwork", "copy")                               // which would stand in
	require.NoError(t, os.Remove(filepath.Join(p.job, "sheets.pdf"))) // likewise
	for _, c := range []struct {
		name, file, says string
	}{
		{"a file by its whole path", filepath.Join(p.root, "secret.txt"), "not a picture of a known format"},
		{"a file further up", "../secret.txt", "not a picture of a known format"},
		{"another picture", "../other.png", "not the one this job was made from"},
		{"the job itself", place.JobFile, "not a picture of a known format"},
		{"a device without end", "/dev/zero", "a device or a pipe"},
		{"the terminal", "/dev/tty", "a device or a pipe"},
		{"a pipe", "../pipe", "a device or a pipe"},
		{"a link to a device", "../zero-link", "a device or a pipe"},
		{"a link to a pipe", "../pipe-link", "a device or a pipe"},
		{"a folder", "..", "this is a folder"},
		{"far up", strings.Repeat("../", 200), "this is a folder"},
		{"nothing", "", "this is a folder"},
		{"what is not there", "../gone.png", "no such file"},
		{"a way through a file", "../art.png/x", "not a directory"},
		{"a name with a zero", "../art.png\x00.png", "invalid argument"},
		{"a name that would clear the screen", "../\x1b[2J.png", "no such file"},
		{"a name without end", strings.Repeat("long", 20_000), "file name too long"},
	} {
		p.rewrite(t, c.file, "artwork", "file")
		before := p.listing(t)
		for _, args := range p.readers() {
			t.Run(c.name+", by "+args[0], func(t *testing.T) {
				var stdout, stderr string
				var code int
				jobtest.Bounded(t, c.name, func() { stdout, stderr, code = programtest.Run(t, args...) })
				require.Equal(t, programtest.Failed, code, stderr)
				require.Empty(t, stdout)
				require.Contains(t, stderr, c.says)
				require.NotContains(t, stderr, "secret of this machine")
				require.NotContains(t, stderr, "\x1b")
				require.Equal(t, before, p.listing(t), "nothing is written")
			})
		}
	}
}

// TestCopyOfAHostileJob: the folder that a job comes in may hold anything under the name of the artwork's copy. It is
// taken for what the hash says, and what is no file is not even opened; where it is the copy, it stands in for whatever
// the job names as its artwork.
func TestCopyOfAHostileJob(t *testing.T) {
	p := newHostileFolder(t)
	p.rewrite(t, "../pipe", "artwork", "file")
	for _, args := range p.readers() {
		jobtest.Bounded(t, args[0], func() {
			_, stderr, code := programtest.Run(t, args...)
			require.Equal(t, programtest.Done, code, stderr)
		})
	}
	for _, made := range trials {
		require.NoError(t, os.Remove(filepath.Join(p.job, made)))
	}
	require.NoError(t, os.Remove(filepath.Join(p.job, "sheets.pdf"))) // which would stand in
	copied := filepath.Join(p.job, "artwork.png")
	for _, c := range []struct{ target, says string }{
		{"../pipe", "a device or a pipe"}, {"/dev/zero", "a device or a pipe"}, {"../secret.txt", "not a picture of a known"},
		{"../other.png", "not the one this job was made from"}, {"..", "this is a folder"}, {"gone", "no such file"},
	} {
		require.NoError(t, os.Remove(copied))
		require.NoError(t, os.Symlink(c.target, copied))
		before := p.listing(t)
		for _, args := range append(p.readers(), []string{"check", p.job}) {
			t.Run(c.target+", by "+args[0], func(t *testing.T) {
				var stdout, stderr string
				var code int
				jobtest.Bounded(t, c.target, func() { stdout, stderr, code = programtest.Run(t, args...) })
				require.Equal(t, programtest.Failed, code, stderr)
				require.Contains(t, stdout+stderr, c.says)
				require.NotContains(t, stdout+stderr, "secret of this machine")
				require.Equal(t, before, p.listing(t), "nothing is written")
			})
		}
	}
	p.rewrite(t, "../secret.txt", "artwork", "copy")
	for _, args := range p.readers() {
		_, stderr, code := programtest.Run(t, args...)
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, "is not what an artwork's copy is called")
	}
}

// TestArtworkByItsWholePath: what is refused above is not refused for its form.
func TestArtworkByItsWholePath(t *testing.T) {
	p := newHostileFolder(t)
	p.rewrite(t, p.art, "artwork", "file")
	for _, args := range p.readers() {
		_, stderr, code := programtest.Run(t, args...)
		require.Equal(t, programtest.Done, code, stderr)
	}
}

// TestNamesOfAHostileJob: what a job calls itself leads no file anywhere; what can't be printed is refused.
func TestNamesOfAHostileJob(t *testing.T) {
	p := newHostileFolder(t)
	for i, name := range []string{"../../evil", "/evil", "..", "", `..\evil`, "%s%n", strings.Repeat("long", 2000)} {
		p.rewrite(t, name, "name")
		before := p.listing(t)
		readers := p.readers()
		if i > 0 {
			readers = readers[:1] // the others take their time
		}
		for _, args := range readers {
			_, stderr, code := programtest.Run(t, args...)
			require.Equal(t, programtest.Done, code, "%.20q: %s", name, stderr)
		}
		after := p.listing(t)
		for _, made := range trials[:len(readers)] {
			require.NotEmpty(t, after["job/"+made])
			delete(after, "job/"+made)
			require.NoError(t, os.Remove(filepath.Join(p.job, made)))
		}
		require.Equal(t, before, after, "%.20q: nothing else is written", name)
	}
	for _, c := range []struct{ key, value string }{{"name", "\x1b[2J"}, {"name", "two\nlines"}, {"check_code", "\x07"},
		{"check_code", "A\rB"}} {
		t.Run(fmt.Sprintf("%s %q", c.key, c.value), func(t *testing.T) {
			kept, err := os.ReadFile(filepath.Join(p.job, place.JobFile))
			require.NoError(t, err)
			p.rewrite(t, c.value, c.key)
			for _, args := range p.readers() {
				_, stderr, code := programtest.Run(t, args...)
				require.Equal(t, programtest.Failed, code)
				require.Contains(t, stderr, "can't be printed")
			}
			require.NoError(t, os.WriteFile(filepath.Join(p.job, place.JobFile), kept, 0o600))
		})
	}
}

// TestWhatIsNoFileIsNotReplaced: a job's folder from elsewhere may hold links and pipes where the program writes, and
// so may any folder. None is replaced, even when asked to, and what a link leads to is not touched.
func TestWhatIsNoFileIsNotReplaced(t *testing.T) {
	p := newHostileFolder(t)
	for i, target := range []string{"../secret.txt", "../not-there-yet", "../pipe"} {
		require.NoError(t, os.Symlink(target, filepath.Join(p.job, trials[i])))
	}
	before := p.listing(t)
	words := append(p.readers(), []string{"gauge", "--out", filepath.Join(p.root, "pipe")},
		[]string{"gauge", "--out", filepath.Join(p.job, trials[0])})
	for _, args := range words {
		for _, force := range [][]string{nil, {"--force"}} {
			jobtest.Bounded(t, args[0], func() {
				_, stderr, code := programtest.Run(t, append(args, force...)...)
				require.Equal(t, programtest.Failed, code)
				require.Regexp(t, "is a (link|pipe), which --force does not replace either\n"+
					"hint: choose another with --out", stderr)
			})
		}
	}
	require.Equal(t, before, p.listing(t))
}

// TestPipeForTheKeptPrinters: whoever reads the kept printers is told that they are none, and does not wait for them.
func TestPipeForTheKeptPrinters(t *testing.T) {
	config := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", config)
	t.Setenv("HOME", config) // where the settings lie in it on other systems
	folder := filepath.Join(config, "dropsheet")
	if runtime.GOOS == "darwin" {
		folder = filepath.Join(config, "Library", "Application Support", "dropsheet")
	}
	require.NoError(t, os.MkdirAll(folder, 0o700))
	require.NoError(t, syscall.Mkfifo(filepath.Join(folder, "printers.json"), 0o600))
	for _, args := range [][]string{
		{"gauge", "--list"}, {"size", "--printer", "study"},
		{"gauge", "--save", "study", "--read", "199x248mm", "--margins", "4,4,4,12mm"},
	} {
		jobtest.Bounded(t, args[0], func() {
			_, stderr, code := programtest.Run(t, args...)
			require.Equal(t, programtest.Failed, code, stderr)
			require.Contains(t, stderr, "is a pipe, and no file of kept printers\nhint: move it away")
		})
	}
	requireOnlyNames(t, folder, "printers.json")
}

// requireOnlyNames checks that a folder holds what has these names, and nothing else.
func requireOnlyNames(t *testing.T, folder string, names ...string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	var there []string
	for _, e := range entries {
		there = append(there, e.Name())
	}
	require.ElementsMatch(t, names, there)
}
