package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/layout/shot"
	"dropsheet/tile/job/place"
)

// hangGuard is far longer than any small job takes on a busy machine; only what would never end runs into it.
const hangGuard = 2 * time.Minute

// bounded does work that must end. It returns how many bytes that took from the heap, freed or not, which
// bounds its peak.
func bounded(t *testing.T, what string, work func()) (took int) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), hangGuard)
	defer cancel()
	done := make(chan any, 1)
	go func() {
		defer func() { done <- recover() }()
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		work()
		runtime.ReadMemStats(&after)
		took = int(after.TotalAlloc - before.TotalAlloc)
	}()
	select {
	case panicked := <-done:
		require.Nil(t, panicked, what)
	case <-ctx.Done():
		require.FailNow(t, "it hangs", what)
	}
	return took
}

// jobSpoiler spoils job files: as text, and as the values that they hold.
type jobSpoiler struct{ r *rand.Rand }

// spoil returns a job file with a few things wrong in it.
func (s jobSpoiler) spoil(t *testing.T, file []byte) []byte {
	if s.r.IntN(3) == 0 {
		return s.text(file)
	}
	var tree any
	require.NoError(t, json.Unmarshal(file, &tree))
	for range 1 + s.r.IntN(2) {
		tree = s.value(tree)
	}
	out, err := json.Marshal(tree)
	require.NoError(t, err)
	// JSON knows numbers that no float64 holds, and that Marshal does not write.
	return bytes.ReplaceAll(out, []byte(`"1e999"`), []byte(`1e999`))
}

func (s jobSpoiler) text(file []byte) []byte {
	text := slices.Clone(file)
	at := s.r.IntN(len(text))
	to := min(len(text), at+s.r.IntN(300))
	switch s.r.IntN(5) {
	case 0:
		return text[:at]
	case 1:
		return slices.Delete(text, at, to)
	case 2:
		return slices.Insert(text, s.r.IntN(len(text)), slices.Clone(text[at:to])...)
	case 3:
		return slices.Insert(text, at, []byte(strings.Repeat("[", 20_000))...)
	default:
		for range 1 + s.r.IntN(4) {
			text[s.r.IntN(len(text))] ^= 1 << s.r.IntN(8)
		}
		return text
	}
}

// value goes down to one value of the tree and spoils it.
func (s jobSpoiler) value(v any) any {
	switch v := v.(type) {
	case map[string]any:
		if len(v) > 0 && s.r.IntN(12) > 0 {
			keys := slices.Sorted(maps.Keys(v))
			key := keys[s.r.IntN(len(keys))]
			if s.r.IntN(20) == 0 {
				delete(v, key)
			} else {
				v[key] = s.value(v[key])
			}
			return v
		}
	case []any:
		if len(v) > 0 && s.r.IntN(12) > 0 {
			i := s.r.IntN(len(v))
			switch s.r.IntN(20) {
			case 0:
				return slices.Delete(v, i, i+1)
			case 1:
				return append(v, v[i])
			case 2:
				v[i], v[0] = v[0], v[i]
				return v
			}
			v[i] = s.value(v[i])
			return v
		}
	case float64:
		if s.r.IntN(2) == 0 && math.Abs(v) < 1e100 { // spoilt once already otherwise
			return v * []float64{-1, 0.5, 1.5, 1 + 1e-9, 10, 1e6, 1e-6}[s.r.IntN(7)]
		}
	}
	return []any{
		nil, true, 0, -1, 1, 2, 0.5, 1e-300, 1e18, -1e18, math.MaxFloat64, math.MaxInt32, int64(math.MaxInt64), "1e999", "",
		"NaN", "../../..",
		"/etc/passwd", "\x1b[2J", strings.Repeat("long ", 1000), map[string]any{}, []any{}, []any{1, "a", nil},
	}[s.r.IntN(23)]
}

const levelledFlags = "--lamp -40cm,-40cm,30cm --level --travel 0.5mm --surround navy --surround-size 92x62cm"

// wholeJobs are job files of several kinds.
func wholeJobs(t *testing.T) (files [][]byte) {
	t.Helper()
	art, _ := writePattern(t, 60, 40)
	for _, flags := range []string{
		"--max-sheets 1", levelledFlags, "--body upright-rod --drop 20mm",
	} {
		file, err := os.ReadFile(filepath.Join(mustMake(t, art, strings.Fields(flags)...), place.JobFile))
		require.NoError(t, err)
		_, err = decodeJob(file)
		require.NoError(t, err, flags)
		files = append(files, file)
	}
	return files
}

// requireSoundJob checks that a job which was taken can be worked with: every sheet has pixels, and a place
// that is a number (as JSON's writer asks of every other figure).
func requireSoundJob(t testing.TB, j job, what string) {
	t.Helper()
	for _, s := range j.Sheets {
		px := j.Print.Grid.Pixels(j.PictureOnBoard(), j.Backdrop.Printed(s))
		require.False(t, px.Empty(), "%s: %s has no pixels", what, s.Name)
		used := j.Backdrop.Used(s)
		for _, mm := range []float64{used.XMM, used.YMM, used.WidthMM, used.HeightMM, s.OnPage.XMM, s.OnPage.YMM} {
			require.False(t, math.IsNaN(mm) || math.IsInf(mm, 0), "%s: %s", what, s.Name)
		}
	}
	require.NoError(t, j.encode(new(bytes.Buffer)), what)
}

// requireSoundFigures checks that all that follows from a plan is a number.
func requireSoundFigures(t testing.TB, p layout.Plan, what string) {
	t.Helper()
	require.NoError(t, writeJSON(new(bytes.Buffer), []any{p, shot.Of(p).DarkRim(), shot.Of(p).Sensitivity(),
		shot.Of(p).Travel(), shot.Of(p).Sharpness(),
		shot.Of(p).LightFigures()}), what)
}

// TestSpoiltJobs spoils 2,000 job files: each gives an error or a job whose figures are numbers, and none
// takes much memory.
func TestSpoiltJobs(t *testing.T) {
	const seed, tries, mostBytes = 11, 2000, 100 << 20
	t.Logf("seed %d", seed)
	s := jobSpoiler{rand.New(rand.NewPCG(seed, seed))}
	files := wholeJobs(t)
	taken, most := 0, 0
	for i := range tries {
		file := s.spoil(t, files[i%len(files)])
		what := fmt.Sprintf("try %d", i)
		var j job
		var err error
		took := bounded(t, what, func() { j, err = decodeJob(file) })
		require.Less(t, took, mostBytes, what)
		most = max(most, took)
		if err != nil {
			require.NotContains(t, err.Error(), "\x1b", what)
			continue
		}
		taken++
		requireSoundJob(t, j, what)
		if taken%40 == 0 { // they take their time
			bounded(t, what, func() { requireSoundFigures(t, j.Plan, what) })
		}
	}
	t.Logf("%d files, %d taken; most memory: %.1f MB", tries, taken, float64(most)/1e6)
	require.Greater(t, taken, tries/20, "some are harmless")
	require.Greater(t, tries-taken, tries/4)
}
