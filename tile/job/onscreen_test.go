package job

import (
	"image/color"
	"testing"

	"github.com/stretchr/testify/require"

	"dropsheet/layout"
	"dropsheet/tile/artwork"
	"dropsheet/tile/colour/icctest"
	"dropsheet/tile/job/jobtest"
)

// Where a profile can't be followed, or the sheets leave it out, the levels are sRGB's.
func TestColoursOnScreenThatAreOnlyRough(t *testing.T) {
	colours, greys := [3]uint8{200, 120, 100}, [3]uint8{200, 200, 200}
	fifth := icctest.AdobeRGB.Profile()
	fifth[8] = 5
	grey := icctest.Grey(icctest.Gamma(461))
	tables := icctest.Profile("RGB ", 2, icctest.Tag{Name: "A2B0", Data: make([]byte, 40)})
	const roughly = "the artwork's colour profile goes into the sheets, but the pictures on screen show its colours " +
		"only roughly, its levels taken for sRGB's: " +
		`its table A2B0 is of the kind "\x00\x00\x00\x00"`
	for _, c := range []struct {
		name     string
		profile  []byte
		colour   [3]uint8
		surround layout.Surround
		want     []string // warnings
		same     bool     // as without a profile
		dropped  string   // why the profile is not even read, if it is not
	}{
		{"none", nil, colours, "", nil, true, ""},
		{"sRGB", icctest.SRGB.Profile(), colours, "", nil, true, ""},
		{"Adobe RGB", icctest.AdobeRGB.Profile(), colours, "", nil, false, ""},
		{"tables", tables, colours, "", []string{roughly}, true, ""},
		{"a version that the sheets don't take", fifth, colours, "", nil, true,
			"colour profile dropped: it is of version 5, and only 2 and 4 can go into a PDF; the colours are taken as srgb"},
		{"grey", grey, greys, "", nil, false, ""},
		{"grey in a grey surround", grey, greys, "#202020", nil, false, ""},
		{"grey in a coloured surround", grey, greys, "#203040", nil, true, ""},
		{"grey, its edge stretched", grey, greys, layout.Stretch, nil, false, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			art, err := artwork.Open(jobtest.WriteStripes(t, c.profile, c.colour), artwork.Default)
			require.NoError(t, err)
			if c.dropped != "" {
				require.Nil(t, art.ICC)
				require.Equal(t, []string{c.dropped}, art.Warnings)
			} else {
				require.Equal(t, c.profile, art.ICC)
				require.Empty(t, art.Warnings)
			}
			picture, warnings := OnScreen(art, c.surround)
			require.Equal(t, c.want, warnings)
			got := picture.Reduced(4).RGBAAt(0, 0)
			require.Equal(t, c.same, got == color.RGBA{c.colour[0], c.colour[1], c.colour[2], 255}, "%v", got)
		})
	}
}

// A profile by tables shows its colours: those of "transicc -t1 -n -s -i SCANNER.icc -o '*sRGB'" of Little CMS 2.14.
func TestColoursOnScreenByTables(t *testing.T) {
	art, err := artwork.Open(jobtest.WriteStripes(t, icctest.Scanner(), [3]uint8{200, 120, 100}), artwork.Default)
	require.NoError(t, err)
	require.Equal(t, icctest.Scanner(), art.ICC, "the sheets carry it as it is")
	picture, warnings := OnScreen(art, "")
	require.Empty(t, warnings)
	got := picture.Reduced(4).RGBAAt(0, 0)
	require.InDelta(t, 231.4, float64(got.R), 1.5)
	require.InDelta(t, 138.9, float64(got.G), 1.5)
	require.InDelta(t, 118.5, float64(got.B), 1.5)
}
