package job

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/flip"
	"dropsheet/layout"
	"dropsheet/tile/raster"
)

func FuzzDecodeJob(f *testing.F) {
	seeds := [][]byte{[]byte(`{}`), []byte(`{"dropsheet":3}`), []byte(`{"dropsheet":4}`), []byte(`[]`), []byte(`null`),
		nil,
		[]byte(`{"dropsheet":4,"sheets":[{}],"backdrop":{"columns":1,"rows":1}}`)}
	for _, change := range []func(*layout.Setup){
		func(s *layout.Setup) { s.MaxSheets = 1 },
		filmed,
		func(s *layout.Setup) { s.Look, s.Framing.TurnDeg, s.Drop.HeightOverWidth = layout.Straight, 20, 0.9 },
		func(s *layout.Setup) { s.Drop.Body, s.Look, s.Background = flip.LevelRod, 0.5, "#000080" },
	} {
		var whole bytes.Buffer
		require.NoError(f, jobOf(f, change).Encode(&whole))
		_, err := decode(whole.Bytes())
		require.NoError(f, err)
		seeds = append(seeds, whole.Bytes())
	}
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		if j, err := decode(text); err == nil {
			// Whatever is taken must be drawable: finite places, on the page.
			requireSoundJob(t, j, string(text))
		}
	})
}

// jobOf is a job that was never made.
func jobOf(tb testing.TB, change func(*layout.Setup)) Job {
	tb.Helper()
	p, err := setup(tb, change).Plan()
	require.NoError(tb, err)
	return Job{
		Version: Version, Name: "pattern", CheckCode: "ABCDEF", Plan: p,
		Asked: Asked{"distance": {"40cm"}, "lamp": {"-60cm,0cm,90cm", "60cm,0cm,90cm"}},
		Artwork: Artwork{File: "pattern.png", Copy: "artwork.png", SHA256: strings.Repeat("00", 32), WidthPx: 600,
			HeightPx: 400},
		Print: Print{Grid: raster.Grid{WidthPx: 600, HeightPx: 400}, Part: PixelRect{0, 0, 600, 400}},
	}
}
