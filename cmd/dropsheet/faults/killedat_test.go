//go:build unix

package faults

import (
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
)

// calls are the system calls that change what lies on the disk or guard it, by their names on every processor, and how
// many of a kind one thread of a small make comes to.
var calls = []struct {
	names []string
	most  int
}{
	{[]string{"renameat2", "renameat", "rename"}, 7}, {[]string{"unlinkat", "unlink", "rmdir"}, 10},
	{[]string{"mkdirat", "mkdir"}, 2}, {[]string{"fsync", "fdatasync"}, 16}, {[]string{"flock"}, 9},
	{[]string{"openat"}, 40}, {[]string{"write", "pwrite64"}, 16}, {[]string{"close"}, 30},
	{[]string{"copy_file_range"}, 2},
}

// traces tells whether strace is there and may trace.
var traces = sync.OnceValue(func() bool {
	return exec.Command("strace", "-o", os.DevNull, "true").Run() == nil
})

// startKilledAt starts a run that strace kills as one of its threads comes to a call, which random places. Its end may
// be sooner.
func startKilledAt(t *testing.T, random *rand.Rand, args ...string) *process {
	t.Helper()
	call := calls[random.IntN(len(calls))]
	which := "?" + strings.Join(call.names, ",?")
	front := []string{"strace", "-f", "-qq", "-o", os.DevNull, "-e", "trace=" + which, "-e",
		fmt.Sprintf("inject=%s:signal=SIGKILL:when=%d", which, 1+random.IntN(call.most))}
	p := newProcess(t, front, args...)
	p.Env = append(os.Environ(), "GODEBUG=asyncpreemptoff=1") // whose signals strace would stop it at, again and again
	require.NoError(t, p.Start())
	t.Cleanup(func() {
		p.Process.Kill()
		p.Wait()
	})
	return p
}

// TestKilledAtACall: strace kills what it is told to kill.
func TestKilledAtACall(t *testing.T) {
	if !traces() {
		return // .ci/run says so, and runs are killed at random moments alone
	}
	b := newBench(t)
	random := rand.New(rand.NewPCG(1, 1))
	for range 20 {
		p := startKilledAt(t, random, b.makeNew()...)
		if p.end(t) == -1 {
			return
		}
		require.Equal(t, programtest.Done, p.ProcessState.ExitCode(), p.stderr.String())
	}
	t.Fatal("no run was killed")
}
