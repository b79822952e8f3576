//go:build unix

package faults

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/place"
)

// TestPlacesAreLookedAtFirst: a place that can't be written is told before the work, and so before the artwork is
// read.
func TestPlacesAreLookedAtFirst(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	for _, art := range []string{b.art, filepath.Join(b.job, artCopy)} {
		require.NoError(t, os.WriteFile(art, []byte("no picture"), 0o600))
	}
	readOnly := filepath.Join(b.parent, "read-only")
	require.NoError(t, os.Mkdir(readOnly, 0o555))
	for _, args := range [][]string{
		{"proof", b.job, "--out", filepath.Join(readOnly, "x.png")}, {"reprint", b.job, "all", "--out",
			filepath.Join(readOnly, "x.pdf")}, {"seams", b.job, "--out", filepath.Join(readOnly, "x.png")},
		{"gauge", "--out", filepath.Join(readOnly, "x.pdf")},
	} {
		p := newProcess(t, nil, args...)
		asAnybody(t, p, b)
		require.NoError(t, p.Start())
		require.Equal(t, programtest.Failed, p.end(t))
		require.Regexp(t, `^dropsheet: file ".*/x.(png|pdf)" can't be written: permission denied`+
			"\nhint: choose another place",
			p.stderr.String(), args)
	}
	if runtime.GOOS == "linux" {
		stderr, code := runBuilt(t, nil, "make", filepath.Join(b.job, "proof.png"), "--out", "/proc", "--force")
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, `"/proc" is where something is mounted, and can't be replaced`+
			"\nhint: name a new folder in it")
	}
}

// TestLongNames: what a file system takes as a name is taken, though the hidden name beside it would be too long.
func TestLongNames(t *testing.T) {
	b := newBench(t)
	long := strings.Repeat("harbour ", 31)[:246] // with what a job's folder adds to it, more than a name may have
	art := filepath.Join(b.parent, long+".png")
	require.NoError(t, os.Rename(b.art, art))
	p := newProcess(t, nil, "make", art, "--max-sheets", "1", "--pixels", "24x16")
	p.Dir = b.parent
	require.NoError(t, p.Start())
	require.Equal(t, programtest.Done, p.end(t), p.stderr.String())
	job := filepath.Join(b.parent, place.Fitting(long, "-backdrop"))
	require.Len(t, filepath.Base(job), 255)
	again := filepath.Join(b.parent, long+"again.pdf")
	stderr, code := runBuilt(t, nil, "reprint", job, "all", "--out", again)
	require.Equal(t, programtest.Done, code, stderr)
	require.FileExists(t, again)
	entries, err := os.ReadDir(b.parent)
	require.NoError(t, err)
	require.Len(t, entries, 3)
}

// TestHiddenFolderTakenAway: a run whose hidden folder was removed names it as what it is.
func TestHiddenFolderTakenAway(t *testing.T) {
	b := newBench(t)
	p := b.halted(t)
	require.NoError(t, os.RemoveAll(hiddenBeside(b.job)))
	require.Equal(t, programtest.Failed, p.goOn(t))
	require.Equal(t, fmt.Sprintf("dropsheet: the hidden folder %q, in which the job was being made, was removed "+
		"meanwhile\nhint: run it again\n", hiddenBeside(b.job)), p.stderr.String())
	require.Empty(t, b.beside(t))
}

// TestArtworkByTheNameOfStandardInput: a job of it names its copy, which is all that there will be.
func TestArtworkByTheNameOfStandardInput(t *testing.T) {
	input, err := os.Open(newBench(t).art)
	require.NoError(t, err)
	defer input.Close()
	madeOfWhatComes(t, "/dev/stdin", input)
}

// TestArtworkPipedIn: so does one of what comes through a real pipe, which can be read but once.
func TestArtworkPipedIn(t *testing.T) {
	art, err := os.ReadFile(newBench(t).art)
	require.NoError(t, err)
	for _, path := range []string{"-", "/dev/stdin"} {
		madeOfWhatComes(t, path, bytes.NewReader(art))
	}
}

// madeOfWhatComes makes a job of standard input and prints it again without.
func madeOfWhatComes(t *testing.T, path string, input io.Reader) {
	t.Helper()
	b := newBench(t)
	p := newProcess(t, nil, "make", path, "--out", b.job, "--max-sheets", "1", "--pixels", "24x16")
	p.Stdin = input
	require.NoError(t, p.Start())
	require.Equal(t, programtest.Done, p.end(t), p.stderr.String())
	var j struct{ Artwork struct{ File, Copy string } }
	require.NoError(t, json.Unmarshal(programtest.Files(t, b.job)[place.JobFile], &j))
	require.Equal(t, "artwork", j.Artwork.File)
	require.Equal(t, j.Artwork.File, j.Artwork.Copy)
	for _, args := range [][]string{{"check", b.job}, {"reprint", b.job, "all"}} {
		stderr, code := runBuilt(t, nil, args...)
		require.Equal(t, programtest.Done, code, stderr)
		require.Empty(t, stderr)
	}
}

// TestManyKeepAtOnce: readings that are kept in the same moment wait for each other, and all are kept.
func TestManyKeepAtOnce(t *testing.T) {
	config := t.TempDir()
	t.Setenv("XDG_CONFIG_HOME", config)
	t.Setenv("HOME", config)
	const many = 20
	var runs []*process
	for i := range many {
		runs = append(runs, start(t, "gauge", "--save", fmt.Sprint("printer ", i), "--read", "199.2x248.5mm", "--margins",
			"4,4,4,12mm"))
	}
	for _, p := range runs {
		require.Equal(t, programtest.Done, p.end(t), p.stderr.String())
	}
	stdout, stderr, code := programtest.Run(t, "gauge", "--list")
	require.Equal(t, programtest.Done, code, stderr)
	require.Equal(t, many, strings.Count(stdout, "printer "), stdout)
}

// TestReprintBegunBeforeAnotherMake: a reprint that was halted at any moment, while make replaced its job, does not
// come to lie among the new job's sheets.
func TestReprintBegunBeforeAnotherMake(t *testing.T) {
	b := newBench(t)
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	b.lay(t, b.oldFiles)
	began := time.Now()
	stderr, code := runBuilt(t, nil, "reprint", b.job, "all")
	require.Equal(t, programtest.Done, code, stderr)
	took := time.Since(began)
	outcomes := map[string]int{}
	for range 6 {
		b.lay(t, b.oldFiles)
		p := start(t, "reprint", b.job, "all")
		time.Sleep(time.Duration(random.Int64N(int64(took))))
		require.NoError(t, p.Process.Signal(syscall.SIGSTOP))
		stderr, made := runBuilt(t, nil, b.makeNew()...)
		if made != programtest.Done {
			require.Contains(t, stderr, "a file in it is being written")
		}
		reprinted := p.goOn(t)
		files := programtest.Files(t, b.job)
		of := b.oldFiles
		if made == programtest.Done {
			of = b.newFiles
		}
		if again, ok := files["reprint-ALL.pdf"]; ok {
			require.Equal(t, of["sheets.pdf"], again, "sheets of the other job")
			delete(files, "reprint-ALL.pdf")
		}
		require.True(t, sameFiles(files, of), "nothing else comes in, and nothing hidden is left")
		outcomes[fmt.Sprintf("make %d, reprint %d", made, reprinted)]++
	}
	t.Logf("exit codes: %v", outcomes)
}
