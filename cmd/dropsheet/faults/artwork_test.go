//go:build unix

package faults

import (
	"bytes"
	"encoding/json"
	"image/png"
	"maps"
	"os"
	"path/filepath"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/cmd/dropsheet/programtest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// TestVanishedArtwork: what needs it says so, and the job stays. A reprint goes by the job's copy, while that is there.
func TestVanishedArtwork(t *testing.T) {
	b := newBench(t)
	b.lay(t, b.oldFiles)
	require.NoError(t, os.Remove(b.art))
	out := filepath.Join(b.job, "reprint-ALL.pdf")
	stderr, code := runBuilt(t, nil, "reprint", b.job, "all")
	require.Equal(t, programtest.Done, code, stderr)
	again, err := os.ReadFile(out)
	require.NoError(t, err)
	require.True(t, bytes.Equal(b.oldFiles["sheets.pdf"], again))
	require.NoError(t, os.Remove(out))
	require.Equal(t, "old", b.state(t))

	withoutCopy := maps.Clone(b.oldFiles)
	delete(withoutCopy, artCopy)
	b.oldFiles = withoutCopy
	b.lay(t, b.oldFiles)
	for _, args := range [][]string{b.makeNew(), {"proof", b.job}} {
		stderr, code := runBuilt(t, nil, args...)
		require.Equal(t, programtest.Failed, code)
		require.Contains(t, stderr, "art.png\": no such file or directory\n")
		require.Contains(t, stderr, "\nhint: check the name")
		require.Equal(t, "old", b.state(t))
		require.Empty(t, b.beside(t))
	}
}

// TestArtworkThatKeepsChanging: while the runs read it the file is one picture and then another, without
// pause. A job's hash is that of the picture on its sheets and of its copy, and a reprint is of the job's picture, or
// refused where the job has no copy.
func TestArtworkThatKeepsChanging(t *testing.T) {
	b := newBench(t)
	ours, err := os.ReadFile(b.art)
	require.NoError(t, err)
	theirs := pngOf(t, 60, 40)
	require.NotEqual(t, ours, theirs)
	sheets := map[string][]byte{programtest.Hash(ours): b.newFiles["sheets.pdf"]}
	require.NoError(t, os.WriteFile(b.art, theirs, 0o600))
	sheets[programtest.Hash(theirs)] = b.reference(t, "--max-sheets", "3")["sheets.pdf"]

	versions := [][]byte{ours, theirs}
	stop := make(chan struct{})
	var changing sync.WaitGroup
	next := filepath.Join(t.TempDir(), "next.png")
	changing.Go(func() {
		for i := 0; ; i++ {
			select {
			case <-stop:
				return
			default:
			}
			if os.WriteFile(next, versions[i%2], 0o600) != nil || os.Rename(next, b.art) != nil {
				t.Error("the artwork can't be changed")
				return
			}
		}
	})
	defer changing.Wait()
	defer close(stop)

	for range 2 {
		stderr, code := runBuilt(t, nil, b.makeNew()...)
		require.Equal(t, programtest.Done, code, stderr)
		files := programtest.Files(t, b.job)
		var j struct{ Artwork struct{ SHA256 string } }
		require.NoError(t, json.Unmarshal(files[place.JobFile], &j))
		require.Contains(t, sheets, j.Artwork.SHA256)
		require.True(t, bytes.Equal(sheets[j.Artwork.SHA256], files["sheets.pdf"]),
			"the hash is of one picture, the sheets of the other")
		require.Equal(t, j.Artwork.SHA256, programtest.Hash(files[artCopy]))
	}

	b.lay(t, b.newFiles)
	out := filepath.Join(b.job, "reprint-ALL.pdf")
	for range 10 {
		stderr, code := runBuilt(t, nil, "reprint", b.job, "all", "--force")
		require.Equal(t, programtest.Done, code, stderr)
		data, err := os.ReadFile(out)
		require.NoError(t, err)
		require.True(t, bytes.Equal(b.newFiles["sheets.pdf"], data), "a reprint of another picture was let through")
	}
	require.NoError(t, os.Remove(filepath.Join(b.job, artCopy)))
	require.NoError(t, os.Remove(filepath.Join(b.job, "sheets.pdf"))) // which would serve
	outcomes := map[int]int{}
	for len(outcomes) < 2 || outcomes[programtest.Done]+outcomes[programtest.Failed] < 40 {
		require.Less(t, outcomes[programtest.Done]+outcomes[programtest.Failed], 2000,
			"only one of the pictures is ever read: %v", outcomes)
		stderr, code := runBuilt(t, nil, "reprint", b.job, "all", "--force")
		outcomes[code]++
		if code != programtest.Done {
			require.Contains(t, stderr, "not the one this job was made from")
			continue
		}
		data, err := os.ReadFile(out)
		require.NoError(t, err)
		require.True(t, bytes.Equal(b.newFiles["sheets.pdf"], data), "a reprint of another picture was let through")
	}
	t.Logf("exit codes: %v", outcomes)
}

// pngOf is a picture of that size unlike the pattern.
func pngOf(t *testing.T, w, h int) []byte {
	t.Helper()
	m := jobtest.DrawPattern(w, h)
	for i := range m.Pix {
		if i%4 < 3 {
			m.Pix[i] ^= 0x60
		}
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, m))
	return b.Bytes()
}
