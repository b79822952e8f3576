//go:build unix

package faults

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

func TestMain(m *testing.M) { programtest.Main(m) }

// process is a run of the built program.
type process struct {
	*exec.Cmd
	stdout, stderr bytes.Buffer
}

// newProcess prepares a run. Words in front, such as those of a shell, run the program in their way.
func newProcess(t *testing.T, front []string, args ...string) *process {
	t.Helper()
	words := slices.Concat(front, []string{programtest.Path(t)}, args)
	p := &process{Cmd: exec.Command(words[0], words[1:]...)}
	p.Cmd.Stdout, p.Cmd.Stderr = &p.stdout, &p.stderr
	return p
}

// under is the words for a shell that sets something before it becomes the program.
func under(set string) []string { return []string{"sh", "-c", set + ` && exec "$0" "$@"`} }

// start starts the run, which ends with the test at the latest.
func start(t *testing.T, args ...string) *process {
	t.Helper()
	p := newProcess(t, nil, args...)
	require.NoError(t, p.Start())
	t.Cleanup(func() {
		p.Process.Kill()
		p.Wait()
	})
	return p
}

// end waits for the run and returns its exit code: -1 when it was killed.
func (p *process) end(t *testing.T) int {
	t.Helper()
	if err := p.Wait(); err != nil && !errors.As(err, new(*exec.ExitError)) {
		require.NoError(t, err)
	}
	return p.ProcessState.ExitCode()
}

// runBuilt runs the built program to its end.
func runBuilt(t *testing.T, front []string, args ...string) (stderr string, code int) {
	t.Helper()
	p := newProcess(t, front, args...)
	require.NoError(t, p.Start())
	code = p.end(t)
	return p.stderr.String(), code
}

// artCopy is what the copy of the bench's artwork is called, and jobFiles all that a job of it is made of.
const artCopy = "artwork.png"

var jobFiles = place.Files(artCopy, false)

// bench is a folder with an artwork and what two jobs of it hold, an old one and a new one.
type bench struct {
	parent, art, job   string
	oldFiles, newFiles map[string][]byte
	makeTime           time.Duration
}

// references are what the makes of the two jobs write, made once: the same picture at the same place from the
// job gives the same bytes.
var references struct {
	sync.Once
	oldFiles, newFiles map[string][]byte
	makeTime           time.Duration
}

// newBench lays out the artwork and makes both jobs, whose place is left empty. The guide's close-up takes
// most of the time, whatever the flags.
func newBench(t *testing.T) *bench {
	t.Helper()
	pattern, _ := jobtest.WritePattern(t, 60, 40)
	b := &bench{parent: t.TempDir()}
	b.art, b.job = filepath.Join(b.parent, "art.png"), filepath.Join(b.parent, "job")
	require.NoError(t, os.Rename(pattern, b.art))
	r := &references
	r.Do(func() {
		r.oldFiles = b.reference(t, "--max-sheets", "1")
		began := time.Now()
		r.newFiles = b.reference(t, "--max-sheets", "3")
		r.makeTime = time.Since(began)
	})
	b.oldFiles, b.newFiles, b.makeTime = r.oldFiles, r.newFiles, r.makeTime
	for _, name := range jobFiles {
		require.NotEmpty(t, b.oldFiles[name])
		same := name == "proof.png" || name == artCopy
		require.False(t, !same && bytes.Equal(b.oldFiles[name], b.newFiles[name]),
			"the two jobs' %s can't be told apart", name)
	}
	return b
}

// reference is what a make that nothing disturbs writes; it leaves the place empty.
func (b *bench) reference(t *testing.T, flags ...string) map[string][]byte {
	t.Helper()
	stderr, code := runBuilt(t, nil, slices.Concat(b.makeArgs(), flags)...)
	require.Equal(t, programtest.Done, code, stderr)
	files := programtest.Files(t, b.job)
	require.Len(t, files, len(jobFiles))
	require.NoError(t, os.RemoveAll(b.job))
	return files
}

// makeArgs are a make into the job's place, but for the number of sheets.
func (b *bench) makeArgs() []string {
	return []string{"make", b.art, "--out", b.job, "--pixels", "24x16"}
}

// makeNew are the words that make the new job, over the old one if there is one.
func (b *bench) makeNew() []string {
	return append(b.makeArgs(), "--max-sheets", "3", "--force")
}

// lay puts files where the job goes, and nothing else.
func (b *bench) lay(t *testing.T, files map[string][]byte) {
	t.Helper()
	require.NoError(t, os.RemoveAll(b.job))
	if files == nil {
		return
	}
	require.NoError(t, os.Mkdir(b.job, 0o755))
	for name, data := range files {
		require.NoError(t, os.WriteFile(filepath.Join(b.job, name), data, 0o644))
	}
}

// state is which job stands in the place: old, new or none. Anything else fails the test.
func (b *bench) state(t *testing.T) string {
	t.Helper()
	if !isThere(b.job) {
		return "none"
	}
	files := programtest.Files(t, b.job)
	for name, want := range map[string]map[string][]byte{"old": b.oldFiles, "new": b.newFiles} {
		if sameFiles(files, want) {
			return name
		}
	}
	t.Fatalf("%s holds neither the old job nor the new one, but a mix", b.job)
	return ""
}

func sameFiles(a, b map[string][]byte) bool {
	for name, data := range a {
		if other, ok := b[name]; !ok || !bytes.Equal(data, other) {
			return false
		}
	}
	return len(a) == len(b)
}

// beside are the names in the parent folder other than the artwork and the job.
func (b *bench) beside(t *testing.T) (names []string) {
	t.Helper()
	entries, err := os.ReadDir(b.parent)
	require.NoError(t, err)
	for _, e := range entries {
		if name := e.Name(); name != filepath.Base(b.art) && name != filepath.Base(b.job) {
			names = append(names, name)
		}
	}
	return names
}

// hiddenBeside is where what becomes path lies until it is whole: a job's files in a folder "new" in there.
func hiddenBeside(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+".unfinished")
}

// isThere tells whether anything has that name.
func isThere(path string) bool {
	_, err := os.Lstat(path)
	return err == nil
}

// await waits until something has that name.
func await(t *testing.T, path string) {
	t.Helper()
	for deadline := time.Now().Add(time.Minute); !isThere(path); time.Sleep(200 * time.Microsecond) {
		require.True(t, time.Now().Before(deadline), "%s never came", path)
	}
}
