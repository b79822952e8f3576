package job

import (
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour/icctest"
	"dropsheet/tile/job/jobtest"
	"dropsheet/tile/job/place"
)

// A job says how its artwork's inks and transparent parts were read, and it is read so again; one that was made before
// jobs said so prints as it did then.
func TestArtworkIsReadAsItWas(t *testing.T) {
	clear := filepath.Join(t.TempDir(), "clear.png")
	f, err := os.Create(clear)
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, image.NewNRGBA(image.Rect(0, 0, 60, 40))))
	require.NoError(t, f.Close())
	deep := filepath.Join(t.TempDir(), "deep.png")
	f, err = os.Create(deep)
	require.NoError(t, err)
	slope := image.NewGray16(image.Rect(0, 0, 60, 40))
	for i := range 60 * 40 { // an eighth of a level above 100, which the pixel that is looked at rises to 101 by
		slope.SetGray16(i%60, i/60, color.Gray16{Y: 257*100 + 257/8})
	}
	require.NoError(t, png.Encode(f, slope))
	require.NoError(t, f.Close())
	var at image.Point // of the highest threshold
	for i := range artwork.DitherRanks {
		if x, y := i%artwork.DitherSide, i/artwork.DitherSide; artwork.DitherRank(x, y) == artwork.DitherRanks-1 {
			at = image.Pt(x, y)
		}
	}
	white := color.RGBA{255, 255, 255, 255}
	for _, c := range []struct {
		name    string
		artwork string
		at      image.Point
		before  func(p *Print) // as the job file was
		now     color.RGBA
		then    color.RGBA
		near    float64
	}{
		{"inks with a profile", jobtest.WriteInks(t, icctest.Press(), 60, 40, [4]uint8{255, 0, 0, 0}),
			image.Pt(5, 5), func(p *Print) { p.InksByProfile = false },
			// by Little CMS, as tile/artwork has it; and what shares of red, green and blue give
			color.RGBA{0, 152, 217, 255}, color.RGBA{0, 255, 255, 255}, 2},
		{"of 16 bits", deep, at, func(p *Print) { p.Dithered = false }, color.RGBA{101, 101, 101, 255},
			color.RGBA{100, 100, 100, 255}, 0},
		{"transparent", clear, image.Pt(5, 5), func(p *Print) { p.TransparentOn = "" },
			color.RGBA{32, 48, 64, 255}, white, 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			o := order(t, func(s *layout.Setup) { s.Background, s.MaxSheets = "#203040", 1 })
			o.Artwork = c.artwork
			made, err := Make(t.Context(), o, Watch{})
			require.NoError(t, err)
			shows := func(want color.RGBA) Job {
				j, err := Read(o.Folder)
				require.NoError(t, err)
				require.NoError(t, j.Changed())
				found, err := j.OpenArtwork("", artwork.Default)
				require.NoError(t, err)
				got := color.RGBAModel.Convert(found.Image.At(c.at.X, c.at.Y)).(color.RGBA)
				for i, v := range [3][2]uint8{{want.R, got.R}, {want.G, got.G}, {want.B, got.B}} {
					require.InDelta(t, v[0], v[1], c.near, "channel %d of %v", i, got)
				}
				return j
			}
			shows(c.now)

			before := made
			c.before(&before.Print)
			before.CheckCode, err = before.code()
			require.NoError(t, err)
			require.NotEqual(t, made.CheckCode, before.CheckCode, "sheets of the two don't belong together")
			file, err := os.Create(filepath.Join(o.Folder, place.JobFile))
			require.NoError(t, err)
			require.NoError(t, before.Encode(file))
			require.NoError(t, file.Close())
			text, err := os.ReadFile(file.Name())
			require.NoError(t, err)
			require.NotContains(t, string(text), "inks_by_profile")
			require.NotContains(t, string(text), "transparent_on")
			require.NotContains(t, string(text), "dithered")
			shows(c.then)
		})
	}
}

// An artwork without inks and without transparent parts leaves the job's file and its code as they were.
func TestPlainArtworkIsNotTold(t *testing.T) {
	o := order(t, func(s *layout.Setup) { s.Background, s.MaxSheets = "#203040", 1 })
	made, err := Make(t.Context(), o, Watch{})
	require.NoError(t, err)
	require.Equal(t, Print{Grid: made.Print.Grid, Part: made.Print.Part}, made.Print)
}

// What is no colour can't lie under transparent parts.
func TestTransparentOnNoColour(t *testing.T) {
	j := jobOf(t, func(*layout.Setup) {})
	require.NoError(t, j.holdsTogether())
	for _, ground := range []layout.Surround{layout.Stretch, "navy", "#20304", "#gggggg"} {
		j.Print.TransparentOn = ground
		require.ErrorContains(t, j.holdsTogether(), "is no colour for transparent parts to lie on", string(ground))
	}
}
