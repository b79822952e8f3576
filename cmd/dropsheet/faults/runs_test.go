//go:build unix

package faults

import (
	"io"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/place"
)

// halted starts a make that is halted once it has its hidden folder.
func (b *bench) halted(t *testing.T) *process {
	t.Helper()
	p := start(t, b.makeNew()...)
	await(t, filepath.Join(hiddenBeside(b.job), "new"))
	require.NoError(t, p.Process.Signal(syscall.SIGSTOP))
	return p
}

// goOn lets a halted run end.
func (p *process) goOn(t *testing.T) int {
	t.Helper()
	require.NoError(t, p.Process.Signal(syscall.SIGCONT))
	return p.end(t)
}

// TestTwoRunsIntoOneFolder: the second is refused at once, with or without --force, and the first is not disturbed.
func TestTwoRunsIntoOneFolder(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	first := b.halted(t)
	for _, second := range [][]string{b.makeArgs(), b.makeNew()} {
		stderr, code := runBuilt(t, nil, second...)
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, "another run of dropsheet is at work on it\n"+
			"hint: wait until that one ends\nhint: choose "+
			"another with --out")
		require.Equal(t, "old", b.state(t))
	}
	require.Equal(t, programtest.Done, first.goOn(t), first.stderr.String())
	require.Equal(t, "new", b.state(t))
	require.Empty(t, b.beside(t))
}

// TestManyRunsAtOnce: of makes that start in the same moment one at least is done, the others say why not,
// and what they leave is one whole job.
func TestManyRunsAtOnce(t *testing.T) {
	b := newBench(t)
	b.job = filepath.Join(b.parent, "deep", "er", "job")
	var runs []*process
	for range 4 {
		runs = append(runs, start(t, append(b.makeArgs(), "--max-sheets", "3")...))
	}
	done := 0
	for _, p := range runs {
		if p.end(t) == programtest.Done {
			done++
		} else {
			require.Regexp(t, "another run of dropsheet is at work|is not empty", p.stderr.String())
		}
	}
	require.Equal(t, 1, done)
	files := programtest.Files(t, b.job)
	delete(files, place.JobFile) // it names the artwork by another way from here
	require.Len(t, files, len(jobFiles)-1)
	for name, data := range files {
		require.Equal(t, b.newFiles[name], data, name)
	}
	entries, err := os.ReadDir(filepath.Dir(b.job))
	require.NoError(t, err)
	require.Len(t, entries, 1, "nothing is left beside")
}

// TestWhatComesIntoTheFolderMeanwhile: a file of someone else's that comes into the old job's folder while
// the new one is made is not lost, and neither is the old job.
func TestWhatComesIntoTheFolderMeanwhile(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	first := b.halted(t)
	notes := filepath.Join(b.job, "notes.txt")
	require.NoError(t, os.WriteFile(notes, []byte("mine"), 0o600))
	require.Equal(t, programtest.Failed, first.goOn(t))
	require.Contains(t, first.stderr.String(), `holds "notes.txt", which is not dropsheet's`)
	require.FileExists(t, notes)
	require.NoError(t, os.Remove(notes))
	require.Equal(t, "old", b.state(t))
	require.Empty(t, b.beside(t))
}

// TestFileThatIsBeingWritten: two runs that write one file, and a make over a folder that a reprint is writing into.
func TestFileThatIsBeingWritten(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	out := filepath.Join(b.job, "reprint-ALL.pdf")
	require.NoError(t, place.WriteFile(out, false, func(w io.Writer) error {
		stderr, code := runBuilt(t, nil, "reprint", b.job, "all", "--force")
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, "another run of dropsheet is at work on it")
		stderr, code = runBuilt(t, nil, b.makeNew()...)
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, "a file in it is being written\nhint: wait until that is done")
		_, err := io.WriteString(w, "whole")
		return err
	}))
	data, err := os.ReadFile(out)
	require.NoError(t, err)
	require.Equal(t, "whole", string(data))
}
