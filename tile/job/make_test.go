package job

import (
	"context"
	"fmt"
	"image"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// What there is to warn of is told before the first sheet, and sheets and rows are counted to the last.
func TestMakeTellsHowItGoesOn(t *testing.T) {
	o := order(t, func(s *layout.Setup) {
		s.MaxSheets, s.Camera.FrameWidthMM = 4, 6 // a frame so narrow has more pixels for the pattern than it has itself
	})
	o.Avoid = []Avoided{{X: 0.5, Y: 0.5, Radius: 0.4}} // more than seams can keep out of
	var told []string
	j, err := Make(t.Context(), o, Watch{
		Warn:     func(warning string) { told = append(told, warning[:min(len(warning), 20)]) },
		Progress: func(what string, done, of int) { told = append(told, fmt.Sprintf("%s %d of %d", what, done, of)) },
	})
	require.NoError(t, err)
	want := []string{"no layout of so few sheets"[:20], "a seam crosses the middle"[:20],
		"the picture has 60 x 40 pixels"[:20]}
	for _, counted := range []struct {
		what string
		of   int
	}{{"sheet", len(j.Sheets)}, {"row", 80}, {"row", j.Camera.WidthPx / closeUpCoarse}} {
		for done := range counted.of {
			want = append(want, fmt.Sprintf("%s %d of %d", counted.what, done+1, counted.of))
		}
	}
	require.Equal(t, want, told)
	require.Len(t, j.Seen, len(j.Seams))

	read, err := Read(o.Folder)
	require.NoError(t, err)
	require.Equal(t, o.Folder, read.Folder())
	read.read = source{}
	require.Equal(t, j.Job, read, "the job returned is the one in the folder")
}

// A make whose context ends leaves nothing behind.
func TestMakeEndsWithItsContext(t *testing.T) {
	for _, at := range []string{"sheet", "row"} {
		t.Run(at, func(t *testing.T) {
			o := order(t, func(*layout.Setup) {})
			ctx, stop := context.WithCancel(t.Context())
			_, err := Make(ctx, o, Watch{Progress: func(what string, _, _ int) {
				if what == at {
					stop()
				}
			}})
			require.ErrorIs(t, err, context.Canceled)
			entries, err := os.ReadDir(filepath.Dir(o.Folder))
			require.NoError(t, err)
			require.Empty(t, entries)
		})
	}
}

// What is asked for in vain is told from what a file or the machine is to blame for.
func TestMakeTellsWhoIsToBlame(t *testing.T) {
	for _, c := range []struct {
		name       string
		change     func(*Order)
		wrongWords bool
	}{
		{"a setup that can't be", func(o *Order) { o.Setup.DistanceMM = 4 }, true},
		{"a crop of nothing", func(o *Order) { o.Crop = Crop{Width: 0.01, Height: 0.01} }, true},
		{"no artwork", func(o *Order) { o.Artwork += ".gone" }, false},
		{"a folder in use", func(o *Order) { o.Folder = filepath.Dir(o.Artwork) }, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := order(t, func(*layout.Setup) {})
			c.change(&o)
			_, err := Make(t.Context(), o, Watch{})
			require.Error(t, err)
			require.Equal(t, c.wrongWords, IsWrongWords(err), err)
		})
	}
}

// The artwork goes away, or becomes another picture, between the look at its header and its reading. Nothing is left.
func TestArtworkChangedMeanwhile(t *testing.T) {
	small, _ := jobtest.WritePattern(t, 61, 40)
	for path, says := range map[string]string{
		small:           "changed while it was read",
		small + ".gone": "no such file or directory",
	} {
		final := filepath.Join(t.TempDir(), "job")
		folder, err := place.NewFolder(final, false, path)
		require.NoError(t, err)
		m := making{Order: Order{Artwork: path, Limits: artwork.Default}, at: path, folder: folder,
			part: image.Rect(0, 0, 60, 40)}
		err = m.writeFiles(t.Context(), nil)
		require.ErrorContains(t, err, says)
		require.ErrorContains(t, err, fmt.Sprintf("%q", path), "it is told by its own name")
		require.NoError(t, folder.Discard())
	}
}
