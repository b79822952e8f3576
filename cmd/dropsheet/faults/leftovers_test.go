//go:build unix

package faults

import (
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/place"
)

// TestSignalsThatEndARun: whatever asks a run to end, it takes away what it had begun.
func TestSignalsThatEndARun(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	for _, s := range []syscall.Signal{syscall.SIGINT, syscall.SIGTERM, syscall.SIGHUP, syscall.SIGQUIT} {
		t.Run(s.String(), func(t *testing.T) {
			p := b.halted(t)
			require.NoError(t, p.Process.Signal(s))
			require.Equal(t, programtest.Failed, p.goOn(t))
			require.Equal(t, "dropsheet: stopped; nothing was left behind\n", p.stderr.String())
			require.Equal(t, "old", b.state(t))
			require.Empty(t, b.beside(t))
		})
	}
	t.Run("a terminal that is closed, under nohup", func(t *testing.T) {
		p := newProcess(t, []string{"sh", "-c", `trap "" HUP && exec "$0" "$@"`}, b.makeNew()...)
		require.NoError(t, p.Start())
		await(t, filepath.Join(hiddenBeside(b.job), "new"))
		require.NoError(t, p.Process.Signal(syscall.SIGHUP))
		require.Equal(t, programtest.Done, p.end(t), p.stderr.String())
		require.Equal(t, "new", b.state(t))
	})
}

// TestReaderThatWentAway: with nobody left to read what is told, the job is whole or not there, and nothing lies
// beside.
func TestReaderThatWentAway(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		name     string
		out, err bool
		code     int
	}{
		{"standard output", true, false, programtest.Failed},
		{"both", true, true, programtest.Failed},
		{"standard error", false, true, programtest.Done},
	} {
		t.Run(c.name, func(t *testing.T) {
			b.lay(t, nil)
			reader, writer, err := os.Pipe()
			require.NoError(t, err)
			require.NoError(t, reader.Close())
			defer writer.Close()
			p := newProcess(t, nil, b.makeNew()...)
			if c.out {
				p.Cmd.Stdout = writer
			}
			if c.err {
				p.Cmd.Stderr = writer
			}
			require.NoError(t, p.Start())
			require.Equal(t, c.code, p.end(t))
			require.Empty(t, p.stderr.String())
			require.Equal(t, "new", b.state(t))
			require.Empty(t, b.beside(t))
		})
	}
}

// TestFewFilesMayBeOpen: where a run may open too few files at once it says so, once, and leaves nothing; from so many
// on it is done.
func TestFewFilesMayBeOpen(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		limit string
		code  int
	}{{"5", programtest.Failed}, {"8", programtest.Failed}, {"12", programtest.Failed}, {"24", programtest.Done}} {
		t.Run(c.limit, func(t *testing.T) {
			stderr, code := runBuilt(t, under("ulimit -n "+c.limit), b.makeNew()...)
			require.Equal(t, c.code, code, stderr)
			if c.code == programtest.Failed {
				require.Equal(t, 1, strings.Count(stderr, "too few files may be open"), stderr)
				require.Equal(t, 2, strings.Count(stderr, "\n"), stderr) // with its hint
			}
			require.Empty(t, b.beside(t))
		})
	}
	require.Equal(t, "new", b.state(t))
}

// TestFullPlaceForTheAnswer: an answer that can't be written is a failure, of help as well.
func TestFullPlaceForTheAnswer(t *testing.T) {
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		return // Linux has it, and others do not
	}
	defer full.Close()
	for _, args := range [][]string{{"help"}, {"help", "size"}, {"size", "--help"}, {"size"}, {"size", "--json"}} {
		p := newProcess(t, nil, args...)
		p.Cmd.Stdout = full
		require.NoError(t, p.Start())
		require.Equal(t, programtest.Failed, p.end(t), args)
		require.Equal(t, "dropsheet: the answer can't be written: no space left on device\n"+
			"hint: give it a place that has room\n",
			p.stderr.String(), args)
	}
}

// TestLeftoversOfOthers: what runs that were killed left beside a job or in its folder goes with the next run there,
// whatever that one makes, unless it may be anybody else's, holds an old job, or is held by a run that lives.
func TestLeftoversOfOthers(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	lay := func(path, content string) string {
		require.NoError(t, os.MkdirAll(filepath.Dir(path), 0o700))
		require.NoError(t, os.WriteFile(path, []byte(content), 0o600))
		return path
	}
	dead := hiddenBeside(filepath.Join(b.parent, "dead"))
	lay(filepath.Join(dead, "new", "sheets.pdf"), "%PDF")
	gone := []string{
		dead,
		lay(hiddenBeside(filepath.Join(b.job, "reprint-R1C1.pdf")), "%PDF"),
		lay(hiddenBeside(filepath.Join(b.job, "proof-trial.png")), ""),
	}
	stay := []string{
		lay(filepath.Join(b.parent, ".notes.txt.unfinished"), "mine"),
		lay(filepath.Join(b.parent, ".notes.unfinished", "new", "notes.txt"), "mine"),
		lay(filepath.Join(b.parent, ".empty.unfinished", "notes.txt"), "mine"),
		lay(filepath.Join(hiddenBeside(filepath.Join(b.parent, "aside")), "old", place.JobFile), "{}"),
	}
	other := &bench{parent: b.parent, art: b.art, job: filepath.Join(b.parent, "living")}
	living := other.halted(t)

	stderr, code := runBuilt(t, nil, "reprint", b.job, "all")
	require.Equal(t, programtest.Done, code, stderr)
	stderr, code = runBuilt(t, nil, b.makeNew()...)
	require.Equal(t, programtest.Done, code, stderr)
	for _, path := range gone {
		require.NoFileExists(t, path)
		require.NoDirExists(t, path)
	}
	for _, path := range stay {
		require.FileExists(t, path)
	}
	require.Equal(t, programtest.Done, living.goOn(t), living.stderr.String())
	require.Equal(t, b.newFiles["sheets.pdf"], programtest.Files(t, other.job)["sheets.pdf"])
}
