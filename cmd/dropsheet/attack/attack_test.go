//go:build unix

package attack

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"flag"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

func TestMain(m *testing.M) { programtest.Main(m) }

var (
	sets = flag.Int("sets", 40, "how many flag sets are drawn")
	seed = flag.Uint64("seed", 1, "which ones")
)

// hangGuard is far longer than any run takes on a busy machine.
const hangGuard = 3 * time.Minute

// room is a folder that commands are run in.
type room struct{ folder string }

// run runs the program in the room.
func (m room) run(t *testing.T, args ...string) ran {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), hangGuard)
	defer cancel()
	var stdout, stderr bytes.Buffer
	run := exec.CommandContext(ctx, programtest.Path(t), args...)
	run.Dir, run.Stdout, run.Stderr = m.folder, &stdout, &stderr
	run.Env = append(os.Environ(), "XDG_CONFIG_HOME="+filepath.Join(m.folder, "config"))
	if err := run.Run(); err != nil && !errors.As(err, new(*exec.ExitError)) {
		require.NoError(t, err)
	}
	kilobytes := run.ProcessState.SysUsage().(*syscall.Rusage).Maxrss
	if runtime.GOOS == "darwin" { // which counts bytes
		kilobytes /= 1024
	}
	return ran{args, stdout.String(), stderr.String(), run.ProcessState.ExitCode(), ctx.Err() != nil,
		int64(kilobytes) * 1024}
}

// TestCommandsAreAttacked: the tables are all commands that have more than switches.
func TestCommandsAreAttacked(t *testing.T) {
	m := room{t.TempDir()}
	known := regexp.MustCompile(`take (.+)`).FindStringSubmatch(m.run(t, "no-such").stderr)
	require.NotNil(t, known)
	for _, command := range strings.Split(known[1], ", ") {
		_, there := tables[command]
		require.True(t, there || slices.Contains([]string{"rehearse", "job", "completion", "manual"}, command), command)
	}
}

// newRoom is a room with two pictures in it, and the readings of a printer.
func newRoom(t *testing.T) room {
	t.Helper()
	m := room{t.TempDir()}
	for name, wide := range map[string]int{"artwork.png": 90, "other.png": 40} {
		path, _ := jobtest.WritePattern(t, wide, 60)
		require.NoError(t, os.Rename(path, filepath.Join(m.folder, name)))
	}
	kept := m.run(t, "gauge", "--save", "study", "--read", "199.2x248.5mm", "--margins", "4,4,4,12mm")
	require.Zero(t, kept.code, kept.stderr)
	return m
}

// TestFlagsDrawnAtRandom: sizes, gauges and jobs by flags that nobody has thought of, and what reads the jobs.
func TestFlagsDrawnAtRandom(t *testing.T) {
	random := rand.New(rand.NewPCG(*seed, 0))
	m := newRoom(t)
	codes := map[string]map[int]int{}
	worst, fell := int64(0), 0
	look := func(args ...string) ran {
		got := m.run(t, args...)
		if codes[args[0]] == nil {
			codes[args[0]] = map[int]int{}
		}
		codes[args[0]][got.code]++
		worst = max(worst, got.bytes)
		if wrong := got.wrong(); wrong != "" {
			fell++
			t.Errorf("%s\n  dropsheet %q\n  %s", wrong, args, lastLines(got.stderr))
		}
		return got
	}
	m.attackJob(t, random, look)
	for range *sets {
		switch kind := random.IntN(20); {
		case kind == 0:
			m.attackJob(t, random, look)
		case kind >= 15: // what reads the job that there is, in less time than it takes to make one
			m.follow(t, random, look)
		case kind == 1:
			look(slices.Concat([]string{"gauge"}, draw(random, "gauge", "out", "save", "read", "between", "margins", "pasted",
				"forget", "list"), []string{"--out=gauge.pdf", "--force"})...)
		case kind == 2:
			look(slices.Concat([]string{"gauge"}, draw(random, "gauge", "out", "paper", "save", "forget", "list"),
				[]string{"--save=study", "--force"})...)
		case kind == 3:
			look(slices.Concat([]string{"gauge"}, draw(random, "gauge"))...)
		default:
			args := slices.Concat([]string{"size"}, draw(random, "size"))
			if random.IntN(3) == 0 {
				args = append(args, "artwork.png")
			}
			if random.IntN(2) == 0 && !slices.Contains(args, "--json") {
				args = append(args, "--json")
			}
			look(args...)
		}
	}
	t.Logf("seed %d, %d sets: exit codes %v, at most %d MB; %d fell", *seed, *sets, codes, worst/1e6, fell)
}

// attackJob makes a job by flags drawn at random, and has it read by flags drawn likewise.
func (m room) attackJob(t *testing.T, r *rand.Rand, look func(args ...string) ran) {
	t.Helper()
	job := filepath.Join(m.folder, "job")
	require.NoError(t, os.RemoveAll(job))
	made := look(slices.Concat([]string{"make", "artwork.png", "--out=job"}, draw(r, "make", "out", "max-sheets", "pixels",
		"paper"), []string{"--max-sheets=4", "--pixels=48x32", "--paper=A6"})...)
	if made.code != 0 {
		require.NoDirExists(t, job)
		m.requireNothingHidden(t)
		stayed := look("make", "artwork.png", "--out=job", "--max-sheets=2", "--pixels=48x32", "--paper=A6")
		require.Zero(t, stayed.code, stayed.stderr)
	}
	text, err := os.ReadFile(filepath.Join(job, place.JobFile))
	require.NoError(t, err)
	var tree any
	require.NoError(t, json.Unmarshal(text, &tree))
	require.Empty(t, wrongFigure("", tree), "%q", made.args)

	require.Zero(t, look("check", "job").code)
	require.Zero(t, look("job", "job").code)
	for range 4 {
		m.follow(t, r, look)
	}
	if r.IntN(4) == 0 {
		require.NoError(t, os.RemoveAll(filepath.Join(m.folder, "film")))
		look(slices.Concat([]string{"proof", "job"}, draw(r, "proof", "out", "film", "pixels", "samples", "frame-width"),
			[]string{"--pixels=24x16", "--samples=1", "--frame-width=9mm", "--fall=20cm", "--frame-rate=2000",
				"--film=film"})...)
	}
	m.requireNothingHidden(t)
}

// follow has the room's job read by a command and flags drawn at random.
func (m room) follow(t *testing.T, r *rand.Rand, look func(args ...string) ran) {
	t.Helper()
	switch r.IntN(4) {
	case 0:
		look(slices.Concat([]string{"size", "job"}, draw(r, "size"))...)
	case 1:
		look(slices.Concat([]string{"seams", "job"}, draw(r, "seams", "out"), []string{"--out=job/seams-trial.png",
			"--force"})...)
	case 2:
		look(slices.Concat([]string{"proof", "job"}, draw(r, "proof", "out", "film", "pixels", "samples"),
			[]string{"--pixels=24x16", "--samples=1", "--force"})...)
	case 3:
		look(slices.Concat([]string{"reprint", "job", one("all", "R1C1", "C1", "R9C9", "R1")(r)}, draw(r, "reprint", "out"),
			[]string{"--force"})...)
	}
	m.requireNothingHidden(t)
}

// requireNothingHidden fails when a run has left what it had begun.
func (m room) requireNothingHidden(t *testing.T) {
	t.Helper()
	left, err := filepath.Glob(filepath.Join(m.folder, ".*.unfinished"))
	require.NoError(t, err)
	require.Empty(t, left)
}
