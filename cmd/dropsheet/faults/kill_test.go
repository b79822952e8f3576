//go:build unix

package faults

import (
	"bytes"
	"flag"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
)

// killedMakes is how many runs of make are killed before they end. A kill that comes too late does not count, and is
// tried again.
var killedMakes = flag.Int("kills", 12, "how many runs of make are killed")

const (
	killedReprints = 30
	mostRounds     = 10 // tries for each kill
)

// TestKilledMake kills make, half of the times at a system call, where strace is installed, and else at random moments:
// most spread over its whole time, some about where it puts the folder in its place. The place then holds the old job
// whole, the new one whole, or nothing, and the next run there takes away what else was left.
func TestKilledMake(t *testing.T) {
	b := newBench(t)
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))

	// A picture that is sound as far as its header goes makes a run that gets into the place and fails there.
	data, err := os.ReadFile(b.art)
	require.NoError(t, err)
	broken := filepath.Join(t.TempDir(), "broken.png")
	require.NoError(t, os.WriteFile(broken, data[:len(data)/2], 0o600))

	hidden := hiddenBeside(b.job)
	killed, atCalls, leftovers, states := 0, 0, 0, map[string]int{}
	round := 0
	for ; killed < *killedMakes; round++ {
		require.Less(t, round, mostRounds**killedMakes, "the runs end before they are killed")
		over := round%2 == 1
		if over {
			b.lay(t, b.oldFiles)
		} else {
			b.lay(t, nil)
		}
		var p *process
		switch {
		case traces() && round/2%2 == 0: // every second pair, one of them over the old job
			p = startKilledAt(t, random, b.makeNew()...)
		case round/2%4 == 1: // two in eight, likewise
			p = start(t, b.makeNew()...)
			await(t, filepath.Join(hidden, "new", "seams.png"))
			time.Sleep(time.Duration(random.Int64N(int64(10 * time.Millisecond))))
			require.NoError(t, p.Process.Kill())
		default:
			p = start(t, b.makeNew()...)
			time.Sleep(time.Duration(random.Int64N(int64(b.makeTime))))
			require.NoError(t, p.Process.Kill())
		}
		if p.end(t) == -1 {
			killed++
			if p.Args[0] == "strace" {
				atCalls++
			}
		}
		state := b.state(t)
		states[state]++
		require.False(t, !over && state == "old")
		for _, name := range b.beside(t) {
			require.Equal(t, filepath.Base(hidden), name)
			leftovers++
		}

		stderr, code := runBuilt(t, nil, "make", broken, "--out", b.job, "--force")
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, "broken.png")
		require.Empty(t, b.beside(t), "the next run takes away what a killed one left")
		after := b.state(t)
		if after != state { // where folders can't be swapped, it puts back what the killed run moved aside
			require.True(t, over && state == "none" && after == "old", "%s became %s", state, after)
		}
		require.False(t, over && after == "none", "the old job is lost and there is no new one")
	}
	t.Logf("%d of %d ended by the kill, %d of them at a system call, %d with something left beside; the place then held: "+
		"%v", killed, round, atCalls, leftovers, states)
	require.GreaterOrEqual(t, leftovers, *killedMakes/4)

	b.lay(t, b.oldFiles)
	p := start(t, b.makeNew()...)
	await(t, filepath.Join(hidden, "new"))
	require.NoError(t, p.Process.Kill())
	require.Equal(t, -1, p.end(t))
	require.Equal(t, []string{filepath.Base(hidden)}, b.beside(t))
	stderr, code := runBuilt(t, nil, b.makeNew()...)
	require.Equal(t, programtest.Done, code, stderr)
	require.Equal(t, "new", b.state(t))
	require.Empty(t, b.beside(t))
}

// TestKilledReprint kills reprint at random moments: the file is the one from before, the new one, or not
// there, and the job is as it was. A hidden file that is left hinders nobody and goes with the next reprint
// of that name, or with the job.
func TestKilledReprint(t *testing.T) {
	b := newBench(t)
	seed := uint64(time.Now().UnixNano())
	t.Logf("seed %d", seed)
	random := rand.New(rand.NewPCG(seed, 0))
	b.lay(t, b.newFiles)
	out := filepath.Join(b.job, "reprint-ALL.pdf")
	again := []string{"reprint", b.job, "all", "--force"}
	began := time.Now()
	stderr, code := runBuilt(t, nil, again...)
	require.Equal(t, programtest.Done, code, stderr)
	took := time.Since(began)
	whole, err := os.ReadFile(out)
	require.NoError(t, err)
	before := []byte("a reprint from before")

	hidden := hiddenBeside(out)
	killed, leftovers, states := 0, 0, map[string]int{}
	round := 0
	for ; killed < killedReprints; round++ {
		require.Less(t, round, mostRounds*killedReprints, "the runs end before they are killed")
		over := round%2 == 1
		if over {
			require.NoError(t, os.WriteFile(out, before, 0o600))
		} else {
			require.NoError(t, os.RemoveAll(out))
		}
		p := start(t, again...)
		if round%3 == 0 {
			for deadline := time.Now().Add(took); !isThere(hidden) && time.Now().Before(deadline); { // as soon as it writes
			}
		} else {
			time.Sleep(time.Duration(random.Int64N(int64(took))))
		}
		require.NoError(t, p.Process.Kill())
		if p.end(t) == -1 {
			killed++
		}
		files := programtest.Files(t, b.job)
		switch data, ok := files[filepath.Base(out)]; {
		case !ok:
			require.False(t, over, "what was there is gone")
			states["none"]++
		case bytes.Equal(data, whole):
			states["new"]++
		default:
			require.Equal(t, before, data)
			states["old"]++
		}
		delete(files, filepath.Base(out))
		if _, ok := files[filepath.Base(hidden)]; ok {
			leftovers++
			delete(files, filepath.Base(hidden))
		}
		require.True(t, sameFiles(files, b.newFiles), "the job is as it was, with nothing else beside it")
	}
	t.Logf("%d of %d ended by the kill, %d with something left beside; the file then was: %v", killed, round, leftovers,
		states)
	require.NotZero(t, leftovers)

	require.NoError(t, os.WriteFile(hidden, whole[:len(whole)/2], 0o600)) // as a kill leaves it
	stderr, code = runBuilt(t, nil, "proof", b.job, "--pixels", "24x16", "--samples", "1")
	require.Equal(t, programtest.Done, code, stderr)
	stderr, code = runBuilt(t, nil, again...)
	require.Equal(t, programtest.Done, code, stderr)
	require.NoFileExists(t, hidden)

	require.NoError(t, os.WriteFile(hidden, whole[:len(whole)/2], 0o600))
	stderr, code = runBuilt(t, nil, b.makeNew()...)
	require.Equal(t, programtest.Done, code, stderr)
	require.Equal(t, "new", b.state(t))
}
