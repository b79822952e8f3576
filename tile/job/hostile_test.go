package job

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/layout/report"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// requireSoundJob checks that a job which was taken can be worked with: every sheet has pixels, and a place
// that is a number (as JSON's writer asks of every other figure).
func requireSoundJob(t testing.TB, j Job, what string) {
	t.Helper()
	for _, s := range j.Sheets {
		px := j.Print.Grid.Pixels(j.PictureOnBoard(), j.Backdrop.Printed(s))
		require.False(t, px.Empty(), "%s: %s has no pixels", what, s.Name)
		used := j.Backdrop.Used(s)
		for _, mm := range []float64{used.XMM, used.YMM, used.WidthMM, used.HeightMM, s.OnPage.XMM, s.OnPage.YMM} {
			require.False(t, math.IsNaN(mm) || math.IsInf(mm, 0), "%s: %s", what, s.Name)
		}
	}
	require.NoError(t, j.Encode(new(bytes.Buffer)), what)
}

// requireSoundFigures checks that all that follows from a plan is a number.
func requireSoundFigures(t testing.TB, p layout.Plan, what string) {
	t.Helper()
	_, err := json.Marshal(report.Of(p).Figures(Version))
	require.NoError(t, err, what)
}

// TestSpoiltJobs spoils 2,000 job files: each gives an error or a job whose figures are numbers, and none
// takes much memory.
func TestSpoiltJobs(t *testing.T) {
	const seed, tries, mostBytes = 11, 2000, 100 << 20
	t.Logf("seed %d", seed)
	s := jobtest.NewSpoiler(seed)
	var files [][]byte
	for _, o := range []Order{
		order(t, func(s *layout.Setup) { s.MaxSheets = 1 }), order(t, levelled), order(t, filmed),
		order(t, func(s *layout.Setup) { s.Drop.Body, s.Drop.DiameterMM = flip.UprightRod, 20 }),
	} {
		_, err := Make(t.Context(), o, Watch{})
		require.NoError(t, err)
		file, err := os.ReadFile(filepath.Join(o.Folder, place.JobFile))
		require.NoError(t, err)
		_, err = decode(file)
		require.NoError(t, err)
		files = append(files, file)
	}
	taken, most := 0, 0
	for i := range tries {
		file := s.Spoil(t, files[i%len(files)])
		what := fmt.Sprintf("try %d", i)
		var j Job
		var err error
		took := jobtest.Bounded(t, what, func() { j, err = decode(file) })
		require.Less(t, took, mostBytes, what)
		most = max(most, took)
		if err != nil {
			require.NotContains(t, err.Error(), "\x1b", what)
			continue
		}
		taken++
		requireSoundJob(t, j, what)
		if taken%40 == 0 { // they take their time
			jobtest.Bounded(t, what, func() { requireSoundFigures(t, j.Plan, what) })
		}
	}
	t.Logf("%d files, %d taken; most memory: %.1f MB", tries, taken, float64(most)/1e6)
	require.Greater(t, taken, tries/20, "some are harmless")
	require.Greater(t, tries-taken, tries/4)
}
