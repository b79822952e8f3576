package artwork

import (
	"errors"
	"image"
	"math"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/tile/colour"
)

// fuzzPixels is the size of the largest picture that the fuzz targets read: small, so that they try many.
const fuzzPixels = 1 << 20

// addSeeds gives a fuzz target a file of every format. It fails when a format has none.
func addSeeds(f *testing.F) {
	found := map[string]bool{}
	_, files := sortedSeeds(f)
	for _, data := range files {
		h, err := readHeader(inMemory(data), Default)
		require.NoError(f, err)
		found[h.format.name] = true
		f.Add(data)
	}
	for _, k := range formats {
		require.True(f, found[k.name], "no seed for %s", k.name)
	}
	for _, maxPx := range []int{20_000, 50_000} {
		for _, data := range giant(f, maxPx, maxPx) {
			f.Add(data)
		}
	}
}

// requireNoPanic fails when a decoder panicked, although the program tells a user of it as of any error.
func requireNoPanic(t *testing.T, err error) {
	t.Helper()
	var panicked *panicError
	if errors.As(err, &panicked) {
		t.Fatalf("%v\n%s", err, panicked.stack)
	}
}

// FuzzOpen: whatever the bytes, an error or a sound picture; the header alone tells the same size.
func FuzzOpen(f *testing.F) {
	addSeeds(f)
	path := filepath.Join(f.TempDir(), "picture")
	f.Fuzz(func(t *testing.T, data []byte) {
		require.NoError(t, os.WriteFile(path, data, 0o600))
		p, err := Open(path, upTo(fuzzPixels))
		requireNoPanic(t, err)
		if err != nil {
			require.Nil(t, p)
			return
		}
		requireSound(t, p, fuzzPixels)
		w, h := p.Size()
		rw, rh, err := ReadSize(path, upTo(fuzzPixels))
		require.NoError(t, err)
		require.Equal(t, image.Pt(w, h), image.Pt(rw, rh))
	})
}

// FuzzReadSize: whatever the bytes, an error or a size whose proportions are a number, for little memory.
func FuzzReadSize(f *testing.F) {
	addSeeds(f)
	path := filepath.Join(f.TempDir(), "picture")
	f.Fuzz(func(t *testing.T, data []byte) {
		require.NoError(t, os.WriteFile(path, data, 0o600))
		var w, h int
		var err error
		took := allocated(func() { w, h, err = ReadSize(path, Default) })
		requireNoPanic(t, err)
		// The profile, with what unpacking it leaves behind, is all that can be large.
		require.Less(t, took, 8*maxICCBytes)
		if err != nil {
			require.Zero(t, w)
			require.Zero(t, h)
			return
		}
		require.Positive(t, w)
		require.Positive(t, h)
		require.LessOrEqual(t, float64(w)*float64(h), DefaultMaxPixels)
		proportions := float64(w) / float64(h)
		require.False(t, math.IsNaN(proportions) || math.IsInf(proportions, 0) || proportions <= 0)
	})
}

// FuzzProfile: whatever the bytes of a profile, the picture is read; the profile is carried byte for byte
// when it suits it, and else dropped with one warning.
func FuzzProfile(f *testing.F) {
	names, seeds := 0, [][]byte{{}}
	for _, space := range []string{"RGB ", "GRAY", "CMYK"} {
		for _, class := range []string{"mntr", "scnr", "link"} {
			seeds = append(seeds, testProfile(space, class))
		}
	}
	for _, harm := range profileHarms {
		seeds = append(seeds, harm.do(testProfile("RGB ", "mntr")))
		names++
	}
	require.Positive(f, names, "no spoilt profile to start from")
	for _, profile := range seeds {
		for i := range carriers(f) {
			f.Add(profile, uint8(i))
		}
	}
	all := carriers(f)
	f.Fuzz(func(t *testing.T, profile []byte, which uint8) {
		carrier := all[int(which)%len(all)]
		if len(profile) > 60_000 { // one JPEG segment
			return
		}
		p, err := decode(carrier.with(profile), Reading{Limits: upTo(fuzzPixels)})
		require.NoError(t, err)
		if colour.CheckProfile(profile, false) == nil {
			require.Equal(t, profile, p.ICC)
			require.Empty(t, p.Warnings)
			return
		}
		require.Nil(t, p.ICC)
		require.Len(t, p.Warnings, 1)
		require.Contains(t, p.Warnings[0], "colour profile dropped: ")
	})
}
